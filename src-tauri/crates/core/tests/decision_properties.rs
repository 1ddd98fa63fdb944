//! What must hold of decisions whatever was found: a worse finding never leads to a milder outcome, what a person decides
//! stands beside the rules' view, every part ends in one outcome, and nothing is on a list without a reason.
#![allow(clippy::unwrap_used, reason = "a test may stop at once")]

use std::collections::{BTreeMap, BTreeSet};

use proptest::prelude::*;
use serde_json::json;
use wearbook_core::assess::assess_given;
use wearbook_core::cause::diagnose;
use wearbook_core::decide::{Decision, decide};
use wearbook_core::engine::{Arrangement, Engine, Part, PartKind, Tappets};
use wearbook_core::job::{DeviceId, EditId, Job, Overrule, TagRecord, Taken};
use wearbook_core::measure::Quantity;
use wearbook_core::sizing::Measured;
use wearbook_core::wear::{Grade, Tag, Zone};
use wearbook_core::work::Outcome;

fn decided(engine: &Engine, job: &Job) -> Vec<Decision> {
    decide(engine, job, &Measured::of(engine, job))
}

fn tag(job: &mut Job, part: Part, tag: Tag, grade: Grade, zones: BTreeSet<Zone>) {
    let record = job.parts.entry(part).or_default();
    record.clean = false;
    record.tags.insert(tag, TagRecord { grade, zones });
}

/// What a new journal or bore measures.
const NEW: [(&str, &str); 3] = [("main-journal", "60.00 mm"), ("crankpin", "50.00 mm"), ("bore", "80.00 mm")];

/// Every part was looked at and is clean, and journals and bores measure like new.
fn sound(engine: &Engine) -> Job {
    let mut job = Job { arrangement: Some(engine.arrangement().clone()), ..Job::default() };
    let line =
        |(kind, new): (&str, &str)| json!({ "of": { "kind": kind, "quantity": "diameter" }, "min": new, "max": new });
    let sheet = json!({
        "head": { "name": "Sound", "unit": "millimetre" },
        "lines": NEW.map(line),
        "undersizes": [{ "journals": "mains", "size": "0.25 mm" }, { "journals": "crankpins", "size": "0.25 mm" }],
        "oversizes": [{ "size": "0.25 mm" }],
    });
    job.sheet = serde_json::from_value(sheet).unwrap();
    for part in engine.parts() {
        job.parts.entry(*part).or_default().clean = true;
        let Some((_, new)) = NEW.iter().find(|(kind, _)| *kind == part.kind.row().id) else { continue };
        for spot in part.kind.has(Quantity::Diameter).unwrap().spots.needed() {
            let reading = json!({ "part": part, "quantity": "diameter", "spot": spot, "value": new });
            let edit = EditId::next(job.readings.last().map(|taken| taken.edit), 1, DeviceId(1));
            job.readings.push(Taken { edit, reading: serde_json::from_value(reading).unwrap() });
        }
    }
    job
}

fn engines() -> [Engine; 3] {
    [Tappets::FlatHydraulic, Tappets::RollerSolid, Tappets::FlatSolid]
        .map(|tappets| Engine::new(Arrangement { tappets, ..Arrangement::inline(2) }).unwrap())
}

/// The first part of every kind: the others of a kind are decided alike.
fn one_of_each(engine: &Engine) -> Vec<Part> {
    let mut seen = BTreeSet::new();
    engine.parts().iter().copied().filter(|part| seen.insert(part.kind)).collect()
}

/// No zone, each zone alone, all zones.
fn markings(part: Part) -> Vec<BTreeSet<Zone>> {
    let all = part.kind.row().zones.zones();
    let each = all.iter().map(|zone| BTreeSet::from([*zone]));
    let mut markings: Vec<BTreeSet<Zone>> = std::iter::once(BTreeSet::new()).chain(each).collect();
    markings.push(all.iter().copied().collect());
    markings
}

#[track_caller]
fn none_milder(engine: &Engine, before: &[Decision], after: &[Decision], what: impl Fn() -> String) {
    let all = || engine.parts().iter().zip(before).zip(after);
    // A rod that is renewed after all comes with its bolts, and those of it need not be bought.
    let is_new_rod = all().any(|((part, before), after)| {
        part.kind == PartKind::Rod && before.outcome == Outcome::Machine && after.outcome == Outcome::Replace
    });
    for ((part, before), after) in all() {
        let is_milder = after.outcome < before.outcome || after.by_rules < before.by_rules;
        assert!(
            !is_milder || is_new_rod && part.kind == PartKind::RodBolts,
            "{}: {part} was {:?} and becomes {:?}",
            what(),
            before.outcome,
            after.outcome
        );
    }
}

#[test]
fn journals_and_bores_of_a_sound_engine_go_back() {
    let [engine, ..] = engines();
    let sound = decided(&engine, &sound(&engine));
    for (part, decision) in engine.parts().iter().zip(sound) {
        if ["main-journal", "crankpin", "bore", "crankshaft", "camshaft"].contains(&part.kind.row().id) {
            assert_eq!(decision.outcome, Outcome::PutBack, "{part}: {:?}", decision.reasons);
        }
    }
}

/// Every kind, every tag, every step of grade, every marking of zones, on an engine that is sound and on one at which nobody
/// has looked.
#[test]
fn a_worse_grade_is_never_decided_milder() {
    for engine in engines() {
        let unseen = Job { arrangement: Some(engine.arrangement().clone()), ..Job::default() };
        for base in [unseen, sound(&engine)] {
            for part in one_of_each(&engine) {
                for damage in part.kind.row().tags.iter().filter(|tag| tag.is_damage()) {
                    for zones in markings(part) {
                        let at = |grade: &Grade| {
                            let mut job = base.clone();
                            tag(&mut job, part, *damage, *grade, zones.clone());
                            decided(&engine, &job)
                        };
                        let by_grade: Vec<Vec<Decision>> = Grade::ALL.iter().map(at).collect();
                        for (milder, worse) in by_grade.iter().zip(by_grade.iter().skip(1)) {
                            none_milder(&engine, milder, worse, || format!("{part} {damage:?} {zones:?}"));
                        }
                    }
                }
            }
        }
    }
}

/// A second tag on a part, after every first one and on a clean part, makes nothing milder.
#[test]
fn a_further_tag_is_never_decided_milder() {
    const GRADES: [Grade; 2] = [Grade::ONE, Grade::THREE];
    for engine in engines() {
        let base = sound(&engine);
        for part in one_of_each(&engine) {
            let damages: Vec<(Tag, Grade)> = part
                .kind
                .row()
                .tags
                .iter()
                .filter(|tag| tag.is_damage())
                .flat_map(|tag| GRADES.map(|grade| (*tag, grade)))
                .collect();
            let clean = decided(&engine, &base);
            for (first, grade) in &damages {
                let mut job = base.clone();
                tag(&mut job, part, *first, *grade, BTreeSet::new());
                let one = decided(&engine, &job);
                none_milder(&engine, &clean, &one, || format!("{part} clean, then {first:?}"));
                for (second, grade) in damages.iter().filter(|(second, _)| second != first) {
                    let mut both = job.clone();
                    tag(&mut both, part, *second, *grade, BTreeSet::new());
                    let two = decided(&engine, &both);
                    none_milder(&engine, &one, &two, || format!("{part} {first:?}, then {second:?}"));
                }
            }
        }
    }
}

type Finding = (Part, Tag, Grade);

fn any_finding() -> impl Strategy<Value = Finding> {
    let parts = engines()[0].parts().to_vec();
    prop::sample::select(parts).prop_flat_map(|part| {
        (Just(part), prop::sample::select(part.kind.row().tags), prop::sample::select(&Grade::ALL[..]))
    })
}

fn any_overrule() -> impl Strategy<Value = (Part, Outcome)> {
    let parts = engines()[0].parts().to_vec();
    prop::sample::select(parts).prop_flat_map(|part| (Just(part), prop::sample::select(part.kind.row().outcomes)))
}

fn found(base: Job, findings: &[Finding], overrules: &[(Part, Outcome)]) -> Job {
    let mut job = base;
    for (part, what, grade) in findings {
        tag(&mut job, *part, *what, *grade, BTreeSet::new());
    }
    for (part, outcome) in overrules {
        job.parts.entry(*part).or_default().overrule = Some(Overrule { outcome: *outcome, reason: "A word.".into() });
    }
    job
}

fn base(engine: &Engine, is_sound: bool) -> Job {
    if is_sound { sound(engine) } else { Job { arrangement: Some(engine.arrangement().clone()), ..Job::default() } }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn what_a_person_decides_stands_beside_the_rules_view(
        is_sound: bool, findings in prop::collection::vec(any_finding(), 0..8),
        others in prop::collection::vec(any_overrule(), 0..3), (part, outcome) in any_overrule(),
    ) {
        let [engine, ..] = engines();
        let others: Vec<_> = others.into_iter().filter(|(other, _)| *other != part).collect();
        let before = found(base(&engine, is_sound), &findings, &others);
        let after = found(before.clone(), &[], &[(part, outcome)]);
        let here = engine.parts().iter().position(|other| *other == part).unwrap();
        let [before, after] = [before, after].map(|job| decided(&engine, &job).swap_remove(here));
        prop_assert_eq!(after.outcome, outcome);
        prop_assert_eq!(after.overruled_because.as_deref(), Some("A word."));
        prop_assert_eq!((after.by_rules, &after.reasons), (before.by_rules, &before.reasons), "{}", part);
    }

    #[test]
    fn every_part_ends_in_one_outcome_and_every_line_has_its_reason(
        is_sound: bool, findings in prop::collection::vec(any_finding(), 0..12),
        overrules in prop::collection::vec(any_overrule(), 0..4),
    ) {
        let [engine, ..] = engines();
        let job = found(base(&engine, is_sound), &findings, &overrules);
        // Decisions know nothing of causes: those of an engine of which nothing is known are had at once.
        let assessment = assess_given(&job, |_, _| diagnose(None, &job, &BTreeMap::new()));
        let decided: Vec<Part> = assessment.parts.iter().map(|view| view.part).collect();
        prop_assert_eq!(&decided, engine.parts(), "each part once, in order");
        for view in &assessment.parts {
            let Decision { outcome, by_rules, reasons, possible, .. } = &view.decision;
            prop_assert!(*outcome == Outcome::CantSay || possible.contains(outcome), "{}: {:?}", view.part, outcome);
            prop_assert!(*by_rules == Outcome::CantSay || possible.contains(by_rules), "{}: {:?}", view.part, by_rules);
            prop_assert_eq!(reasons.first().map(|reason| reason.outcome), Some(*by_rules), "{}", view.part);
            prop_assert!(reasons.iter().all(|reason| reason.because.ends_with('.') && !reason.source.is_empty()), "{:?}", reasons);
        }
        for item in assessment.lists.iter().flat_map(|list| &list.items) {
            prop_assert!(!item.because.trim().is_empty() && item.quantity > 0, "{:?}", item);
        }
        for line in &assessment.quote.lines {
            prop_assert!(!line.because.trim().is_empty(), "{:?}", line);
        }
    }
}
