//! Causes in words.

use std::collections::{BTreeMap, BTreeSet};

use super::answers::ComplaintAnswer;
use super::catalogue::{Todo, TodoRow};
use super::chain;
use super::explained::{Explained, Reason};
use super::report::{CauseReport, CauseView, Evidence, PlaceView, Unexplained, WayToClose};
use super::strength::Strength;
use super::verdict::{Looked, Verdict};
use super::way_in::to_close;
use crate::engine::{At, Engine, Part, PartKind};
use crate::job::Job;
use crate::wear::{Grade, Tag};
use crate::words::capitalised;

/// A named cause needs a probability of at least this much.
const NAMED_FROM: f64 = 0.5;
/// A cause is told with its reasons from this probability on, where enough has been seen.
const TOLD_FROM: f64 = 0.25;
/// Places named with a cause before the rest is counted.
const PLACES_NAMED: usize = 3;
/// Causes told in a sentence each before the rest is counted.
const CAUSES_TOLD: usize = 3;

/// What was worked out of an engine.
#[derive(Debug, Default)]
pub(super) struct WorkedOut {
    pub(super) causes: Vec<Explained>,
    pub(super) looked: Looked,
    pub(super) answers: Vec<ComplaintAnswer>,
    pub(super) unexplained: Vec<Unexplained>,
}

/// All that is told: the answers, the causes, likeliest first, and what fits none of them.
pub(super) fn report(worked_out: WorkedOut, engine: Option<&Engine>, job: &Job) -> CauseReport {
    let WorkedOut { mut causes, looked, answers, unexplained } = worked_out;
    causes.sort_by(|a, b| b.probability.total_cmp(&a.probability).then_with(|| a.cause.id.cmp(b.cause.id)));
    let likely = |ordinary: bool| {
        let of_kind = causes.iter().filter(|explained| explained.cause.is_ordinary() == ordinary);
        of_kind.map(|explained| explained.probability).any(|probability| probability >= NAMED_FROM)
    };
    let (named, worn) = (likely(false), likely(true));
    let verdict = looked.verdict(named, worn);
    let enough_seen = looked.is_enough() && named;
    let beliefs: BTreeMap<&str, f64> =
        causes.iter().map(|explained| (explained.cause.id, explained.probability)).collect();
    let causes: Vec<CauseView> =
        causes.into_iter().map(|explained| view(explained, enough_seen, &beliefs, &answers, engine, job)).collect();
    let summary = match verdict {
        Verdict::Named => summary(&causes, worn),
        other => looked.sentence(other),
    };
    let to_close = closing(engine, job);
    CauseReport { verdict, enough_seen, summary, answers, causes, to_close, unexplained }
}

/// What a customer is told: the likeliest causes, each in a sentence, and whether the engine is worn besides.
fn summary(views: &[CauseView], worn: bool) -> String {
    let named = || views.iter().filter(|view| view.named);
    let mut sentences: Vec<String> = named()
        .take(CAUSES_TOLD)
        .map(|view| {
            let places = named_places(&view.places);
            let place = if places.is_empty() { String::new() } else { format!(" Where: {places}.") };
            format!("{}: {}{place}", capitalised(&view.likelihood), view.plainly)
        })
        .collect();
    match named().count().saturating_sub(CAUSES_TOLD) {
        0 => {}
        1 => sentences.push("One more cause is likely too.".into()),
        more => sentences.push(format!("{more} more causes are likely too.")),
    }
    if worn {
        sentences.push("Besides, it is worn by ordinary use.".into());
    }
    sentences.join(" ")
}

/// The likely places in words: "cylinder 2, intake; cylinder 3, exhaust; and 4 more".
fn named_places(places: &[PlaceView]) -> String {
    let likely = || places.iter().filter(|place| place.named);
    let named: Vec<&str> = likely().take(PLACES_NAMED).map(|place| place.label.as_str()).collect();
    match likely().count().saturating_sub(PLACES_NAMED) {
        0 => named.join("; "),
        more => format!("{}; and {more} more", named.join("; ")),
    }
}

fn likelihood(probability: f64) -> &'static str {
    match probability {
        p if p >= 0.9 => "very likely",
        p if p >= NAMED_FROM => "likely",
        p if p >= 0.25 => "possible",
        p if p >= 0.05 => "unlikely",
        _ => "very unlikely",
    }
}

/// Never more digits than the evidence bears: to the nearest ten, and no nearer to certainty than 95 %.
fn percent(probability: f64) -> String {
    match probability {
        p if p > 0.95 => "more than 95 %".into(),
        p if p < 0.05 => "less than 5 %".into(),
        p => format!("about {} %", (p * 10.0).round() * 10.0),
    }
}

/// A cause with all that is told of it.
fn view(
    explained: Explained,
    enough_seen: bool,
    beliefs: &BTreeMap<&str, f64>,
    answers: &[ComplaintAnswer],
    engine: Option<&Engine>,
    job: &Job,
) -> CauseView {
    let terms = job.terms;
    let (ways_in, chain) = (chain::told(&explained, job), chain::chain(&explained, beliefs, answers, engine, job));
    let Explained { cause, probability, .. } = explained;
    let places = named_places(&explained.places);
    let name = cause.name(terms);
    let name = if places.is_empty() { name.into() } else { format!("{name}, {places}") };
    // Ordinary wear is what every engine has: it is said once, apart.
    let is_told = enough_seen && !cause.is_ordinary();
    let found: Vec<&str> = to_close(job).iter().map(|(way, ..)| way.id).collect();
    // What closes a way in that was found is asked for once, for all that came by it.
    let asked = |rows: &'static [TodoRow]| rows.iter().filter(|row| !found.contains(&row.way));
    let is_way_known = !chain.ways.is_empty();
    let todos = |rows| asked(rows).map(|row| todo(row, is_way_known, job)).collect();
    CauseView {
        id: cause.id.into(),
        name,
        probability,
        ordinary: cause.is_ordinary(),
        named: is_told && probability >= NAMED_FROM,
        told: is_told && probability >= TOLD_FROM,
        likelihood: likelihood(probability).into(),
        percent: percent(probability),
        plainly: cause.plainly(terms).into(),
        whole_engine: cause.is_shared(),
        places: explained.places,
        evidence_for: evidence(explained.speaks_for),
        evidence_against: evidence(explained.speaks_against),
        ways_in,
        chain,
        check: todos(cause.check),
        put_right: todos(cause.put_right),
        source: cause.source.into(),
    }
}

/// What is asked for; a look that was taken is not asked for again, nor one for a way in that is known.
fn todo(row: &TodoRow, is_way_known: bool, job: &Job) -> Todo {
    let looked =
        |kind: &PartKind| job.parts.get(&Part { kind: *kind, at: At::Engine }).is_some_and(|record| record.looked_at());
    let mut said = row.said(job.terms);
    if !row.looks.is_empty() && row.looks.iter().all(looked) {
        said.moot = "it has been looked at".into();
    } else if row.looks.len() > 1 && is_way_known {
        said.moot = "the way in is known".into();
    }
    said
}

/// The ways in that were found, with what is put right.
fn closing(engine: Option<&Engine>, job: &Job) -> Vec<WayToClose> {
    let Some(engine) = engine else { return vec![] };
    let told = |(part, tag, grade): &(Part, Tag, Grade)| {
        format!("{}: {}, grade {}", engine.label(*part), tag.row().name, grade.number())
    };
    to_close(job)
        .into_iter()
        .map(|(way, row, finds)| WayToClose {
            id: way.id.into(),
            todo: row.said(job.terms).words,
            found: finds.iter().map(told).collect(),
            parts: finds.iter().map(|(part, ..)| *part).collect::<BTreeSet<Part>>().into_iter().collect(),
        })
        .collect()
}

fn evidence(reasons: Vec<Reason>) -> Vec<Evidence> {
    let told = |Reason { words, parts, weight, alone, .. }| Evidence {
        words,
        parts,
        weight,
        strength: Strength::of(weight),
        alone,
    };
    reasons.into_iter().map(told).collect()
}
