//! From decisions, sizes and causes to the lists.

use super::work::{Shared, because};
use super::{ListItem, ListKind, WorkList, consent, machine_shop, order};
use crate::cause::CauseReport;
use crate::engine::Engine;
use crate::job::{Approval, Job};
use crate::sizing::Sizing;
use crate::view::PartView;
use crate::words::capitalised;
use crate::work::Outcome;

/// Causes below this probability put nothing on the list.
const PUT_RIGHT_FROM: f64 = 0.25;

/// Makes all lists.
pub fn lists(
    engine: &Engine,
    job: &Job,
    parts: &[PartView],
    sizing: &Sizing,
    causes: &CauseReport,
    approval: &Approval,
) -> Vec<WorkList> {
    let work = Shared::of(engine, parts);
    ListKind::ALL
        .into_iter()
        .map(|kind| {
            let mut items = match kind {
                ListKind::Order => order::order(&work, sizing),
                ListKind::MachineShop => machine_shop::machine_shop(&work, sizing),
                ListKind::RebuildHere => each(parts, kind, &[Outcome::RebuildHere, Outcome::Polish]),
                ListKind::Clean => each(parts, kind, &[Outcome::Clean]),
                ListKind::LookAgain => each(parts, kind, &[Outcome::CantSay]),
                ListKind::PutRight => put_right(causes),
            };
            items.extend(own(job, kind));
            for item in &mut items {
                item.tick = job.ticks.get(&item.id).filter(|tick| tick.says_something()).cloned();
            }
            consent::heed(approval, parts, &mut items);
            let done = items.iter().filter(|item| item.is_done()).count();
            WorkList { kind, title: kind.title().into(), items, done }
        })
        .collect()
}

/// One item for each part.
fn each(parts: &[PartView], kind: ListKind, outcomes: &[Outcome]) -> Vec<ListItem> {
    let item = |view: &PartView| ListItem {
        id: format!("{} {}", list_word(kind), view.part),
        what: view.label.clone(),
        detail: if view.decision.outcome == Outcome::Polish { "polish".into() } else { String::new() },
        quantity: 1,
        parts: vec![view.part],
        because: because(view),
        waits_for: vec![],
        consent: None,
        tick: None,
    };
    parts.iter().filter(|view| outcomes.contains(&view.decision.outcome)).map(item).collect()
}

fn list_word(kind: ListKind) -> &'static str {
    match kind {
        ListKind::Order => "order",
        ListKind::MachineShop => "machine",
        ListKind::RebuildHere => "rebuild",
        ListKind::Clean => "clean",
        ListKind::LookAgain => "look",
        ListKind::PutRight => "right",
    }
}

/// What the likely causes ask to be checked or put right.
fn put_right(causes: &CauseReport) -> Vec<ListItem> {
    if !causes.enough_seen {
        return vec![];
    }
    let likely = causes.causes.iter().filter(|cause| cause.probability >= PUT_RIGHT_FROM);
    likely
        .flat_map(|cause| {
            cause.check.iter().chain(&cause.put_right).map(|todo| ListItem {
                id: format!("right {} {}", cause.id, todo.words),
                what: todo.words.into(),
                detail: String::new(),
                quantity: 1,
                parts: vec![],
                because: format!("{}: {}, {}.", capitalised(&cause.name), cause.likelihood, cause.percent),
                waits_for: vec![],
                consent: None,
                tick: None,
            })
        })
        .collect()
}

fn own(job: &Job, kind: ListKind) -> Vec<ListItem> {
    let items = job.own_items.iter().filter(|(_, item)| item.list == kind);
    items
        .map(|(edit, item)| ListItem {
            id: format!("own {edit}"),
            what: item.what.clone(),
            detail: String::new(),
            quantity: item.quantity,
            parts: vec![],
            because: if item.because.trim().is_empty() { "Added by hand.".into() } else { item.because.clone() },
            waits_for: vec![],
            consent: None,
            tick: None,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::Tick;
    use crate::job::testing::arranged;

    #[test]
    fn a_tick_stays_with_its_item() {
        let mut job = arranged(Arrangement::inline(2));
        job.ticks.insert("order core-plugs".into(), Tick { done: 1, date: "3 May".into(), ..Tick::default() });
        let assessment = assess(&job);
        let order = assessment.lists.iter().find(|list| list.kind == ListKind::Order).unwrap();
        assert_eq!(order.done, 1);
        let plugs = order.items.iter().find(|item| item.id == "order core-plugs").unwrap();
        assert_eq!(plugs.tick.as_ref().map(|tick| tick.date.as_str()), Some("3 May"));
    }
}
