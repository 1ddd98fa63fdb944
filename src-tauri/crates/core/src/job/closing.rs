//! Since when a job is closed: what is later waits until it is opened again.

use std::collections::{BTreeMap, BTreeSet};

use super::undone::undone;
use super::{Change, EditId, OnJob, RecordedChange};

/// The closing of a job, with all that bears on it.
pub(super) struct Closing {
    /// The edit that closed the job, if it is closed.
    pub(super) since: Option<EditId>,
    /// Edits that close or open it, and those that take such an edit back or do it again: they never wait.
    about: BTreeSet<EditId>,
}

impl Closing {
    /// Reads it off a log. Whether it is closed follows from these edits alone, so nothing that waits has a say in it.
    pub(super) fn of(by_id: &BTreeMap<EditId, &RecordedChange>) -> Self {
        let mut about: BTreeMap<EditId, &RecordedChange> = BTreeMap::new();
        for (id, change) in by_id {
            let takes_back = |target| target < *id && about.contains_key(&target);
            if closes(change).is_some() || change.undoes().is_some_and(takes_back) {
                about.insert(*id, change);
            }
        }
        let undone = undone(&about);
        let mut since = None;
        for (id, change) in &about {
            match closes(change) {
                Some(true) if !undone.contains(id) => since = since.or(Some(*id)),
                Some(false) if !undone.contains(id) => since = None,
                _ => {}
            }
        }
        Self { since, about: about.into_keys().collect() }
    }

    /// Whether an edit waits until the job is opened again.
    pub(super) fn holds(&self, id: EditId) -> bool {
        self.since.is_some_and(|since| id > since) && !self.about.contains(&id)
    }
}

/// Whether a change closes the job, or opens it; none if it does neither.
pub(super) fn closes(change: &RecordedChange) -> Option<bool> {
    match change {
        RecordedChange::Known(Change::OnJob(OnJob::Close { closed })) => Some(*closed),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::testing::edit;
    use crate::job::{Edit, Job, NoEffect, TextField};
    use serde_json::{Value, json};

    fn fill(text: &str) -> Value {
        json!({ "do": "fill", "field": "remarks", "text": text })
    }

    fn undo(n: u64) -> Value {
        json!({ "do": "undo", "edit": edit(n) })
    }

    /// What the remarks say in the end, which edits wait, and which closed the job.
    #[track_caller]
    fn check(changes: &[Value], remarks: &str, waiting: &[u64], closed: Option<u64>) {
        let edits: Vec<Edit> = (1..)
            .zip(changes)
            .map(|(n, change)| Edit { id: edit(n), change: serde_json::from_value(change.clone()).unwrap() })
            .collect();
        let job = Job::fold(&edits);
        assert_eq!(job.texts.get(&TextField::Remarks).map_or("", String::as_str), remarks);
        let waiting: BTreeMap<EditId, NoEffect> = waiting.iter().map(|n| (edit(*n), NoEffect::Closed)).collect();
        assert_eq!((job.without_effect, job.closed), (waiting, closed.map(edit)));
    }

    #[test]
    fn what_is_later_than_a_closing_waits_until_the_job_is_opened_again() {
        let close = |closed: bool| json!({ "do": "close", "closed": closed });
        check(&[fill("a"), close(true), fill("b")], "a", &[3], Some(2));
        check(&[fill("a"), close(true), fill("b"), close(false)], "b", &[], None);
        check(&[fill("a"), close(true), fill("b"), undo(2)], "b", &[], None);
        check(&[fill("a"), close(true), fill("b"), undo(2), undo(4)], "a", &[3], Some(2));
        // Another device took an entry back, not knowing that the job was closed.
        check(&[fill("a"), close(true), undo(1)], "a", &[3], Some(2));
        check(&[fill("a"), close(true), undo(1), close(false)], "", &[], None);
        check(&[fill("a"), close(true), fill("b"), close(true), fill("c")], "a", &[3, 5], Some(2));
    }
}
