//! The fold: a set of edits in, all that is known out.

use std::collections::{BTreeMap, BTreeSet};

use super::known::Job;
use super::{Edit, EditId, RecordedChange};

impl Job {
    /// Folds edits into a job. Pure, total, and the same whatever the order in which the edits arrive or how often one
    /// arrives.
    pub fn fold<'a>(edits: impl IntoIterator<Item = &'a Edit>) -> Self {
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
        let undone = undone(&by_id);
        let mut job = Self::default();
        for (id, change) in by_id {
            match change {
                RecordedChange::Unknown(_) => job.unknown.push(id),
                RecordedChange::Known(_) if undone.contains(&id) => {}
                RecordedChange::Known(change) => job.apply(id, change),
            }
        }
        job.undone = undone;
        job
    }
}

/// An undo names an earlier edit, so from the latest to the earliest each edit's fate is settled before it is met.
fn undone(by_id: &BTreeMap<EditId, &RecordedChange>) -> BTreeSet<EditId> {
    let mut undone = BTreeSet::new();
    for (id, change) in by_id.iter().rev() {
        if let Some(edit) = change.undoes()
            && edit < *id
            && by_id.contains_key(&edit)
            && !undone.contains(id)
        {
            undone.insert(edit);
        }
    }
    undone
}

fn json(change: &RecordedChange) -> String {
    serde_json::to_string(change).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::testing::{any_change, any_log, id};
    use crate::job::{Change, OnIntake, OnJob, TextField};
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
            if undone.unknown.last() == Some(&id(50)) {
                undone.unknown.pop();
            }
            undone.undone.remove(&id(50));
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
}
