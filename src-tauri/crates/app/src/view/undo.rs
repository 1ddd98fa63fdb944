//! What the two buttons would do. The log only grows: undo appends an edit that takes another back, redo one that takes
//! the undo back.

use serde::Serialize;
use wearbook_core::engine::Part;
use wearbook_core::job::{Edit, EditId, Log, RecordedChange};

/// An edit as the page tells of it, when it is taken back, done again, or has taken something off.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Said {
    /// What was done.
    pub sentence: String,
    /// Which kind of change it was, by which the page knows on which screen it was made.
    pub does: String,
    /// The part it is about, if it is about one.
    pub part: Option<Part>,
}

impl Said {
    /// The edit of this id in words.
    pub(super) fn of(log: &Log, id: Option<EditId>) -> Option<Self> {
        let edit = edit_of(log.edits(), id?)?;
        let RecordedChange::Known(change) = &edit.change else { return None };
        let written = serde_json::to_value(change).ok()?;
        let does = written.get("do")?.as_str()?.to_owned();
        Some(Self { sentence: edit.sentence(log.job()), does, part: change.part() })
    }

    /// What was taken back by the undo of this id.
    pub(super) fn taken_back_by(log: &Log, undo: Option<EditId>) -> Option<Self> {
        Self::of(log, edit_of(log.edits(), undo?)?.change.undoes())
    }
}

/// The targets of undo and redo.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Undo {
    /// The latest edit that stands and is not itself about undoing.
    pub(super) last_edit: Option<EditId>,
    /// The latest undo that stands, if nothing else has been done since.
    pub(super) redo: Option<EditId>,
}

impl Undo {
    /// Reads both off a log.
    pub(super) fn of(log: &Log) -> Self {
        let edits = log.edits();
        let job = log.job();
        let stands = |id: &EditId| !job.undone.contains(id) && !job.without_effect.contains_key(id);
        let standing = || edits.iter().rev().filter(|edit| stands(&edit.id));
        let is_redo = |edit: &Edit| edit.change.undoes().is_some_and(|target| is_undo(edits, target));
        let last_edit = standing().find(|edit| edit.change.undoes().is_none() && is_known(edit)).map(|edit| edit.id);
        let latest = standing().find(|edit| !is_redo(edit));
        let redo = latest.filter(|edit| edit.change.undoes().is_some()).map(|edit| edit.id);
        Self { last_edit, redo }
    }
}

pub(super) fn is_known(edit: &Edit) -> bool {
    matches!(edit.change, RecordedChange::Known(_))
}

fn is_undo(edits: &[Edit], id: EditId) -> bool {
    edit_of(edits, id).is_some_and(|edit| edit.change.undoes().is_some())
}

fn edit_of(edits: &[Edit], id: EditId) -> Option<&Edit> {
    edits.binary_search_by_key(&id, |edit| edit.id).ok().and_then(|at| edits.get(at))
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::job::{Change, DeviceId, OnIntake, OnJob, TextField};

    fn id(n: u64) -> EditId {
        EditId::next(None, n, DeviceId(1))
    }

    /// `0` is an ordinary edit, any other number undoes the edit of that number, counted from 1.
    #[track_caller]
    fn check(log: &[u64], last_edit: Option<u64>, redo: Option<u64>) {
        let change = |target: u64| match target {
            0 => Change::OnIntake(OnIntake::Fill { field: TextField::Remarks, text: "x".into() }),
            n => Change::OnJob(OnJob::Undo { edit: id(n) }),
        };
        let edits: Vec<Edit> = (1..)
            .zip(log)
            .map(|(n, target)| Edit { id: id(n), change: RecordedChange::Known(change(*target)) })
            .collect();
        let expected = Undo { last_edit: last_edit.map(id), redo: redo.map(id) };
        assert_eq!(Undo::of(&Log::new(edits)), expected, "{log:?}");
    }

    #[test]
    fn the_page_is_told_what_is_taken_back() {
        let changes = [
            Change::OnIntake(OnIntake::Fill { field: TextField::Remarks, text: "x".into() }),
            Change::OnJob(OnJob::Undo { edit: id(1) }),
        ];
        let edits: Vec<Edit> =
            (1..).zip(changes).map(|(n, change)| Edit { id: id(n), change: RecordedChange::Known(change) }).collect();
        let log = Log::new(edits);
        let said = Said::taken_back_by(&log, Some(id(2))).unwrap();
        assert_eq!((said.does.as_str(), said.part), ("fill", None));
        assert_eq!(Some(said), Said::of(&log, Some(id(1))), "what the undo took back is the entry itself");
        assert_eq!((Said::of(&log, None), Said::of(&log, Some(id(3)))), (None, None));
    }

    #[test]
    fn undo_and_redo_walk_back_and_forth() {
        check(&[], None, None);
        check(&[0, 0], Some(2), None);
        check(&[0, 0, 2], Some(1), Some(3));
        check(&[0, 0, 2, 1], None, Some(4));
        check(&[0, 0, 2, 1, 4], Some(1), Some(3));
        check(&[0, 0, 2, 1, 4, 3], Some(2), None);
        check(&[0, 0, 2, 0], Some(4), None);
        check(&[0, 0, 2, 0, 4], Some(1), Some(5));
        check(&[0, 0, 1], Some(2), Some(3));
    }
}
