//! Published patterns of wear, each entered as a job: its cause must rank first, and with every second entry left out
//! still be among the first three. The cases and their sources stand in `tests/published-patterns`.

use std::collections::{BTreeMap, BTreeSet};

use serde::Deserialize;
use wearbook_core::cause::{CauseReport, diagnose};
use wearbook_core::engine::{Arrangement, Engine, Part};
use wearbook_core::figure::Figure;
use wearbook_core::job::{Change, Job, OnPart, TagRecord};
use wearbook_core::measure::{Conformity, Length, Phase, Quantity};
use wearbook_core::wear::{Grade, Tag, Zone};

use crate::data::{self, Status, is_like};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Case {
    pub(crate) pattern: String,
    /// Where the pattern is written, and what that is worth.
    source: String,
    status: BTreeSet<Status>,
    pub(crate) cause: String,
    /// The place at which it must be found, as the report calls it.
    place: Option<String>,
    pub(crate) engine: String,
    pub(crate) entries: Vec<Entry>,
}

/// One finding on each of the parts whose written form fits, `*` standing for anything.
#[derive(Deserialize, Clone)]
#[serde(deny_unknown_fields)]
pub(crate) struct Entry {
    pub(crate) parts: String,
    pub(crate) tag: Option<Tag>,
    pub(crate) grade: Option<Grade>,
    #[serde(default)]
    pub(crate) zones: Vec<Zone>,
    #[serde(default)]
    pub(crate) clean: bool,
    pub(crate) quantity: Option<Quantity>,
    pub(crate) verdict: Option<Conformity>,
}

pub(crate) type Figures = BTreeMap<Part, Vec<Figure>>;

/// Every published pattern.
pub(crate) fn published() -> Vec<Case> {
    data::published("published-patterns").into_iter().map(|(_, case)| case).collect()
}

#[test]
fn published_patterns_rank_their_cause_first() {
    let cases = published();
    let mut failures = vec![];
    for case in &cases {
        let engine = engine(&case.engine);
        let single = singled(&engine, &case.entries);
        let told = report(&engine, &single);
        if told.causes[0].id != case.cause {
            failures.push(format!("{}: {} ranks {}", case.pattern, case.cause, ranks(&told)));
        }
        let likeliest = told.causes[0].places.first().map(|place| place.label.clone());
        if told.causes[0].id == case.cause && case.place.is_some() && likeliest != case.place {
            failures.push(format!("{}: found at {likeliest:?}", case.pattern));
        }
        for offset in [0, 1] {
            let half: Vec<Entry> = single.iter().skip(offset).step_by(2).cloned().collect();
            let told = report(&engine, &half);
            if !told.causes[..3].iter().any(|view| view.id == case.cause) {
                failures.push(format!("{}, half {offset}: {} ranks {}", case.pattern, case.cause, ranks(&told)));
            }
        }
    }
    assert!(failures.is_empty(), "{} of {} cases:\n{}", failures.len(), cases.len(), failures.join("\n"));
    assert!(cases.len() >= 45);
    assert!(cases.iter().all(|case| !case.source.is_empty() && !case.status.is_empty()));
}

pub(crate) fn engine(name: &str) -> Engine {
    let arrangement = match name {
        "inline-4" => Arrangement::inline(4),
        "vee-8" => Arrangement::vee(8),
        other => panic!("{other} is no engine of these cases"),
    };
    Engine::new(arrangement).unwrap()
}

/// One entry for each part.
pub(crate) fn singled(engine: &Engine, entries: &[Entry]) -> Vec<Entry> {
    let mut all = vec![];
    for entry in entries {
        let fitting = engine.parts().iter().filter(|part| is_like(&part.to_string(), &entry.parts));
        let of_entry: Vec<Entry> = fitting.map(|part| Entry { parts: part.to_string(), ..entry.clone() }).collect();
        assert!(!of_entry.is_empty(), "{} names no part", entry.parts);
        all.extend(of_entry);
    }
    all
}

fn report(engine: &Engine, entries: &[Entry]) -> CauseReport {
    let (job, figures) = recorded(engine, entries);
    diagnose(Some(engine), &job, &figures)
}

/// The entries as a job with its figures.
pub(crate) fn recorded(engine: &Engine, entries: &[Entry]) -> (Job, Figures) {
    let mut job = Job { arrangement: Some(engine.arrangement().clone()), ..Job::default() };
    let mut figures = Figures::new();
    for entry in entries {
        let part: Part = entry.parts.parse().unwrap();
        if let (Some(tag), Some(grade)) = (entry.tag, entry.grade) {
            let zones: BTreeSet<Zone> = entry.zones.iter().copied().collect();
            job.check(&Change::OnPart(OnPart::Tag { part, tag, grade, zones: zones.clone() })).unwrap();
            job.parts.entry(part).or_default().tags.insert(tag, TagRecord { grade, zones });
        } else if let (Some(quantity), Some(verdict)) = (entry.quantity, entry.verdict) {
            figures.entry(part).or_default().push(figure(quantity, verdict));
        } else {
            assert!(entry.clean, "{} has nothing entered", entry.parts);
            job.parts.entry(part).or_default().clean = true;
        }
    }
    (job, figures)
}

pub(crate) fn figure(quantity: Quantity, verdict: Conformity) -> Figure {
    Figure {
        quantity,
        name: String::new(),
        station: None,
        phase: Phase::Found,
        low: Length::default(),
        high: Length::default(),
        shown: String::new(),
        at: String::new(),
        uncertainty: Length::default(),
        verdict: Some(verdict),
        limits: String::new(),
        allowed: (None, None),
        new: (None, None),
        because: String::new(),
        source: String::new(),
        general: false,
    }
}

fn ranks(report: &CauseReport) -> String {
    let shown: Vec<String> =
        report.causes.iter().take(5).map(|view| format!("{} {:.3}", view.id, view.probability)).collect();
    shown.join(", ")
}
