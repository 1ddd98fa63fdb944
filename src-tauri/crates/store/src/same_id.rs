//! Two entries of one id: a folder was copied, and both copies went on. Both entries stay, everywhere the same way.
//!
//! Whose text sorts first keeps the id. The other goes to an id of its own, just before it, with a device that is made from
//! what it says: so every device comes to the same, whichever it had first, and whoever reads it sees that it gave way.

use std::cmp::Ordering;

use sha2::{Digest, Sha256};
use wearbook_core::job::{DeviceId, Edit, EditId, RecordedChange};

/// Whether an entry stood under an id that another has, and gave way to it: the next later entry of its time. It was made on a
/// device of which nothing more is known.
pub fn gave_way(edit: &Edit) -> bool {
    edit.id.device() == made_from(&edit.change)
}

/// Which of two entries keeps their id, the lesser.
pub(crate) fn order(one: &RecordedChange, other: &RecordedChange) -> Ordering {
    text(one).cmp(&text(other))
}

/// The id to which an entry gives way. None where an id means no more than a place in a file written by hand: there another
/// content is a slip.
pub(crate) fn id_of_its_own(id: EditId, change: &RecordedChange) -> Option<EditId> {
    if id.device() == DeviceId(0) { None } else { id.just_before(made_from(change)) }
}

fn made_from(change: &RecordedChange) -> DeviceId {
    let first = Sha256::digest(text(change)).into_iter().take(8);
    DeviceId(first.fold(0, |number, byte| (number << 8) | u64::from(byte)))
}

/// The same whether this version knows the entry or not.
fn text(change: &RecordedChange) -> String {
    let mut value = serde_json::to_value(change).unwrap_or_default();
    value.sort_all_objects();
    value.to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn change(json: serde_json::Value) -> RecordedChange {
        serde_json::from_value(json).unwrap()
    }

    #[test]
    fn who_gave_way_is_known_by_its_id() {
        let id = EditId::next(None, 5, DeviceId(1));
        for json in [serde_json::json!({"do": "clean", "part": "piston.1"}), serde_json::json!({"z": 1, "do": "weigh"})]
        {
            let change = change(json);
            assert!(!gave_way(&Edit { id, change: change.clone() }));
            let own = id_of_its_own(id, &change).unwrap();
            assert!(own < id && gave_way(&Edit { id: own, change: change.clone() }));
            assert_eq!(id_of_its_own(EditId::next(None, 5, DeviceId(0)), &change), None);
        }
    }

    /// What it is called must not depend on which version first met the clash.
    #[test]
    fn a_version_that_does_not_know_an_entry_calls_it_the_same() {
        let json = serde_json::json!({"do": "tag", "part": "piston.1", "tag": "scoring", "grade": 3, "zones": ["thrust-skirt"]});
        let known = change(json.clone());
        assert!(matches!(known, RecordedChange::Known(_)), "{known:?}");
        assert_eq!(made_from(&known), made_from(&RecordedChange::Unknown(json)));
    }
}
