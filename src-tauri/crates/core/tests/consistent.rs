//! Nothing that is said of an engine contradicts anything else that is said of it, whatever was found.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at once")]

mod contradictions;

use proptest::prelude::*;
use serde_json::{Value, json};
use wearbook_core::assess::assess;
use wearbook_core::engine::{Arrangement, Engine, Part};
use wearbook_core::job::{Answer, Change, Complaint, DeviceId, Edit, EditId, HistoryFact, Job, RecordedChange};
use wearbook_core::measure::Quantity;
use wearbook_core::wear::Tag;

use contradictions::{contradictions, on_paper};

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

/// What a manual says of the parts that are measured here, and what one reading beyond its limit is.
const SIZES: [(&str, &str, &str, &str, &str); 5] = [
    ("main-journal", "diameter", "60.00 mm", "59.90 mm", "59.50 mm"),
    ("crankpin", "diameter", "50.00 mm", "49.90 mm", "49.50 mm"),
    ("bore", "diameter", "80.00 mm", "80.20 mm", "80.60 mm"),
    ("piston", "groove-clearance", "0.05 mm", "0.15 mm", "0.40 mm"),
    ("rings", "ring-gap", "0.30 mm", "0.80 mm", "1.60 mm"),
];

fn sheet() -> Value {
    let line = |(kind, quantity, new, limit, _): (&str, &str, &str, &str, &str)| json!({ "of": { "kind": kind, "quantity": quantity }, "min": new, "max": new, "limit": limit, "source": "" });
    json!({ "do": "use-sheet", "sheet": { "lines": SIZES.map(line),
        "head": { "name": "Any", "source": "", "unit": "millimetre", "general_rules": true } } })
}

/// Every reading of a part's size: as new, or beyond the limit.
fn readings(part: Part, is_beyond: bool) -> Vec<Value> {
    let Some((_, quantity, new, _, beyond)) = SIZES.into_iter().find(|(kind, ..)| *kind == part.kind.row().id) else {
        return vec![];
    };
    let of: Quantity = serde_json::from_value(json!(quantity)).unwrap();
    let Some(has) = part.kind.has(of) else { return vec![] };
    let value = if is_beyond { beyond } else { new };
    let reading = |spot| json!({ "do": "measure", "reading": { "part": part, "quantity": quantity, "spot": spot, "value": value } });
    has.spots.needed().into_iter().map(reading).collect()
}

fn arrangement(n: u8) -> Arrangement {
    match n {
        0 => Arrangement::vee(4),
        1 => Arrangement::flat(2),
        cylinders => Arrangement::inline(cylinders - 1),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    #[test]
    fn whatever_was_found(
        engine in 0_u8..6,
        looks in prop::collection::vec((0_usize..1000, 0_usize..1000, 1_u8..5), 0..120),
        measured in prop::collection::vec((0_usize..1000, any::<bool>()), 0..12),
        past in prop::collection::vec((0_usize..HistoryFact::PAST.len(), 0_usize..3), 0..3),
        picked in prop::collection::btree_set(0_usize..Complaint::ALL.len(), 0..4),
    ) {
        let arrangement = arrangement(engine);
        let engine = Engine::new(arrangement.clone()).unwrap();
        let mut parts: Vec<Part> = engine.parts().to_vec();
        parts.extend(engine.outside());
        let mut changes = vec![json!({ "do": "arrange", "arrangement": arrangement }), sheet()];
        let complaints: Vec<Complaint> = picked.iter().filter_map(|n| Complaint::ALL.get(*n).copied()).collect();
        changes.extend(complaints.iter().map(|told| json!({ "do": "complain", "complaint": told, "told": true })));
        changes.extend(past.iter().filter_map(|(fact, answer)| {
            Some(json!({ "do": "recall", "fact": HistoryFact::PAST.get(*fact)?, "answer": Answer::ALL.get(*answer)? }))
        }));
        changes.extend(looks.iter().filter_map(|(part, number, grade)| {
            Some(look(*parts.get(part % parts.len())?, (*number, *grade)))
        }));
        let sized: Vec<Part> = parts.iter().copied().filter(|part| !readings(*part, false).is_empty()).collect();
        changes.extend(measured.iter().filter_map(|(n, beyond)| Some(readings(*sized.get(n % sized.len())?, *beyond))).flatten());
        let wrong = wrong(changes);
        prop_assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    }
}

/// What contradicts itself in what follows from some changes, on its screens and its papers.
fn wrong(changes: impl IntoIterator<Item = Value>) -> Vec<String> {
    let job = job(changes);
    let came = assess(&job);
    [contradictions(&job, &came), on_paper(&job, &came)].concat()
}

/// What chance does not meet often: each once contradicted itself.
#[test]
fn what_once_contradicted_itself() {
    let arrangement = Arrangement::inline(4);
    let engine = Engine::new(arrangement.clone()).unwrap();
    let tag = |part: &str, tag: &str, grade: u8, zones: &[&str]| json!({ "do": "tag", "part": part, "tag": tag, "grade": grade, "zones": zones });
    let loaded =
        || (1..=5).map(|n| format!("main-shell.{n}.lower")).chain((1..=4).map(|n| format!("rod-shell.{n}.upper")));
    let crown = ["front-crown", "middle-crown", "rear-crown"];
    let ways = [tag("air-cleaner", "torn", 3, &[]), tag("oil-filler", "missing", 4, &[])];
    let dirt = loaded().flat_map(|shell| ["scoring", "embedded-debris"].map(|name| tag(&shell, name, 2, &crown[1..2])));
    let pinched = |shells: [&str; 2]| shells.map(|shell| tag(shell, "copper-showing", 3, &crown)).to_vec();
    let thinned = engine.parts().iter().filter(|part| ["main-shell", "rod-shell"].contains(&part.kind.row().id));
    let cases: [Vec<Value>; 5] = [
        ways.iter().cloned().chain(dirt).collect(),
        pinched(["rod-shell.2.upper", "rod-shell.2.lower"]),
        pinched(["main-shell.2.upper", "main-shell.2.lower"]),
        thinned.map(|part| tag(&part.to_string(), "copper-showing", 2, &[])).collect(),
        loaded().map(|shell| tag(&shell, "copper-showing", 2, &[])).collect(),
    ];
    for found in cases {
        let named: Vec<&str> = found.iter().filter_map(|change| change["part"].as_str()).collect();
        let all = engine.parts().iter().chain(engine.outside()).map(ToString::to_string);
        let clean = all.filter(|part| !named.contains(&part.as_str()));
        let clean: Vec<Value> = clean.map(|part| json!({ "do": "clean", "part": part })).collect();
        let begun = [json!({ "do": "arrange", "arrangement": arrangement }), sheet()];
        let told = wrong(begun.into_iter().chain(clean).chain(found.clone()));
        assert!(told.is_empty(), "{found:?}\n{}", told.join("\n"));
    }
    // Measured alone, and nothing looked at.
    let pin: Part = "crankpin.1".parse().unwrap();
    let begun = [json!({ "do": "arrange", "arrangement": arrangement }), sheet()];
    let told = wrong(begun.into_iter().chain(readings(pin, true)));
    assert!(told.is_empty(), "{}", told.join("\n"));
}
