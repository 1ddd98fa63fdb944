//! What was done, in words.

use std::collections::BTreeMap;

use serde::Serialize;
use wearbook_core::engine::Part;
use wearbook_core::job::{Change, Edit, EditId, Log, NoEffect, RecordedChange, Topic};

use wearbook_store::gave_way;

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
    /// Why it has no effect, if it has none.
    pub no_effect: Option<NoEffect>,
    /// Whether another entry was made under the same number on a copy of the folder: both stay.
    pub of_a_copy: bool,
}

/// Every edit, latest first.
pub(crate) fn history(log: &Log) -> Vec<HistoryLine> {
    let job = log.job();
    let about = About::of(log);
    let of_a_copy = gave_way(log.edits());
    let line = |edit: &Edit| {
        let undone = job.undone.contains(&edit.id);
        let no_effect = job.without_effect.get(&edit.id).cloned();
        let is_undo = edit.change.undoes().is_some();
        let told = about.told.get(&edit.id).copied();
        HistoryLine {
            edit: edit.id,
            at: edit.id.millis(),
            sentence: edit.sentence(job),
            topic: told.map(Change::topic),
            part: told.and_then(Change::part),
            undone,
            again: if undone && !is_undo { about.taken_back_by.get(&edit.id).copied() } else { None },
            undoable: !undone && is_known(edit) && !is_undo && no_effect.is_none(),
            no_effect,
            of_a_copy: of_a_copy.contains(&edit.id),
        }
    };
    log.edits().iter().rev().map(line).collect()
}

/// What undos are about, each found once.
#[derive(Default)]
struct About<'log> {
    /// What was done or, of an undo, what it took back in the end: an undo stands after what it undoes.
    told: BTreeMap<EditId, &'log Change>,
    /// The latest undo that stands, by what it took back.
    taken_back_by: BTreeMap<EditId, EditId>,
}

impl<'log> About<'log> {
    fn of(log: &'log Log) -> Self {
        let mut about = Self::default();
        for edit in log.edits() {
            let RecordedChange::Known(change) = &edit.change else { continue };
            let Some(target) = edit.change.undoes() else {
                about.told.insert(edit.id, change);
                continue;
            };
            if let Some(change) = about.told.get(&target).copied() {
                about.told.insert(edit.id, change);
            }
            let job = log.job();
            if !job.undone.contains(&edit.id) && !job.without_effect.contains_key(&edit.id) {
                about.taken_back_by.insert(target, edit.id);
            }
        }
        about
    }
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
