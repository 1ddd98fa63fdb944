//! From the way in over the damage to the complaint: how it came about, read off what is believed of each.

use super::answers::{Answered, ComplaintAnswer};
use super::explained::Explained;
use super::report::{Chain, WayInView};
use super::way_in::{Likely, ways_in};
use crate::engine::{Engine, Part};
use crate::job::Job;

/// A way in is named from this probability on (our judgement).
const NAMED_FROM: f64 = 0.5;
/// Ways in less likely than this are not told.
const TOLD_FROM: f64 = 0.1;
/// Findings told as the damage.
const DAMAGE_TOLD: usize = 2;

/// The ways in that are told of a cause, likeliest first.
pub(super) fn told(explained: &Explained, job: &Job) -> Vec<WayInView> {
    let view = |own: Likely| WayInView {
        id: own.way.id.into(),
        words: own.way.words.into(),
        probability: own.probability,
        named: own.probability >= NAMED_FROM,
    };
    ways_in(explained.cause, job).into_iter().filter(|own| own.probability >= TOLD_FROM).map(view).collect()
}

/// The chain of a cause.
pub(super) fn chain(explained: &Explained, answers: &[ComplaintAnswer], engine: Option<&Engine>, job: &Job) -> Chain {
    let ways = ways_in(explained.cause, job);
    let named: Vec<&str> = ways.iter().filter(|own| own.probability >= NAMED_FROM).map(|own| own.way.words).collect();
    let mut look: Vec<Part> = Vec::new();
    if let (true, Some(engine)) = (named.is_empty(), engine) {
        for own in &ways {
            look.extend(own.way.open(engine, job).filter(|part| !look.contains(part)).collect::<Vec<Part>>());
        }
    }
    let seen = || explained.speaks_for.iter().filter(|reason| reason.topic.is_some());
    let parts: Vec<Part> = seen().flat_map(|reason| reason.parts.iter().copied()).collect();
    let is_of_it = |answer: &&ComplaintAnswer| {
        matches!(answer.answered, Answered::Explained | Answered::Partly)
            && answer.parts.iter().any(|part| parts.contains(part))
    };
    Chain {
        way_in: named.join("; "),
        has_way_in: !ways.is_empty(),
        cause: explained.cause.name(job.terms).into(),
        damage: seen().take(DAMAGE_TOLD).map(|reason| reason.words.clone()).collect(),
        complaints: answers.iter().filter(is_of_it).map(|answer| answer.told.clone()).collect(),
        look_labels: engine.map_or_else(Vec::new, |engine| look.iter().map(|part| engine.label(*part)).collect()),
        look,
    }
}
