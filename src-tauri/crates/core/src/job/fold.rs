//! The fold: a set of edits in, all that is known out.

use std::collections::BTreeMap;

use super::closing::Closing;
use super::known::Job;
use super::undone::undone;
use super::{Change, Edit, EditId, Horizon, NoEffect, RecordedChange, Refused};

impl Job {
    /// Folds edits into a job. Pure, total, and the same whatever the order in which the edits arrive or how often one
    /// arrives.
    pub fn fold<'a>(edits: impl IntoIterator<Item = &'a Edit>) -> Self {
        Self::fold_within(edits, Horizon::default())
    }

    /// The same at a time: what is dated ahead waits. Whether an edit fits is decided here, in the order of ids; one that
    /// does not is named in [`Job::without_effect`].
    pub fn fold_within<'a>(edits: impl IntoIterator<Item = &'a Edit>, horizon: Horizon) -> Self {
        let mut by_id: BTreeMap<EditId, &RecordedChange> = BTreeMap::new();
        for edit in edits {
            // Two edits with one id can't come from this program. Should it happen, the choice must not depend on the
            // order of arrival: the one whose JSON sorts first stands.
            by_id
                .entry(edit.id)
                .and_modify(|kept| {
                    if json(&edit.change) < json(kept) {
                        *kept = &edit.change;
                    }
                })
                .or_insert(&edit.change);
        }
        let mut job = Self::default();
        let mut set_aside = |id: EditId, change: &RecordedChange, why| match change {
            RecordedChange::Unknown(_) => job.unknown.push(id),
            RecordedChange::Known(_) => drop(job.without_effect.insert(id, why)),
        };
        for (id, change) in by_id.extract_if(.., |id, _| horizon.is_ahead(*id)) {
            set_aside(id, change, NoEffect::Ahead);
        }
        let closing = Closing::of(&by_id);
        for (id, change) in by_id.extract_if(.., |id, _| closing.holds(*id)) {
            set_aside(id, change, NoEffect::Closed);
        }
        let undone = undone(&by_id);
        for (id, change) in by_id {
            match change {
                RecordedChange::Unknown(_) => job.unknown.push(id),
                RecordedChange::Known(_) if undone.contains(&id) => {}
                RecordedChange::Known(change) => job.apply_if_it_fits(id, change),
            }
        }
        job.unknown.sort_unstable();
        job.undone = undone;
        job
    }

    /// Applies a change, or notes why it does not fit.
    pub fn apply_if_it_fits(&mut self, id: EditId, change: &Change) {
        match self.fits(change) {
            Ok(()) => self.apply(id, change),
            Err(Refused(reason)) => drop(self.without_effect.insert(id, NoEffect::Unfit { reason })),
        }
    }
}

fn json(change: &RecordedChange) -> String {
    serde_json::to_string(change).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::testing::{any_change, any_log, id};
    use crate::job::{DeviceId, OnIntake, OnJob, TextField};
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn any_order_of_the_same_edits_gives_the_same_job((log, shuffled) in any_log().prop_flat_map(|log| (Just(log.clone()), Just(log).prop_shuffle()))) {
            prop_assert_eq!(Job::fold(&log), Job::fold(&shuffled));
        }

        #[test]
        fn arriving_twice_changes_nothing(log in any_log()) {
            let twice: Vec<Edit> = log.iter().chain(&log).cloned().collect();
            prop_assert_eq!(Job::fold(&log), Job::fold(&twice));
        }

        #[test]
        fn unknown_edits_survive(log in any_log()) {
            let job = Job::fold(&log);
            let by_id: BTreeMap<EditId, &RecordedChange> = log.iter().map(|edit| (edit.id, &edit.change)).collect();
            let unique = by_id.len() == log.len();
            let unknown = log.iter().filter(|edit| matches!(edit.change, RecordedChange::Unknown(_))).count();
            prop_assert!(!unique || job.unknown.len() == unknown);
        }

        #[test]
        fn undoing_the_latest_edit_gives_the_job_before_it(log in any_log(), change in any_change()) {
            let before = Job::fold(&log);
            let mut after = log;
            after.push(Edit { id: id(50), change });
            after.push(Edit { id: id(60), change: RecordedChange::Known(Change::OnJob(OnJob::Undo { edit: id(50) })) });
            let mut undone = Job::fold(&after);
            undone.unknown.retain(|unknown| *unknown != id(50));
            undone.undone.remove(&id(50));
            // Where the job is closed, both wait.
            undone.without_effect.retain(|waiting, _| *waiting < id(50));
            prop_assert_eq!(undone, before);
        }
    }

    #[test]
    fn undoing_an_undo_does_the_edit_again() {
        let known = |n: u64, change: Change| Edit { id: id(n), change: RecordedChange::Known(change) };
        let fill = Change::OnIntake(OnIntake::Fill { field: TextField::Customer, text: "Ada".into() });
        let mut log = vec![known(1, fill), known(2, Change::OnJob(OnJob::Undo { edit: id(1) }))];
        assert!(Job::fold(&log).texts.is_empty());
        log.push(known(3, Change::OnJob(OnJob::Undo { edit: id(2) })));
        assert_eq!(Job::fold(&log).texts.get(&TextField::Customer).map(String::as_str), Some("Ada"));
    }

    fn log(count: u64, change: impl Fn(u64) -> serde_json::Value) -> Vec<Edit> {
        let edit = |n| Edit { id: id(n), change: serde_json::from_value(change(n)).unwrap() };
        (1..=count).map(edit).collect()
    }

    #[track_caller]
    fn unfit(job: &Job, count: usize, because: &str) {
        assert_eq!(job.without_effect.len(), count);
        for why in job.without_effect.values() {
            assert_eq!(*why, NoEffect::Unfit { reason: because.into() });
        }
    }

    /// Whatever an archive brings, a job holds no more than a person could enter.
    #[test]
    fn what_does_not_fit_is_kept_without_effect() {
        use serde_json::json;
        let part: crate::engine::Part = "piston.1".parse().unwrap();
        let photos = log(130, |n| json!({ "do": "add-photo", "part": part, "photo": format!("{n:064x}") }));
        let job = Job::fold(&photos);
        assert_eq!(job.parts[&part].photos.len(), 100);
        unfit(&job, 30, "This part has 100 photos already, the most it can hold: remove one first.");

        let line = |n: u64| json!({ "kind": "bore", "quantity": "other", "name": n.to_string() });
        let lines = log(1_020, |n| json!({ "do": "state-line", "line": { "of": line(n), "max": "1 mm" } }));
        let job = Job::fold(&lines);
        assert_eq!(job.sheet.lines.len(), 1_000);
        unfit(&job, 20, "This job has 1000 lines of its sheet, the most that one can hold.");

        let names = log(1, |_| json!({ "do": "fill", "field": "customer", "text": "x".repeat(10_001) }));
        unfit(&Job::fold(&names), 1, "The text has 10001 characters: 10000 at most.");
        let tag = log(1, |_| json!({ "do": "tag", "part": part, "tag": "copper-showing", "grade": 1 }));
        unfit(&Job::fold(&tag), 1, "A piston can't be tagged “copper showing”.");
    }

    /// Neither a missing arrangement nor a missing instrument: both may be entered anew, and all stands again.
    #[test]
    fn what_a_later_entry_puts_right_keeps_its_effect() {
        use serde_json::json;
        let reading = json!({ "part": "bore.1", "quantity": "diameter", "instrument": "gone", "value": "80 mm" });
        let job = Job::fold(&log(1, |_| json!({ "do": "measure", "reading": reading })));
        assert_eq!((job.readings.len(), job.without_effect.len()), (1, 0));
    }

    #[test]
    fn what_is_dated_ahead_waits_until_its_time() {
        let filled =
            |n: u64| log(1, |_| serde_json::json!({ "do": "fill", "field": "customer", "text": n.to_string() }));
        let edits: Vec<Edit> = [(1, 1), (2, 90_000_000)]
            .into_iter()
            .map(|(n, millis)| Edit { id: EditId::next(None, millis, DeviceId(n)), ..filled(n).remove(0) })
            .collect();
        let customer = |now| {
            let job = Job::fold_within(&edits, Horizon::at(now, DeviceId(1)));
            (job.texts[&TextField::Customer].clone(), job.without_effect.into_values().collect::<Vec<_>>())
        };
        assert_eq!(customer(1), ("1".into(), vec![NoEffect::Ahead]));
        assert_eq!(customer(4_000_000), ("2".into(), vec![]));
    }
}
