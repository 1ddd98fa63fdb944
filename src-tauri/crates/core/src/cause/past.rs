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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cause::catalogue;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use serde_json::{Value, json};

    /// One fact that is told and found counts once, by the stronger; another fact counts beside it.
    #[test]
    fn told_and_found_are_one_fact() {
        let told = |complaint: &str| json!({ "do": "complain", "complaint": complaint, "told": true });
        let tag = |part: &str, tag: &str| json!({ "do": "tag", "part": part, "tag": tag, "grade": 2 });
        let belief = |id: &str, changes: &[Value]| {
            let cause = catalogue::ALL.into_iter().find(|cause| cause.id == id).unwrap();
            shifted_prior(cause, &job_of(&[&[arrange(&Arrangement::inline(4))], changes].concat()))
        };
        for (id, complaint, (part, find)) in [
            ("fuel-dilution", "fuel-in-oil", ("engine-oil", "fuel-smell")),
            ("corrosion", "coolant-in-oil", ("engine-oil", "milky")),
            ("corrosion", "coolant-used", ("coolant", "low-level")),
        ] {
            let (told, found) = (told(complaint), tag(part, find));
            let (by_word, by_eye) = (belief(id, std::slice::from_ref(&told)), belief(id, std::slice::from_ref(&found)));
            let both = belief(id, &[told, found]);
            assert!((both - by_word.max(by_eye)).abs() < 1e-9, "{id}: {by_word} {by_eye} {both}");
        }
        let other = [told("coolant-used"), tag("engine-oil", "milky")];
        assert!(belief("corrosion", &other) > belief("corrosion", &other[1..]) + 0.05);
    }
}
