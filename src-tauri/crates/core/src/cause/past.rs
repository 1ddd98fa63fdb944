//! What is known of the engine's past, as far as it changes a cause's odds.

use super::catalogue::Cause;
use super::network::Belief;
use crate::job::{Answer, HistoryFact, Job};

/// The factors by which what is known of the past changes a cause's odds. A *no* weighs half as much as a *yes*, in
/// the other direction (our judgement); *not known* weighs nothing.
pub(super) fn history_factors(cause: &Cause, job: &Job) -> Vec<(HistoryFact, f64)> {
    let factor = |(fact, yes): &(HistoryFact, f64)| match job.history.get(fact)? {
        Answer::Yes => Some((*fact, *yes)),
        Answer::No => Some((*fact, 1.0 / yes.sqrt())),
        Answer::Unknown => None,
    };
    cause.shifts.iter().filter_map(factor).collect()
}

/// A cause's prior probability, what is known of the past taken into account.
pub(super) fn shifted_prior(cause: &Cause, job: &Job) -> f64 {
    let factors = history_factors(cause, job);
    if factors.is_empty() {
        return cause.prior;
    }
    let odds = factors.iter().fold(Belief::of(cause.prior).odds(), |odds, (_, factor)| odds * factor);
    odds / (1.0 + odds)
}
