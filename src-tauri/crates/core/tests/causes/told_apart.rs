//! Causes that look alike, held against each other: a word, a reading or the complaint tells which it was.

use std::collections::BTreeMap;

use serde_json::{Value, json};
use wearbook_core::assess::assess;
use wearbook_core::cause::{CauseReport, diagnose};
use wearbook_core::engine::{Arrangement, Engine, Part};
use wearbook_core::figure::Figure;
use wearbook_core::job::{Change, DeviceId, EditId, Job};
use wearbook_core::measure::{Conformity, Quantity};

use crate::patterns::figure;

/// What was done to an in-line four, as a job.
fn job(changes: &[Value]) -> Job {
    let arrange = json!({ "do": "arrange", "arrangement": Arrangement::inline(4) });
    let mut job = Job::default();
    for (n, change) in std::iter::once(&arrange).chain(changes).enumerate() {
        let change: Change = serde_json::from_value(change.clone()).unwrap();
        job.check(&change).unwrap();
        job.apply(EditId::next(None, n as u64 + 1, DeviceId(1)), &change);
    }
    job
}

fn tag(part: &str, tag: &str, grade: u8, zones: &[&str]) -> Value {
    json!({ "do": "tag", "part": part, "tag": tag, "grade": grade, "zones": zones })
}

fn clean(part: &str) -> Value {
    json!({ "do": "clean", "part": part })
}

fn of(report: &CauseReport, id: &str) -> f64 {
    report.causes.iter().find(|view| view.id == id).unwrap().probability
}

fn told(changes: &[Value], figures: &[(&str, Quantity, Conformity)]) -> CauseReport {
    let mut all: BTreeMap<Part, Vec<Figure>> = BTreeMap::new();
    for (part, quantity, verdict) in figures {
        all.entry(part.parse().unwrap()).or_default().push(figure(*quantity, *verdict));
    }
    diagnose(Some(&Engine::new(Arrangement::inline(4)).unwrap()), &job(changes), &all)
}

/// NAVEDTRA 14075: wear at the opposite ends of the two shells is a bent rod, whatever the wear is called.
#[test]
fn a_bent_rod_is_one_by_its_pattern() {
    let front = ["front-left", "front-crown", "front-right"];
    let rear = ["rear-left", "rear-crown", "rear-right"];
    for name in ["copper-showing", "scoring", "wiping", "fatigue-cracks", "lining-loss"] {
        let changes = [
            tag("rod-shell.2.upper", name, 3, &front),
            tag("rod-shell.2.lower", name, 2, &rear),
            clean("rod-shell.1.upper"),
            clean("rod-shell.1.lower"),
            clean("rod-shell.3.upper"),
            clean("rod-shell.3.lower"),
        ];
        let report = told(&changes, &[]);
        assert_eq!(report.causes[0].id, "bent-rod", "{name}: {:.3}", of(&report, "bent-rod"));
        assert!(of(&report, "bent-rod") > 0.6, "{name}: {:.3}", of(&report, "bent-rod"));
    }
}

/// NAVEDTRA 14075 fig. 3-18 and common practice: dust takes the height of rings and widens the grooves, fuel their radial
/// thickness.
#[test]
fn dust_and_fuel_are_told_apart_by_grooves() {
    let worn: Vec<Value> = (1..=4)
        .flat_map(|n| [tag(&format!("bore.{n}"), "scoring", 2, &[]), tag(&format!("piston.{n}"), "scoring", 2, &[])])
        .collect();
    let parts: Vec<String> = (1..=4).map(|n| format!("piston.{n}")).collect();
    let grooves = |verdict: Conformity| -> Vec<(&str, Quantity, Conformity)> {
        parts.iter().map(|part| (part.as_str(), Quantity::GrooveClearance, verdict)).collect()
    };
    let (wide, good) = (told(&worn, &grooves(Conformity::Outside)), told(&worn, &grooves(Conformity::Within)));
    assert!(of(&wide, "dusty-air") > 0.9 && of(&wide, "fuel-dilution") < 0.1, "{:.3}", of(&wide, "dusty-air"));
    assert!(of(&good, "dusty-air") < of(&wide, "dusty-air") - 0.3, "{:.3}", of(&good, "dusty-air"));
}

/// OD 1001 lesson 4: what is milky is water; thin, black and smelling of fuel is fuel (common practice).
#[test]
fn coolant_that_was_told_is_not_called_fuel() {
    let mut changes = vec![json!({ "do": "complain", "complaint": "coolant-in-oil", "told": true })];
    changes.extend((1..=5).map(|n| tag(&format!("main-shell.{n}.lower"), "corrosion", 2, &[])));
    changes.extend((1..=4).map(|n| tag(&format!("rod-shell.{n}.upper"), "corrosion", 2, &[])));
    let report = told(&changes, &[]);
    assert!(of(&report, "corrosion") > 0.9, "{:.3}", of(&report, "corrosion"));
    assert!(of(&report, "fuel-dilution") < 0.2, "{:.3}", of(&report, "fuel-dilution"));
}

/// A big end that was measured round is not "no longer round".
#[test]
fn a_reading_counts() {
    let changes = [
        tag("rod-shell.2.upper", "copper-showing", 3, &["middle-left", "middle-right"]),
        tag("rod-shell.2.lower", "copper-showing", 3, &["middle-left", "middle-right"]),
        clean("rod-shell.1.upper"),
        clean("rod-shell.3.upper"),
    ];
    let unknown = of(&told(&changes, &[]), "oval-housing");
    let round = of(&told(&changes, &[("rod.2", Quantity::OutOfRound, Conformity::Within)]), "oval-housing");
    let oval = of(&told(&changes, &[("rod.2", Quantity::OutOfRound, Conformity::Outside)]), "oval-housing");
    assert!(round < unknown / 3.0 && oval > 0.9, "{round:.3} {unknown:.3} {oval:.3}");
}

/// A torn air cleaner and a filler without its lid: the dust of the story, with its way in.
#[test]
fn the_way_in_is_named_with_its_cause() {
    let mut changes = vec![
        tag("air-cleaner", "torn", 3, &[]),
        json!({ "do": "complain", "complaint": "knock-without-load", "told": true }),
    ];
    changes.extend((1..=4).map(|n| tag(&format!("rod-shell.{n}.upper"), "embedded-debris", 3, &[])));
    changes.extend((1..=4).map(|n| tag(&format!("rod-shell.{n}.lower"), "scoring", 3, &[])));
    let report = assess(&job(&changes)).causes;
    let dirt = report.causes.iter().find(|view| view.id == "dirt-in-oil").unwrap();
    assert!(dirt.named && dirt.chain.ways[0].contains("air cleaner"), "{:?}", dirt.chain);
    assert_eq!(dirt.chain.complaints, ["Sharp knock without load"]);
    assert!(!dirt.chain.damage.is_empty());
}
