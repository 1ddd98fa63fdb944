//! What speaks for and against one cause.

use super::catalogue::Cause;
use super::network::Belief;
use super::past::{complaint_factors, history_factors};
use super::report::PlaceView;
use super::scaled::binary_log;
use super::topic::Topic;
use super::way_in::{factor, traces, ways_in};
use crate::engine::Part;
use crate::job::Job;

/// What is told of one cause.
#[derive(Debug)]
pub(super) struct Explained {
    pub(super) cause: &'static Cause,
    /// 0 to 1.
    pub(super) probability: f64,
    /// Where it may be, likeliest first.
    pub(super) places: Vec<PlaceView>,
    pub(super) speaks_for: Vec<Reason>,
    pub(super) speaks_against: Vec<Reason>,
}

/// A group of like findings and its weight.
#[derive(Debug, Clone)]
pub(super) struct Reason {
    /// What they are about; none for what is known of the past, and for all the rest taken together.
    pub(super) topic: Option<Topic>,
    pub(super) words: String,
    pub(super) parts: Vec<Part>,
    /// In doublings of the odds, rounded to a tenth; positive for the cause.
    pub(super) weight: f64,
    /// Whether no other cause explains it.
    pub(super) alone: bool,
}

/// Weights smaller than this (half a doubling of the odds) are not worth a line.
pub(super) const SMALLEST_WEIGHT: f64 = 0.5;
/// A cause explains alone what makes it at least eight times likelier, and no other cause twice.
pub(super) const ALONE_FROM: f64 = 3.0;
/// The weight from which something speaks for another cause too.
pub(super) const OTHERS_BELOW: f64 = 1.0;

impl Explained {
    /// Of a cause without any reasons yet.
    pub(super) fn new(cause: &'static Cause, probability: f64) -> Self {
        Self { cause, probability, places: vec![], speaks_for: vec![], speaks_against: vec![] }
    }

    /// Takes a reason to its side, if it weighs enough. That worn parts show nothing else speaks against what would have made
    /// more; for the others it is no finding to point at.
    pub(super) fn weigh(&mut self, reason: Reason) {
        let is_nothing = reason.topic == Some(Topic::NothingElse);
        if reason.weight >= SMALLEST_WEIGHT && !is_nothing {
            self.speaks_for.push(reason);
        } else if reason.weight <= -SMALLEST_WEIGHT {
            self.speaks_against.push(reason);
        }
    }

    /// What is known of the engine's past.
    pub(super) fn past(&mut self, job: &Job) {
        for (fact, shift) in history_factors(self.cause, job) {
            let answered = if shift > 1.0 {
                fact.statement().to_owned()
            } else {
                format!("it is not so that {}", fact.statement())
            };
            let words = format!("from its past: {answered}");
            self.weigh(Reason { topic: None, words, parts: vec![], weight: rounded(binary_log(shift)), alone: false });
        }
        for (complaint, shift) in complaint_factors(self.cause, job) {
            let words = format!("complained of: {}", complaint.words().to_lowercase());
            self.weigh(Reason { topic: None, words, parts: vec![], weight: rounded(binary_log(shift)), alone: false });
        }
        let ways = ways_in(self.cause, job);
        let found: Vec<_> = ways.iter().filter(|own| !own.way.found(job).is_empty()).collect();
        let left = traces(self.cause, job);
        let outside = rounded(binary_log(factor(self.cause, job)));
        let ways = found.iter().map(|own| own.way.words.to_owned());
        let traced = left.iter().map(|(part, tag)| {
            let kind = part.kind.row().name.said(job.terms);
            format!("{} ({kind})", tag.row().name)
        });
        let named: Vec<String> = ways.chain(traced).collect();
        let parts = found.iter().flat_map(|own| own.way.found(job)).chain(left.iter().map(|(part, _)| *part)).collect();
        let words = if outside > 0.0 {
            format!("found outside: {}", named.join("; "))
        } else {
            "nothing found outside that would let it in".into()
        };
        self.weigh(Reason { topic: None, words, parts, weight: outside, alone: false });
    }

    /// The strongest first.
    pub(super) fn sorted(mut self) -> Self {
        self.speaks_for.sort_by(|a, b| b.weight.total_cmp(&a.weight));
        self.speaks_against.sort_by(|a, b| a.weight.total_cmp(&b.weight));
        self
    }
}

/// How much a piece of evidence changes the odds, in doublings.
pub(super) fn weight(all: Belief, without: Belief) -> f64 {
    rounded(binary_log(all.odds()) - binary_log(without.odds()))
}

/// To a tenth; a weight beyond all measure (nothing else could explain the finding) is kept finite for the border.
fn rounded(weight: f64) -> f64 {
    let tenths = (weight.clamp(-99.0, 99.0) * 10.0).round();
    // Not a number only where a cause was out of the question before and after.
    if tenths.is_nan() { 0.0 } else { tenths / 10.0 }
}
