//! What the customer has said to the work on the lists: nothing is ordered or machined against a no.

use super::ListItem;
use crate::job::{Approval, Consent, Refusal};
use crate::money::{Charge, PriceKey};

/// Holds every item to which the customer has not said yes, once anything was proposed to them. Of an answer counts the
/// last, until a later proposal is answered: to ask once more frees nothing.
pub(super) fn heed(approval: &Approval, answered: &Approval, items: &mut [ListItem]) {
    if approval.version == 0 {
        return;
    }
    for item in items {
        let Some(of) = &item.of else { continue };
        item.consent = answered.said_to(of);
        let changed = answered.since.iter().find(|since| since.of == *of && since.exceeds);
        let held = match (item.consent, changed) {
            (Some(Consent::Yes), None) => continue,
            (Some(Consent::Yes), Some(changed)) => format!("Changed since the customer said yes. {}", changed.because),
            (Some(Consent::No), _) => format!("The customer said no to {}.", answered.named(of)),
            (Some(Consent::Later), _) => format!("The customer put off {}.", answered.named(of)),
            (None, _) if approval.asks(of) => format!("The customer has not answered yet to {}.", approval.named(of)),
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
const NOT_ASKED: &str = "The customer has not been asked: it came after the proposal.";

/// Holds what may cost more than the engine is worth until something was proposed to the customer: a shaft or a block.
/// What the shop put on a list itself is its own word, and no amount above which one must ask is made up.
pub(super) fn ask_first(approval: &Approval, items: &mut [ListItem]) {
    if approval.version > 0 {
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
    use super::NOT_ASKED;
    use crate::assess::assess;
    use crate::engine::PartKind;
    use crate::job::testing::{arranged, then};
    use crate::job::{ItemKey, Job, ListKind};
    use crate::money::{Charge, JobScope, PriceKey};
    use crate::work::Work;
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
        check(&job, PartKind::CorePlugs, Some("The customer has not answered yet to job 3, Block."));
        let answer = json!({ "proposal": proposal, "jobs": answers, "name": "A. Customer" });
        apply(&mut job, json!({ "do": "answer-proposal", "answer": answer }));
        apply(&mut job, json!({ "do": "tag", "part": "oil-pump", "tag": "scoring", "grade": 4 }));
        apply(&mut job, json!({ "do": "tag", "part": "piston.2", "tag": "scuffing", "grade": 3 }));
        check(&job, PartKind::CorePlugs, Some("The customer said no to job 3, Block."));
        check(&job, PartKind::ThrustFace, Some("The customer put off job 1, Crankshaft, rods and bearings."));
        let more = "Changed since the customer said yes. 1 proposed, now 2: Piston 1; Piston 2: Scuffing, grade 3: Torn streaks that catch a fingernail.";
        check(&job, PartKind::Piston, Some(more));
        check(&job, PartKind::OilPump, Some(NOT_ASKED));
        // To ask once more frees nothing: the answer that there is holds until the new one.
        let again = assess(&job).quote;
        apply(&mut job, json!({ "do": "propose", "quote": again }));
        check(&job, PartKind::CorePlugs, Some("The customer said no to job 3, Block."));
        check(&job, PartKind::ThrustFace, Some("The customer put off job 1, Crankshaft, rods and bearings."));
        check(&job, PartKind::Piston, Some(more));
        check(&job, PartKind::OilPump, Some("The customer has not answered yet to job 4, Oil pump and drives."));
    }

    #[test]
    fn whatever_was_proposed_waits_for_the_answer_and_what_came_after_it_too() {
        let mut job = arranged(crate::engine::Arrangement::inline(2));
        let own = |what: &str| {
            let item = json!({ "list": "order", "what": what, "quantity": 1, "because": "", "price": 120_000 });
            json!({ "do": "add-item", "item": item })
        };
        let held = |job: &Job| -> Vec<(String, Option<String>)> {
            let order = assess(job);
            let own = order
                .list(ListKind::Order)
                .unwrap()
                .items
                .iter()
                .filter(|item| matches!(item.asked.key, ItemKey::Own { .. }));
            own.map(|item| (item.what.clone(), item.waits_for.first().cloned())).collect()
        };
        then(&mut job, 1, &json!({ "do": "tag", "part": "block", "tag": "cracks", "grade": 4 }));
        then(&mut job, 2, &own("Head, rebuilt"));
        check(&job, PartKind::Block, Some("Ask the customer first."));
        assert_eq!(held(&job), [("Head, rebuilt".into(), None)], "a shop may work without a proposal");
        let quote = assess(&job).quote;
        then(&mut job, 3, &json!({ "do": "propose", "quote": quote }));
        then(&mut job, 4, &own("Turbocharger"));
        let named = |of: &Charge| quote.job_of(of).map(|own| format!("job {}, {}", own.number, own.title)).unwrap();
        let block = named(&PriceKey { kind: PartKind::Block, work: Work::Replace }.into());
        check(&job, PartKind::Block, Some(&format!("The customer has not answered yet to {block}.")));
        let head = named(&quote.lines.iter().find(|line| line.what == "Head, rebuilt").unwrap().of);
        let waits = format!("The customer has not answered yet to {head}.");
        let expected = [("Head, rebuilt".into(), Some(waits)), ("Turbocharger".into(), Some(NOT_ASKED.into()))];
        assert_eq!(held(&job), expected);
    }
}
