//! Which edits are undone.

use std::collections::{BTreeMap, BTreeSet};

use super::{EditId, RecordedChange};

/// An undo names an earlier edit, so from the latest to the earliest each edit's fate is settled before it is met.
pub(super) fn undone(by_id: &BTreeMap<EditId, &RecordedChange>) -> BTreeSet<EditId> {
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
