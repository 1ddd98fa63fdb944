//! What is to be done and is not in the sum: lines without a price, what the shop has not entered of what stands on every
//! bill, and what it takes to put the cause right.

use crate::cause::CauseReport;
use crate::job::{ItemKey, Job, ListKind};
use crate::list::WorkList;
use crate::money::{Charge, JobScope, Quote, QuoteLine, Standing, StandingCharge};
use crate::words::counted;
use crate::work::Work;

/// Lines without a price, and causes, that are named before the rest is counted.
const NAMED: usize = 2;

/// What stands on no line of the bill, in sentences; none where all is in it.
pub fn left_out(job: &Job, quote: &Quote, lists: &[WorkList], causes: &CauseReport) -> Vec<String> {
    if !job.is_begun() {
        return vec![];
    }
    [standing(job, quote), to_put_right(job, lists, causes)].into_iter().flatten().collect()
}

/// Lines without a price in a sentence, the dearest first as far as that is known without one; none where all have one.
pub fn unpriced(quote: &Quote) -> Option<String> {
    let mut open: Vec<&QuoteLine> = quote.lines.iter().filter(|line| line.net.is_none()).collect();
    open.sort_by_key(|line| usually_dear(&line.of));
    let open: Vec<&str> = open.iter().map(|line| line.what.as_str()).collect();
    Some(match open.split_at_checked(NAMED) {
        _ if open.is_empty() => return None,
        Some((named, rest)) if !rest.is_empty() => format!(
            "Not priced yet and not in the sum: {}. And {}.",
            named.join("; "),
            counted(rest.len(), "more line", "more lines")
        ),
        _ => format!("Not priced yet and not in the sum: {}.", open.join("; ")),
    })
}

/// How dear such a line is as a rule, the dearest first (our judgement): a crankshaft or block, then machining and other new
/// parts than those of every overhaul, then the rest.
fn usually_dear(of: &Charge) -> u8 {
    match of.work() {
        Some(of) if of.may_outweigh_engine() => 0,
        Some(of) if of.work == Work::Replace && !of.kind.row().always_renewed => 1,
        Some(of) if matches!(of.work, Work::Machine | Work::Sleeve | Work::WeldUp) => 1,
        _ => 2,
    }
}

/// What every engine that is put together again takes. Freight and sundries a shop may well have in its prices.
const OF_EVERY_REBUILD: [Standing; 5] =
    [Standing::StripDown, Standing::Assembly, Standing::GasketSet, Standing::Fluids, Standing::TestRun];

/// What has no price of its own there. A shop that puts items of its own beside it has its own way, and names it itself.
fn standing(job: &Job, quote: &Quote) -> Option<String> {
    let has_own = |goods: bool| {
        let mut own = job.own_items.iter().map(|(_, item)| item).filter(|item| item.scope == Some(JobScope::Assembly));
        own.any(|item| (item.list == ListKind::Order) == goods)
    };
    let is_in = |standing: Standing| {
        let charge = Charge::Standing(StandingCharge { standing });
        quote.lines.iter().any(|line| line.of == charge) || has_own(standing.is_goods())
    };
    let is_agreed = job.strip_down().is_some();
    let missing = OF_EVERY_REBUILD.into_iter().filter(|standing| !is_in(*standing));
    let names: Vec<String> = missing
        .filter(|standing| *standing != Standing::StripDown || !is_agreed)
        .map(|standing| standing.said(job.arrangement.as_ref()).to_lowercase())
        .collect();
    (!names.is_empty()).then(|| format!("Not in it: {}.", names.join("; ")))
}

/// The causes that are named and not put right yet, unless the shop has an item of its own for it.
fn to_put_right(job: &Job, lists: &[WorkList], causes: &CauseReport) -> Option<String> {
    let is_priced = |list: ListKind| job.own_items.iter().any(|(_, item)| item.list == list && item.is_charged());
    let open = lists.iter().filter(|list| list.kind == ListKind::PutRight).flat_map(|list| &list.items);
    let open: Vec<(&str, &str)> = open
        .filter(|item| !item.is_done())
        .filter_map(|item| match &item.asked.key {
            ItemKey::PutRight { cause, check } => Some((cause.as_str(), check.as_str())),
            _ => None,
        })
        .collect();
    let asks = causes.causes.iter().filter(|cause| cause.named).filter(|cause| {
        let is_open = |id| open.contains(&(cause.id.as_str(), id));
        cause.put_right.iter().any(|todo| is_open(todo.id))
    });
    let names: Vec<&str> = asks.map(|cause| cause.chain.cause.as_str()).take(NAMED).collect();
    let several = if names.len() > 1 { "causes" } else { "cause" };
    (!names.is_empty() && !is_priced(ListKind::PutRight))
        .then(|| format!("Putting the {several} right is not in it: {}.", names.join("; ")))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::{Arrangement, Construction, Cooling};
    use crate::job::testing::{arrange, job_of};
    use serde_json::{Value, json};

    #[track_caller]
    fn check(changes: &[Value], expected: &[&str]) {
        let clean = json!({ "do": "clean", "part": "crankpin.1" });
        let changes: Vec<Value> = [arrange(&Arrangement::inline(4)), clean].iter().chain(changes).cloned().collect();
        let job = job_of(&changes);
        let assessment = assess(&job);
        let of_bill = unpriced(&assessment.quote).into_iter().chain(assessment.left_out);
        assert_eq!(of_bill.collect::<Vec<_>>(), expected);
    }

    fn prices(priced: &[(&str, &str)], standing: &[&str]) -> Value {
        let price = |(kind, work): &(&str, &str)| json!({ "of": { "kind": kind, "work": work }, "part": 1000 });
        let prices: Vec<Value> = priced.iter().map(price).collect();
        let standing: Vec<Value> = standing.iter().map(|of| json!({ "of": of, "amount": 500 })).collect();
        json!({ "do": "use-prices", "prices": { "currency": "EUR", "prices": prices, "standing": standing } })
    }

    const ROUTINE: [(&str, &str); 6] = [
        ("main-shell", "replace"),
        ("rod-shell", "replace"),
        ("thrust-face", "replace"),
        ("rings", "replace"),
        ("block", "fit"),
        ("core-plugs", "replace"),
    ];
    const ALL: [&str; 5] = ["strip-down", "assembly", "gasket-set", "fluids", "test-run"];

    #[test]
    fn what_stands_on_every_bill_and_has_no_price_is_named() {
        check(&[prices(&ROUTINE[..5], &ALL)], &["Not priced yet and not in the sum: Core plugs: replace."]);
        check(&[prices(&ROUTINE, &ALL)], &[]);
        check(&[prices(&ROUTINE, &ALL[..2])], &["Not in it: gaskets and seals; oil, filter and coolant; test run."]);
        let gaskets = json!({ "list": "order", "what": "Gaskets, oil, filter", "quantity": 1, "price": 900, "scope": "assembly" });
        let own = json!({ "do": "add-item", "item": gaskets });
        check(&[prices(&ROUTINE, &ALL[..2]), own], &["Not in it: test run."]);
    }

    #[test]
    fn the_dearest_is_named_first() {
        let lost = json!({ "do": "tag", "part": "block", "tag": "cracks", "grade": 4 });
        let named = "Not priced yet and not in the sum: Cylinder block: replace;";
        let priced: Vec<_> = ROUTINE.into_iter().filter(|(kind, _)| *kind != "core-plugs").collect();
        let job = job_of(&[arrange(&Arrangement::inline(1)), lost, prices(&priced, &ALL)]);
        let told = unpriced(&assess(&job).quote).unwrap();
        assert!(told.starts_with(named), "{told:?}");
    }

    #[test]
    fn an_air_cooled_engine_takes_no_coolant() {
        let construction = Construction { cooling: Some(Cooling::Air), ..Construction::default() };
        let air = Arrangement { construction, ..Arrangement::inline(4) };
        assert_eq!(Standing::Fluids.said(Some(&air)), "Oil and filter");
        assert_eq!(Standing::Fluids.said(None), "Oil, filter and coolant");
    }

    #[test]
    fn putting_the_cause_right_is_said_to_be_apart() {
        let embedded = |n: u8| json!({ "do": "tag", "part": format!("main-shell.{n}.lower"), "tag": "embedded-debris", "grade": 3 });
        let changes: Vec<Value> =
            std::iter::once(arrange(&Arrangement::inline(4))).chain((1..=5).map(embedded)).collect();
        let job = job_of(&changes);
        let assessment = assess(&job);
        let told = to_put_right(&job, &assessment.lists, &assessment.causes).unwrap();
        assert!(told.starts_with("Putting the cause right is not in it: "), "{told}");
    }
}
