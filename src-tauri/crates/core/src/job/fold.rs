//! The fold: a set of edits in, all that is known out.

use std::collections::{BTreeMap, BTreeSet};

use super::known::Job;
use super::{Change, Edit, EditId, OnJob, RecordedChange};

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
        if let RecordedChange::Known(Change::OnJob(OnJob::Undo { edit })) = change
            && edit < id
            && by_id.contains_key(edit)
            && !undone.contains(id)
        {
            undone.insert(*edit);
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
    use crate::engine::{Arrangement, Engine, Part};
    use crate::job::{DeviceId, HistoryFact, OnIntake, OnPart, TextField};
    use crate::wear::Grade;
    use proptest::prelude::*;

    fn id(n: u64) -> EditId {
        EditId::next(None, n, DeviceId(n % 3))
    }

    fn any_change() -> impl Strategy<Value = RecordedChange> {
        let engine = Engine::new(Arrangement::vee(8)).unwrap();
        let part = prop::sample::select(engine.parts().to_vec());
        let tag_of = |part: Part| {
            (prop::sample::select(part.kind.row().tags), prop::sample::select(&Grade::ALL[..])).prop_map(
                move |(tag, grade)| {
                    Change::OnPart(OnPart::Tag {
                        part,
                        tag,
                        grade,
                        zones: part.kind.row().zones.zones().first().copied().into_iter().collect(),
                    })
                },
            )
        };
        let known = prop_oneof![
            4 => part.clone().prop_flat_map(tag_of),
            1 => part.clone().prop_flat_map(|part| prop::sample::select(part.kind.row().tags).prop_map(move |tag| Change::OnPart(OnPart::Untag { part, tag }))),
            1 => part.clone().prop_map(|part| Change::OnPart(OnPart::Clean { part })),
            1 => (part, "[a-z ]{0,8}").prop_map(|(part, text)| Change::OnPart(OnPart::Remark { part, text })),
            1 => "[a-z]{0,8}".prop_map(|text| Change::OnIntake(OnIntake::Fill { field: TextField::Customer, text })),
            1 => Just(Change::OnIntake(OnIntake::Recall { fact: HistoryFact::Overheated, answer: crate::job::Answer::Yes })),
            2 => (0u64..40).prop_map(|n| Change::OnJob(OnJob::Undo { edit: id(n) })),
        ];
        prop_oneof![
            9 => known.prop_map(RecordedChange::Known),
            1 => (0u8..9).prop_map(|n| RecordedChange::Unknown(serde_json::json!({ "do": "later", "n": n }))),
        ]
    }

    fn any_log() -> impl Strategy<Value = Vec<Edit>> {
        prop::collection::vec((0u64..40, any_change()), 0..40)
            .prop_map(|entries| entries.into_iter().map(|(n, change)| Edit { id: id(n), change }).collect())
    }

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
