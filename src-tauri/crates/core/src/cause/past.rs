//! What is known of an engine beside its parts, as far as it changes a cause's odds: its past, the complaint, what was found
//! outside.

use super::catalogue::Cause;
use super::heard::{heard, is_found_so};
use super::network::Belief;
use super::way_in::factor;
use crate::job::{Answer, Complaint, HistoryFact, Job};

/// The factors by which what is known of the past changes a cause's odds. A *no* weighs half as much as a *yes*, in
/// the other direction (our judgement); *not known* weighs nothing.
pub(super) fn history_factors(cause: &Cause, job: &Job) -> Vec<(HistoryFact, f64)> {
    let factor = |(fact, yes): &(HistoryFact, f64)| match job.history.get(fact)? {
        Answer::Yes => Some((*fact, beside_found(cause, Complaint::of(*fact), *yes, job)?)),
        Answer::No => Some((*fact, 1.0 / yes.sqrt())),
        Answer::Unknown => None,
    };
    cause.shifts.iter().filter_map(factor).collect()
}

/// The factors by which what the customer complained of changes a cause's odds.
pub(super) fn complaint_factors(cause: &Cause, job: &Job) -> Vec<(Complaint, f64)> {
    let told = job.complaints.iter();
    told.filter_map(|complaint| {
        Some((*complaint, beside_found(cause, Some(*complaint), heard(cause.id, *complaint)?, job)?))
    })
    .collect()
}

/// What is told beside a find of the same fact: the find stands for both. What was told adds only by how much more it says;
/// none where that is nothing.
fn beside_found(cause: &Cause, told: Option<Complaint>, says: f64, job: &Job) -> Option<f64> {
    let is_found = told.is_some_and(|told| is_found_so(told, job));
    if !is_found || says <= 1.0 {
        return Some(says);
    }
    Some(says / factor(cause, job)).filter(|more| *more > 1.0)
}

/// A cause's prior probability, with what is known of the past, what was complained of and what was found outside the parts
/// taken into account.
pub(super) fn shifted_prior(cause: &Cause, job: &Job) -> f64 {
    let past = history_factors(cause, job).into_iter().map(|(_, factor)| factor);
    let told = complaint_factors(cause, job).into_iter().map(|(_, factor)| factor);
    let shift: f64 = past.chain(told).product::<f64>() * factor(cause, job);
    if shift == 1.0 {
        return cause.prior;
    }
    let odds = Belief::of(cause.prior).odds() * shift;
    odds / (1.0 + odds)
}
