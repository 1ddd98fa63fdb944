//! What the two buttons would do. The log only grows: undo appends an edit that takes another back, redo one that takes
//! the undo back.

use wearbook_core::job::{Edit, EditId, Log, RecordedChange};

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
        let standing = || edits.iter().rev().filter(|edit| !log.job().undone.contains(&edit.id));
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
    edits
        .binary_search_by_key(&id, |edit| edit.id)
        .ok()
        .and_then(|at| edits.get(at))
        .is_some_and(|edit| edit.change.undoes().is_some())
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
