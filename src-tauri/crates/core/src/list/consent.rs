//! What the customer has said to the work on the lists: nothing is ordered or machined against a no.

use super::ListItem;
use crate::job::{Approval, Consent, Refusal};
use crate::money::{Charge, PriceKey};

/// Holds every item to which the customer has not said yes, once they have answered a proposal.
pub(super) fn heed(approval: &Approval, items: &mut [ListItem]) {
    if approval.answer.is_none() {
        return;
    }
    for item in items {
        let Some(of) = &item.of else { continue };
        item.consent = approval.said_to(of);
        let changed = approval.since.iter().find(|since| since.of == *of && since.exceeds);
        let held = match (item.consent, changed) {
            (Some(Consent::Yes), None) => continue,
            (Some(Consent::Yes), Some(changed)) => format!("Changed since the customer said yes. {}", changed.because),
            (Some(Consent::No), _) => format!("The customer said no to {}.", approval.named(of)),
            (Some(Consent::Later), _) => format!("The customer put off {}.", approval.named(of)),
            (None, _) => NOT_ASKED.into(),
        };
        item.waits_for.insert(0, held);
    }
}

/// Holds everything once the customer has refused the work.
pub(super) fn heed_refusal(refusal: Option<&Refusal>, items: &mut [ListItem]) {
    if refusal.is_none() {
        return;
    }
    for item in items {
        item.consent = Some(Consent::No);
        item.waits_for.insert(0, REFUSED.into());
    }
}

const REFUSED: &str = "The customer refused the work: the engine goes back.";
const NOT_ASKED: &str = "The customer has not been asked: it came after the proposal that was answered.";

/// Holds what may cost more than the engine is worth until the customer has answered: a shaft or a block.
pub(super) fn ask_first(approval: &Approval, items: &mut [ListItem]) {
    if approval.answer.is_some() {
        return;
    }
    let is_dear =
        |item: &&mut ListItem| item.of.as_ref().and_then(Charge::work).is_some_and(PriceKey::may_outweigh_engine);
    for item in items.iter_mut().filter(is_dear) {
        item.waits_for.push("Ask the customer first.".into());
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::assess;
    use crate::engine::PartKind;
    use crate::job::testing::{arranged, then};
    use crate::job::{ItemKey, Job, ListKind};
    use crate::money::JobScope;
    use serde_json::json;

    /// The first thing that holds an item of the order.
    #[track_caller]
    fn check(job: &Job, kind: PartKind, holds: Option<&str>) {
        let assessment = assess(job);
        let order = assessment.list(ListKind::Order).unwrap();
        let item = order.items.iter().find(|own| own.asked.key == ItemKey::Order { kind, parts: vec![] }).unwrap();
        assert_eq!(item.waits_for.first().map(String::as_str), holds, "{}", item.what);
    }

    #[test]
    fn what_the_customer_did_not_agree_to_is_held() {
        let mut job = arranged(crate::engine::Arrangement::inline(2));
        let mut n = 0;
        let mut apply = |job: &mut Job, change: serde_json::Value| {
            n += 1;
            then(job, n, &change)
        };
        apply(&mut job, json!({ "do": "tag", "part": "piston.1", "tag": "scuffing", "grade": 3 }));
        check(&job, PartKind::CorePlugs, None);
        let quote = assess(&job).quote;
        let answers = quote.jobs.iter().map(|asked| {
            let answer = match asked.of {
                JobScope::Block => "no",
                JobScope::Bearings => "later",
                _ => "yes",
            };
            json!({ "of": asked.of, "answer": answer })
        });
        let answers: Vec<_> = answers.collect();
        let proposal = apply(&mut job, json!({ "do": "propose", "quote": quote }));
        check(&job, PartKind::CorePlugs, None);
        let answer = json!({ "proposal": proposal, "jobs": answers, "name": "A. Customer" });
        apply(&mut job, json!({ "do": "answer-proposal", "answer": answer }));
        apply(&mut job, json!({ "do": "tag", "part": "oil-pump", "tag": "scoring", "grade": 4 }));
        apply(&mut job, json!({ "do": "tag", "part": "piston.2", "tag": "scuffing", "grade": 3 }));
        check(&job, PartKind::CorePlugs, Some("The customer said no to job 3, Block."));
        check(&job, PartKind::ThrustFace, Some("The customer put off job 1, Crankshaft, rods and bearings."));
        let more = "Changed since the customer said yes. 1 proposed, now 2: Piston 1; Piston 2: Scuffing, grade 3: Torn streaks that catch a fingernail.";
        check(&job, PartKind::Piston, Some(more));
        check(
            &job,
            PartKind::OilPump,
            Some("The customer has not been asked: it came after the proposal that was answered."),
        );
    }
}
