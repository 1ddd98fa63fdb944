//! To order: sized parts in their sizes, held or free, and everything else that is replaced.

use std::borrow::Cow;

use super::ListItem;
use super::bench::Bench;
use super::work::{Shared, count, count_of, grouped};
use crate::engine::{At, Part, PartKind};
use crate::job::{ItemKey, Job};
use crate::money::{Charge, PartState, PriceKey, Quote, StandingCharge};
use crate::operation::{Operation, has_come};
use crate::sheet::SizeGroup;
use crate::sizing::{Action, GroupPlan};
use crate::view::{OrderLine, OrderState, PartView, Sizing, with_new_caps};
use crate::words::{capitalised, plural};
use crate::work::{Outcome, Work};

/// What comes in a size, held or free; then everything else that is replaced.
pub(super) fn order(bench: &Bench<'_>, work: &Shared<'_>) -> Vec<ListItem> {
    let Bench { job, parts, sizing, operations, .. } = *bench;
    let mut replaced = work.with(Outcome::Replace);
    let mut items: Vec<ListItem> = Vec::new();
    for line in &sizing.orders {
        // Of what is ordered in more than one size, each part belongs to the line of its own.
        let views = replaced.get_mut(&line.kind).map(|left| of_line(line, left)).unwrap_or_default();
        if views.is_empty() {
            continue;
        }
        // What is left over is ordered in no size of its own, under a key of its own.
        let is_all = is_only(sizing, line) && replaced.get(&line.kind).is_none_or(Vec::is_empty);
        let is_each = matches!(line.kind, PartKind::Tappet | PartKind::CamBearing);
        let parts = if is_all || !is_each && is_only(sizing, line) {
            vec![]
        } else {
            views.iter().map(|view| view.part).collect()
        };
        let item = ListItem {
            what: capitalised(&line.what),
            quantity: if matches!(line.kind, PartKind::Piston | PartKind::Tappet) {
                count(&views)
            } else {
                count_of(line.quantity)
            },
            of: Some(PriceKey { kind: line.kind, work: Work::Replace }.into()),
            waits_for: if line.state == OrderState::Held { line.waits_for.clone() } else { vec![] },
            ..grouped(ItemKey::Order { kind: line.kind, parts }, &views, line.size_shown.clone(), work.terms())
        };
        let mut item = item.in_size(line.size, &line.size_shown);
        let flanged = item.parts.iter().copied().find(|part| brings_flanges(work, *part));
        if let Some(At::MainHalf(main, _)) = flanged.map(|part| part.at) {
            item.detail.push_str(&format!("; with thrust flanges on main {main}"));
        }
        let graded = line.grades.iter().map(|own| format!("; grade {} for {}", own.grade, own.labels.join(", ")));
        item.detail.extend(graded);
        if line.kind == PartKind::Tappet {
            let labels: Vec<&str> = views.iter().map(|view| view.label.as_str()).collect();
            item.detail.push_str(&format!(": {}", labels.join("; ")));
        }
        items.push(item);
    }
    for (kind, views) in replaced.iter().filter(|(_, views)| !views.is_empty()) {
        let key = ItemKey::Order { kind: *kind, parts: vec![] };
        let mut item = match size_of_bores(*kind, sizing) {
            Some(plan) => work.grouped(key, views, plan.size_shown.clone()).in_size(plan.size, &plan.size_shown),
            None => work.grouped(key, views, String::new()),
        };
        item.of = Some(PriceKey { kind: *kind, work: Work::Replace }.into());
        if *kind == PartKind::Bore {
            let name = kind.renewed_as(work.engine().arrangement()).said(work.terms());
            item.what = capitalised(&if views.len() > 1 { plural(&name) } else { name.into_owned() });
            item.asked.words.clone_from(&item.what);
        }
        // Of what there is more than one of, it is said which.
        if views.len() < work.all_of(*kind) && item.detail.is_empty() && !kind.row().always_renewed {
            let labels: Vec<&str> = views.iter().map(|view| view.label.as_str()).collect();
            item.detail = labels.join("; ");
        }
        item.detail.push_str(&with_its_work(*kind, operations));
        if *kind == PartKind::ThrustFace {
            (item.what, item.quantity) = ("Thrust bearing, set".into(), 1);
        }
        if *kind == PartKind::CamBearing && is_block_awaited(job, work) {
            item.waits_for.push("The new block has not come yet: see first which bearings are in it.".into());
        }
        if let Some(carrier) = comes_only_with(*kind, work) {
            item.waits_for.push(format!("It comes only with the {carrier}, which is not replaced: decide."));
        }
        items.push(item);
    }
    items.extend(caps(&with_new_caps(job, parts), work));
    for item in &mut items {
        supplied(job, item);
    }
    items.extend(goods(bench.quote));
    items
}

/// What every rebuild takes and the shop has a price for: it stands on the bill once, and here.
fn goods(quote: &Quote) -> impl Iterator<Item = ListItem> {
    quote.lines.iter().filter_map(|line| {
        let Charge::Standing(StandingCharge { standing }) = line.of else { return None };
        standing.is_goods().then(|| ListItem {
            because: line.because.clone(),
            of: Some(line.of.clone()),
            ..ListItem::new(ItemKey::Standing { standing }, line.what.clone(), 1)
        })
    })
}

/// What the work says of it: the plugs that a wash takes out besides, and the rods that get new bolts where not all do.
fn with_its_work(kind: PartKind, operations: &[Operation]) -> String {
    let fitted = |of: PartKind| operations.iter().find(|own| own.of == PriceKey { kind: of, work: Work::Fit });
    let is_washed = operations.iter().any(|own| own.of == PriceKey { kind: PartKind::Block, work: Work::Clean });
    match kind {
        PartKind::CorePlugs if is_washed => "with the gallery plugs that are driven in".into(),
        PartKind::RodBolts => fitted(PartKind::Rod).map(|own| own.which.clone()).unwrap_or_default(),
        _ => String::new(),
    }
}

/// Whether the cam runs in a block that is renewed, and the new one has not come.
fn is_block_awaited(job: &Job, work: &Shared<'_>) -> bool {
    let is_new = work.with(Outcome::Replace).contains_key(&PartKind::Block);
    work.engine().arrangement().is_cam_in_block() && is_new && !has_come(job, PartKind::Block)
}

/// The caps of main bores that are renewed alone.
fn caps(bores: &[&PartView], work: &Shared<'_>) -> Option<ListItem> {
    let of = PriceKey { kind: PartKind::HousingBore, work: Work::Replace };
    let labels: Vec<&str> = bores.iter().map(|view| view.label.as_str()).collect();
    let name = of.kind.renewed_as(work.engine().arrangement()).said(work.terms());
    let name = if bores.len() == 1 { name.into_owned() } else { plural(&name) };
    (!bores.is_empty()).then(|| ListItem {
        detail: labels.join("; "),
        parts: bores.iter().map(|view| view.part).collect(),
        because: "The old one can’t be used again.".into(),
        of: Some(of.into()),
        ..ListItem::new(ItemKey::Order { kind: of.kind, parts: vec![] }, capitalised(&name), count(bores))
    })
}

/// What is not new is named so, and where the old parts go.
fn supplied(job: &Job, item: &mut ListItem) {
    let ItemKey::Order { kind, .. } = item.asked.key else { return };
    let mut supply = job.supplies.get(&kind).copied().unwrap_or_default();
    // That an exchange part wants the old one back is said with it.
    let old = supply.old_words();
    if !old.is_empty() && supply.state != PartState::Exchange {
        item.mind = format!("Old parts {old}.");
    }
    let state = supply.state_words(job.prices.currency);
    if !state.is_empty() {
        let space = if item.detail.is_empty() { "" } else { "; " };
        item.detail.push_str(&format!("{space}{state}"));
    }
    if supply.state != PartState::Exchange {
        supply.old = supply.old.or_else(|| job.old_parts_go());
    }
    item.supply = Some(supply);
}

/// What is in one piece with it, so that it is not to be had alone; none where it is.
fn comes_only_with(kind: PartKind, work: &Shared<'_>) -> Option<Cow<'static, str>> {
    match kind.comes_with(work.engine().arrangement()) {
        Some(_) if kind.detail_of().is_some() => None,
        Some(carrier) => Some(carrier.row().name.said(work.terms())),
        None if kind == PartKind::TappetBore => Some("cylinder head".into()),
        None => None,
    }
}

/// Whether a shell is one of those on which the thrust flanges are.
fn brings_flanges(work: &Shared<'_>, shell: Part) -> bool {
    work.brought_by(shell).any(|view| view.kind == PartKind::ThrustFace)
}

/// Takes from the parts that are left those of a line.
fn of_line<'a>(line: &OrderLine, left: &mut Vec<&'a PartView>) -> Vec<&'a PartView> {
    let (views, rest) = left.iter().partition(|view| line.parts.contains(&view.part));
    *left = rest;
    views
}

/// Whether its kind is ordered in no other size.
fn is_only(sizing: &Sizing, line: &OrderLine) -> bool {
    sizing.orders.iter().filter(|other| other.kind == line.kind).count() == 1
}

/// A piston that is renewed alone takes the size of its bore.
fn size_of_bores(kind: PartKind, sizing: &Sizing) -> Option<&GroupPlan> {
    sizing
        .plan(SizeGroup::Bores)
        .filter(|plan| kind == PartKind::Piston && plan.action != Action::Open && !plan.size_shown.is_empty())
}

#[cfg(test)]
mod tests {
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of, then};
    use crate::job::{Job, ListKind};
    use crate::money::{OldPart, StripDownOrder};
    use serde_json::json;

    /// Published: 16 CCR 3353(a), a part is new unless it is named used, rebuilt or reconditioned.
    #[test]
    fn what_is_not_new_is_named_on_order_and_bill() {
        let prices = json!({ "do": "use-prices", "prices": { "currency": "EUR", "prices": [] } });
        let worn = json!({ "do": "tag", "part": "oil-pump", "tag": "scoring", "grade": 4 });
        let exchange = json!({ "state": "exchange", "deposit": 4_000, "old": null });
        let supply = json!({ "do": "supply-parts", "kind": "oil-pump", "supply": exchange });
        let kept = json!({ "state": "new", "old": "evidence" });
        let shells = json!({ "do": "supply-parts", "kind": "rod-shell", "supply": kept });
        let assessment = assess(&job_of(&[arrange(&Arrangement::inline(4)), prices, worn, supply, shells]));
        let order = assessment.list(ListKind::Order).unwrap();
        let detail = |what: &str| order.items.iter().find(|item| item.what == what).unwrap().detail.as_str();
        let told = "exchange, deposit 40.00\u{a0}EUR each until the old part is returned";
        assert_eq!(detail("Oil pump"), told);
        let shells = order.items.iter().find(|item| item.what == "Rod bearing shells, pairs").unwrap();
        assert!(shells.mind == "Old parts kept as evidence." && !shells.detail.contains("old"), "{shells:?}");
        let bill = "Oil pump: replace (exchange, deposit 40.00\u{a0}EUR each until the old part is returned)";
        assert!(assessment.quote.lines.iter().any(|line| line.what == bill));
    }

    /// What was asked once at intake holds for all that nothing else is said of; an exchange part wants the old one back.
    #[test]
    fn old_parts_go_where_the_customer_said_before_it_was_opened() {
        let exchange = json!({ "do": "supply-parts", "kind": "oil-pump", "supply": { "state": "exchange" } });
        let worn = json!({ "do": "tag", "part": "oil-pump", "tag": "scoring", "grade": 4 });
        let mut job = job_of(&[arrange(&Arrangement::inline(4)), worn, exchange]);
        let old = |job: &Job, what: &str| {
            let assessment = assess(job);
            let order = assessment.list(ListKind::Order).unwrap();
            order.items.iter().find(|item| item.what == what).unwrap().supply.unwrap().old
        };
        let shells = "Rod bearing shells, pairs";
        assert_eq!(old(&job, shells), None, "not asked");
        for (nth, wanted, goes) in [(20, true, OldPart::Customer), (30, false, OldPart::Scrap)] {
            let order = StripDownOrder { old_parts: Some(wanted), ..job.strip_down_to_order() };
            then(&mut job, nth, &json!({ "do": "order-strip-down", "order": order }));
            let answer = json!({ "order": job.strip_downs.last().unwrap().edit, "agreed": true, "name": "A" });
            then(&mut job, nth + 1, &json!({ "do": "answer-strip-down", "answer": answer }));
            assert_eq!(old(&job, shells), Some(goes));
            assert_eq!(old(&job, "Oil pump"), None, "sent back, whatever was said");
        }
        let kept =
            json!({ "do": "supply-parts", "kind": "rod-shell", "supply": { "state": "new", "old": "evidence" } });
        then(&mut job, 40, &kept);
        assert_eq!(old(&job, shells), Some(OldPart::Evidence));
    }
}
