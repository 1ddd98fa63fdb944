//! Nothing that is said of an engine contradicts anything else that is said of it, whatever was found.
#![allow(clippy::unwrap_used, reason = "a test may stop at once")]

mod contradictions;

use proptest::prelude::*;
use serde_json::{Value, json};
use wearbook_core::assess::assess;
use wearbook_core::engine::{Arrangement, Engine, Part};
use wearbook_core::job::{Change, Complaint, DeviceId, Edit, EditId, Job, RecordedChange};
use wearbook_core::wear::Tag;

use contradictions::contradictions;

fn job(changes: impl IntoIterator<Item = Value>) -> Job {
    let mut edits: Vec<Edit> = Vec::new();
    for change in changes {
        let known: Change = serde_json::from_value(change).unwrap();
        let id = EditId::next(edits.last().map(|edit| edit.id), 1, DeviceId(1));
        edits.push(Edit { id, change: RecordedChange::Known(known) });
    }
    Job::fold(&edits)
}

/// A look at a part: clean, or the tag of a number with grade and zones of a number.
fn look(part: Part, (number, grade): (usize, u8)) -> Value {
    let row = part.kind.row();
    let tags: Vec<&Tag> = row.tags.iter().collect();
    match tags.get(number % (2 * tags.len())) {
        Some(tag) => {
            let zones: Vec<_> = row.zones.zones().iter().skip(number % 4).step_by(3).take(number % 3).collect();
            json!({ "do": "tag", "part": part, "tag": tag, "grade": grade, "zones": zones })
        }
        None => json!({ "do": "clean", "part": part }),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    #[test]
    fn whatever_was_found(
        cylinders in 1_u8..5,
        looks in prop::collection::vec((0_usize..1000, 0_usize..1000, 1_u8..5), 0..120),
        picked in prop::collection::btree_set(0_usize..22, 0..4),
    ) {
        let arrangement = Arrangement::inline(cylinders);
        let engine = Engine::new(arrangement.clone()).unwrap();
        let outside = [
            "engine-oil", "oil-filter", "sump", "coolant", "air-cleaner", "oil-filler", "breather", "drain-plug",
        ];
        let mut parts: Vec<Part> = engine.parts().to_vec();
        parts.extend(outside.iter().filter_map(|part| part.parse::<Part>().ok()));
        let mut changes = vec![json!({ "do": "arrange", "arrangement": arrangement })];
        let complaints: Vec<Complaint> = picked.iter().filter_map(|n| Complaint::ALL.get(*n).copied()).collect();
        changes.extend(complaints.iter().map(|told| json!({ "do": "complain", "complaint": told, "told": true })));
        changes.extend(looks.iter().filter_map(|(part, number, grade)| {
            Some(look(*parts.get(part % parts.len())?, (*number, *grade)))
        }));
        let job = job(changes);
        let wrong = contradictions(&job, &assess(&job));
        prop_assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    }
}
