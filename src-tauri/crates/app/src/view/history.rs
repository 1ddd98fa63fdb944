//! What was done, in words.

use serde::Serialize;
use wearbook_core::engine::Part;
use wearbook_core::job::{Change, Edit, EditId, Log, RecordedChange, Topic};

use super::undo::is_known;

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
    /// What it is about, undoing what was undone; none of what this version does not know.
    pub topic: Option<Topic>,
    /// The part it is about, if it is about one.
    pub part: Option<Part>,
    /// Whether it has been taken back.
    pub undone: bool,
    /// Whether it can be taken back: what stands and is not itself about undoing.
    pub undoable: bool,
    /// The undo that took it back; undoing that does it again.
    pub again: Option<EditId>,
}

/// Every edit, latest first.
pub(crate) fn history(log: &Log) -> Vec<HistoryLine> {
    let job = log.job();
    let line = |edit: &Edit| {
        let undone = job.undone.contains(&edit.id);
        let about = about(log, edit);
        HistoryLine {
            edit: edit.id,
            at: edit.id.millis(),
            sentence: edit.sentence(job),
            topic: about.map(Change::topic),
            part: about.and_then(Change::part),
            undone,
            again: if undone && edit.change.undoes().is_none() { taken_back_by(log, edit.id) } else { None },
            undoable: !undone && is_known(edit) && edit.change.undoes().is_none(),
        }
    };
    log.edits().iter().rev().map(line).collect()
}

/// What was done or, of an undo, what it took back in the end: an undo stands after what it undoes, so the way is finite.
fn about<'log>(log: &'log Log, edit: &'log Edit) -> Option<&'log Change> {
    let mut edit = edit;
    while let Some(target) = edit.change.undoes() {
        edit = log.edits().iter().find(|other| other.id == target && other.id < edit.id)?;
    }
    match &edit.change {
        RecordedChange::Known(change) => Some(change),
        RecordedChange::Unknown(_) => None,
    }
}

fn taken_back_by(log: &Log, taken_back: EditId) -> Option<EditId> {
    let mut standing = log.edits().iter().rev().filter(|edit| !log.job().undone.contains(&edit.id));
    standing.find(|edit| edit.change.undoes() == Some(taken_back)).map(|edit| edit.id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::job::{DeviceId, OnIntake, OnJob, TextField};

    #[test]
    fn a_line_taken_back_names_the_undo_that_did_it() {
        let id = |n: u64| EditId::next(None, n, DeviceId(1));
        let fill = || Change::OnIntake(OnIntake::Fill { field: TextField::Remarks, text: "x".into() });
        let changes = [
            fill(),
            Change::OnJob(OnJob::Undo { edit: id(1) }),
            fill(),
            Change::OnJob(OnJob::Undo { edit: id(3) }),
            Change::OnJob(OnJob::Undo { edit: id(4) }),
        ];
        let edits: Vec<Edit> =
            (1..).zip(changes).map(|(n, change)| Edit { id: id(n), change: RecordedChange::Known(change) }).collect();
        let lines = history(&Log::new(edits));
        assert!(lines.iter().all(|line| line.topic == Some(Topic::TakeIn)), "an undo is about what it undoes");
        let again: Vec<Option<EditId>> = lines.into_iter().rev().map(|line| line.again).collect();
        assert_eq!(again, [Some(id(2)), None, None, None, None], "the third entry stands again: its undo was undone");
    }
}
