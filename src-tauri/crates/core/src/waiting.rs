//! What a job waits for, and whose move it is: so that a shop with many engines sees its day.

use serde::{Deserialize, Serialize};

use crate::assess::Assessment;
use crate::job::{Consent, Job, ListKind, Step};
use crate::list::ListItem;
use crate::view::{PartView, Seen};
use crate::work::Outcome;

/// What is waited for. The order is that in which a bench takes them up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum WaitsFor {
    /// How the engine is laid out must be entered.
    Layout,
    /// Parts must be looked at.
    Look,
    /// Parts can't be decided before they are measured or tested.
    Measure,
    /// Work must be proposed to the customer.
    Proposal,
    /// The customer must answer, or be asked about what costs more.
    Customer,
    /// What is free to be ordered is not.
    Order,
    /// What was ordered has not come.
    Supplier,
    /// What is free to go to the machine shop has not gone.
    Trip,
    /// The machine shop has not sent back what it got.
    MachineShop,
    /// What was done here or came back must be finished, measured or fitted.
    Bench,
}

/// How much waits for something.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Waiting {
    /// For what.
    pub waits_for: WaitsFor,
    /// How many parts, lines or answers: at least 1.
    pub count: usize,
}

/// What a job waits for; nothing where it is closed, or refused by the customer.
pub fn waiting(job: &Job, assessment: &Assessment) -> Vec<Waiting> {
    if job.closed.is_some() || job.refusal.is_some() {
        return vec![];
    }
    if assessment.engine.is_none() {
        return vec![Waiting { waits_for: WaitsFor::Layout, count: 1 }];
    }
    let progress = assessment.progress;
    let is_undecided = |view: &&PartView| view.seen != Seen::NotLooked && view.decision.outcome == Outcome::CantSay;
    let on = |kind: ListKind, is: fn(&&ListItem) -> bool| {
        let items = assessment.list(kind).into_iter().flat_map(|list| &list.items);
        items.filter(|item| !item.is_done() && item.consent != Some(Consent::No)).filter(is).count()
    };
    let approval = &assessment.approval;
    let is_answered = approval.answer.is_some();
    let is_shown = approval.version > 0;
    // A proposal before everything was looked at would have to be made again.
    let is_seen = progress.looked > 0 && progress.looked == progress.parts;
    let to_propose = usize::from(is_seen && !is_shown && !assessment.quote.jobs.is_empty());
    let to_answer = usize::from(is_shown && !is_answered);
    let to_ask = usize::from(is_answered && (assessment.excess.is_some() || approval.exceeding().next().is_some()));
    let counts = [
        (WaitsFor::Look, progress.parts - progress.looked.min(progress.parts)),
        (WaitsFor::Measure, assessment.parts.iter().filter(is_undecided).count()),
        (WaitsFor::Proposal, to_propose),
        (WaitsFor::Customer, to_answer + to_ask),
        (WaitsFor::Order, on(ListKind::Order, is_free)),
        (WaitsFor::Supplier, on(ListKind::Order, is_out)),
        (WaitsFor::Trip, on(ListKind::MachineShop, is_free)),
        (WaitsFor::MachineShop, on(ListKind::MachineShop, is_out)),
        (WaitsFor::Bench, on(ListKind::RebuildHere, is_free) + on(ListKind::Clean, is_free)),
    ];
    let waits = counts.into_iter().filter(|(_, count)| *count > 0);
    waits.map(|(waits_for, count)| Waiting { waits_for, count }).collect()
}

/// Nothing holds it, and nothing has been done about it.
fn is_free(item: &&ListItem) -> bool {
    item.waits_for.is_empty() && item.tick.as_ref().is_none_or(|tick| tick.at(Step::Sent) == 0)
}

/// It has gone, and not all of it has come back.
fn is_out(item: &&ListItem) -> bool {
    item.tick.as_ref().is_some_and(|tick| tick.at(Step::Sent) > 0 && tick.at(Step::Back) < item.quantity)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use serde_json::{Value, json};

    #[track_caller]
    fn waits(changes: &[Value]) -> Vec<(WaitsFor, usize)> {
        let job = job_of(changes);
        waiting(&job, &assess(&job)).into_iter().map(|own| (own.waits_for, own.count)).collect()
    }

    #[test]
    fn whose_move_it_is() {
        let arranged = arrange(&Arrangement::inline(2));
        let tagged = json!({ "do": "tag", "part": "piston.1", "tag": "scuffing", "grade": 4 });
        assert_eq!(waits(&[]), [(WaitsFor::Layout, 1)]);
        let untouched = waits(std::slice::from_ref(&arranged));
        assert!(matches!(untouched[..], [(WaitsFor::Look, parts)] if parts > 20), "{untouched:?}");
        let seen = waits(&[arranged.clone(), tagged.clone()]);
        assert_eq!(seen[0].0, WaitsFor::Look);
        assert!(seen.iter().any(|(what, _)| *what == WaitsFor::Order), "a piston is free to order: {seen:?}");
        let quote = assess(&job_of(&[arranged.clone(), tagged.clone()])).quote;
        let proposed = json!({ "do": "propose", "quote": quote });
        let shown = waits(&[arranged.clone(), tagged.clone(), proposed]);
        assert!(shown.contains(&(WaitsFor::Customer, 1)), "{shown:?}");
        for end in [json!({ "do": "close", "closed": true }), json!({ "do": "refuse", "goes_back": "in-boxes" })] {
            assert_eq!(waits(&[arranged.clone(), tagged.clone(), end]), []);
        }
    }

    #[test]
    fn what_was_ordered_waits_for_the_supplier_until_it_came() {
        let changes = [
            arrange(&Arrangement::inline(2)),
            json!({ "do": "tag", "part": "piston.1", "tag": "scuffing", "grade": 4 }),
        ];
        let came = assess(&job_of(&changes));
        let item = came.list(ListKind::Order).and_then(|list| list.items.iter().find(is_free)).unwrap();
        let tick = |step: &str| {
            let taken = json!({ "step": step, "done": item.quantity });
            json!({ "do": "tick", "item": item.asked, "tick": { "done": 0, "steps": [taken] } })
        };
        let ordered = waits(&[&changes[..], &[tick("sent")]].concat());
        assert!(ordered.contains(&(WaitsFor::Supplier, 1)), "{ordered:?}");
        let here = waits(&[&changes[..], &[tick("sent"), tick("back")]].concat());
        assert!(!here.iter().any(|(what, _)| *what == WaitsFor::Supplier), "{here:?}");
    }
}
