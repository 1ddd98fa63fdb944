//! Two entries of one id: a folder was copied, and both copies went on. Both entries stay, everywhere the same way.
//!
//! Whose text sorts first keeps the id. The other goes to an id of its own, just before it, with a device that is made
//! from what it says: so every device comes to the same, whichever it had first, and whoever reads it sees that it gave
//! way.

use std::cmp::Ordering;
use std::collections::BTreeSet;

use sha2::{Digest, Sha256};
use wearbook_core::job::{DeviceId, Edit, EditId, RecordedChange};

/// Which of a job's entries, in the order of their ids, stood under an id that another has and gave way to it: both
/// were entered at the same moment on copies of one folder. On which device is not known of these.
pub fn gave_way(edits: &[Edit]) -> BTreeSet<EditId> {
    // Few stand where one that gave way can stand; only what these say is looked at.
    let pairs = edits.iter().zip(edits.iter().skip(1));
    let could = pairs.filter(|(one, next)| next.id.just_before(one.id.device()) == Some(one.id)).map(|(one, _)| one);
    could.filter(|one| one.id.device() == made_from(&one.change)).map(|one| one.id).collect()
}

/// Which of two entries keeps their id, the lesser.
pub(crate) fn order(one: &RecordedChange, other: &RecordedChange) -> Ordering {
    text(one).cmp(&text(other))
}

/// The id to which an entry gives way. None where an id means no more than a place in a file written by hand: there
/// another content is a slip.
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
        let clean = |n: u8| change(serde_json::json!({"do": "clean", "part": format!("piston.{n}")}));
        // Devices before and after whatever an entry makes.
        for device in [1, 1 << 63, u64::MAX] {
            let id = EditId::next(None, 5, DeviceId(device));
            let mut edits =
                vec![Edit { id, change: clean(1) }, Edit { id: EditId::next(None, 4, DeviceId(1)), change: clean(2) }];
            let other = EditId::next(None, 5, DeviceId(device - 1));
            edits.push(Edit { id: other, change: clean(3) });
            let moved: BTreeSet<EditId> = (4..9).map(|n| id_of_its_own(id, &clean(n)).unwrap()).collect();
            assert!(moved.iter().all(|own| *own < id) && moved.len() == 5);
            edits.extend((4..9).map(|n| Edit { id: id_of_its_own(id, &clean(n)).unwrap(), change: clean(n) }));
            edits.sort_by_key(|edit| edit.id);
            assert_eq!(gave_way(&edits), moved);
        }
        assert_eq!(id_of_its_own(EditId::next(None, 5, DeviceId(0)), &clean(1)), None);
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
