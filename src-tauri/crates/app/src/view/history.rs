//! What was done, in words.

use serde::Serialize;
use wearbook_core::job::{Edit, EditId, Job};

use super::undo::{is_known, undoes};

/// An edit in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct HistoryLine {
    /// The edit.
    pub edit: EditId,
    /// When: milliseconds since 1970-01-01 UTC, by the clock of the device on which it was made.
    pub at: u64,
    /// What.
    pub sentence: String,
    /// Whether it has been taken back.
    pub undone: bool,
    /// Whether it can be taken back: what stands and is not itself about undoing.
    pub undoable: bool,
}

/// Every edit, latest first.
pub(crate) fn history(edits: &[Edit]) -> Vec<HistoryLine> {
    let job = Job::fold(edits);
    let line = |edit: &Edit| {
        let undone = job.undone.contains(&edit.id);
        HistoryLine {
            edit: edit.id,
            at: edit.id.millis(),
            sentence: edit.sentence(&job),
            undone,
            undoable: !undone && is_known(edit) && undoes(edit).is_none(),
        }
    };
    edits.iter().rev().map(line).collect()
}
