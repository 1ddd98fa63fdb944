//! From decisions, sizes and causes to the lists.

use std::collections::BTreeMap;

use super::{ListItem, ListKind, WorkList};
use crate::assess::PartView;
use crate::cause::CauseReport;
use crate::decide::Outcome;
use crate::engine::PartKind;
use crate::job::Job;
use crate::sizing::{Action, OrderState, Sizing};
use crate::words::{capitalised, plural};

/// Causes below this probability put nothing on the list.
const PUT_RIGHT_FROM: f64 = 0.25;

/// Makes all lists.
pub fn lists(job: &Job, parts: &[PartView], sizing: &Sizing, causes: &CauseReport) -> Vec<WorkList> {
    ListKind::ALL
        .into_iter()
        .map(|kind| {
            let mut items = match kind {
                ListKind::Order => order(parts, sizing),
                ListKind::MachineShop => machine_shop(parts, sizing),
                ListKind::RebuildHere => each(parts, kind, &[Outcome::RebuildHere, Outcome::Polish]),
                ListKind::Clean => each(parts, kind, &[Outcome::Clean]),
                ListKind::LookAgain => each(parts, kind, &[Outcome::CantSay]),
                ListKind::PutRight => put_right(causes),
            };
            items.extend(own(job, kind));
            for item in &mut items {
                item.tick = job.ticks.get(&item.id).filter(|tick| tick.done > 0 || !tick.note.is_empty()).cloned();
            }
            let done = items.iter().filter(|item| item.tick.as_ref().is_some_and(|t| t.done >= item.quantity)).count();
            WorkList { kind, title: kind.title().into(), items, done }
        })
        .collect()
}

fn because(view: &PartView) -> String {
    view.decision
        .overruled_because
        .clone()
        .or_else(|| view.decision.reasons.first().map(|reason| reason.because.clone()))
        .unwrap_or_default()
}

fn with_outcome(parts: &[PartView], outcome: Outcome) -> BTreeMap<PartKind, Vec<&PartView>> {
    let mut by_kind: BTreeMap<PartKind, Vec<&PartView>> = BTreeMap::new();
    for view in parts.iter().filter(|view| view.decision.outcome == outcome) {
        by_kind.entry(view.kind).or_default().push(view);
    }
    by_kind
}

/// Parts of one kind in one item, with the reason of the worst of them.
fn grouped(id: String, views: &[&PartView], detail: String) -> ListItem {
    let kind = views.first().map_or(PartKind::Block, |view| view.kind);
    let quantity = u32::try_from(views.len()).unwrap_or(u32::MAX);
    let worst = views.iter().max_by_key(|view| view.worst);
    let name = if quantity > 1 { plural(kind.row().name) } else { kind.row().name.into() };
    ListItem {
        id,
        what: capitalised(&name),
        detail,
        quantity,
        parts: views.iter().map(|view| view.part).collect(),
        because: worst.map_or_else(String::new, |view| because(view)),
        waits_for: vec![],
        tick: None,
    }
}

/// What comes in a size, held or free; then everything else that is replaced.
fn order(parts: &[PartView], sizing: &Sizing) -> Vec<ListItem> {
    let replaced = with_outcome(parts, Outcome::Replace);
    let of_kind = |kind: PartKind| parts.iter().filter(move |view| view.kind == kind).map(|view| view.part);
    let mut items: Vec<ListItem> = sizing
        .orders
        .iter()
        .map(|line| ListItem {
            id: format!("order {} {}", line.kind.row().id, line.size_shown),
            what: capitalised(&line.what),
            detail: line.size_shown.clone(),
            quantity: u32::try_from(line.quantity).unwrap_or(u32::MAX),
            parts: of_kind(line.kind).collect(),
            because: replaced.get(&line.kind).and_then(|views| views.first()).map_or_else(String::new, |v| because(v)),
            waits_for: if line.state == OrderState::Held { line.waits_for.clone() } else { vec![] },
            tick: None,
        })
        .collect();
    let sized = |kind: &PartKind| sizing.orders.iter().any(|line| line.kind == *kind);
    for (kind, views) in replaced.iter().filter(|(kind, _)| !sized(kind) && ordered_by_itself(**kind)) {
        let mut item = grouped(format!("order {}", kind.row().id), views, String::new());
        if *kind == PartKind::ThrustFace {
            (item.what, item.quantity) = ("Thrust bearing, set".into(), 1);
        }
        items.push(item);
    }
    items
}

/// Journals and lobes come with their shaft, bores with their block.
fn ordered_by_itself(kind: PartKind) -> bool {
    kind.comes_with().is_none()
}

/// Groups that go to one size, with the sizes found and wanted; then every other part to be machined.
fn machine_shop(parts: &[PartView], sizing: &Sizing) -> Vec<ListItem> {
    let mut machined = with_outcome(parts, Outcome::Machine);
    let mut items = Vec::new();
    for plan in sizing.groups.iter().filter(|plan| plan.action == Action::Machine) {
        let Some(views) = machined.remove(&plan.group.kind()) else { continue };
        let work = crate::document::work_words(plan);
        let wanted = if plan.finished_shown.is_empty() { String::new() } else { format!(", {}", plan.finished_shown) };
        let found: Vec<String> = plan
            .parts
            .iter()
            .filter(|part| !part.found_shown.is_empty())
            .map(|part| format!("{} {}", part.label, part.found_shown))
            .collect();
        let found = if found.is_empty() { String::new() } else { format!("; found: {}", found.join("; ")) };
        let id = format!("machine {} {}", plan.group.kind().row().id, plan.size_shown);
        let mut item = grouped(id, &views, format!("{}{wanted}{found}", capitalised(&work)));
        item.because.clone_from(&plan.because);
        if !plan.settled {
            item.waits_for.clone_from(&plan.missing);
        }
        items.push(item);
    }
    items.extend(machined.iter().map(|(kind, views)| {
        let parts: Vec<&str> = views.iter().map(|view| view.label.as_str()).collect();
        grouped(format!("machine {}", kind.row().id), views, parts.join("; "))
    }));
    items
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
            cause.check.iter().chain(&cause.put_right).map(|check| ListItem {
                id: format!("right {} {check}", cause.id),
                what: check.clone(),
                detail: String::new(),
                quantity: 1,
                parts: vec![],
                because: format!("{}: {}, {}.", capitalised(&cause.name), cause.likelihood, cause.percent),
                waits_for: vec![],
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
            tick: None,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::{Assessment, assess};
    use crate::engine::{Arrangement, Engine};
    use crate::job::TagRecord;
    use crate::list::Tick;
    use crate::wear::Grade;
    use proptest::prelude::*;

    fn job(taggings: &[(crate::engine::Part, crate::wear::Tag, Grade)]) -> Job {
        let mut job = Job { arrangement: Some(Arrangement::inline(2)), ..Job::default() };
        for (part, tag, grade) in taggings {
            let record = TagRecord { grade: *grade, zones: Default::default() };
            job.parts.entry(*part).or_default().tags.insert(*tag, record);
        }
        job
    }

    fn items(assessment: &Assessment) -> impl Iterator<Item = &ListItem> {
        assessment.lists.iter().flat_map(|list| &list.items)
    }

    #[test]
    fn a_tick_stays_with_its_item() {
        let mut job = job(&[]);
        job.ticks.insert("order core-plugs".into(), Tick { done: 1, date: "3 May".into(), note: "came".into() });
        let assessment = assess(&job);
        let order = assessment.lists.iter().find(|list| list.kind == ListKind::Order).unwrap();
        assert_eq!(order.done, 1);
        let plugs = order.items.iter().find(|item| item.id == "order core-plugs").unwrap();
        assert_eq!(plugs.tick.as_ref().map(|tick| tick.date.as_str()), Some("3 May"));
    }

    fn any_tagging() -> impl Strategy<Value = (crate::engine::Part, crate::wear::Tag, Grade)> {
        let parts = Engine::new(Arrangement::inline(2)).unwrap().parts().to_vec();
        prop::sample::select(parts).prop_flat_map(|part| {
            (Just(part), prop::sample::select(part.kind.row().tags), prop::sample::select(&Grade::ALL[..]))
        })
    }

    proptest! {
        #[test]
        fn nothing_stands_on_a_list_without_a_reason_and_no_part_is_forgotten(taggings in prop::collection::vec(any_tagging(), 0..12)) {
            let assessment = assess(&job(&taggings));
            let mut ids: Vec<&str> = items(&assessment).map(|item| item.id.as_str()).collect();
            ids.sort_unstable();
            let before = ids.len();
            ids.dedup();
            prop_assert_eq!(ids.len(), before, "two items share an id");
            for item in items(&assessment) {
                prop_assert!(!item.because.trim().is_empty() && item.quantity > 0, "{:?}", item);
            }
            for view in &assessment.parts {
                let listed = items(&assessment).any(|item| item.parts.contains(&view.part));
                let expected = view.decision.outcome != Outcome::PutBack;
                let with_its_shaft = view.decision.outcome == Outcome::Replace && !ordered_by_itself(view.kind);
                prop_assert!(listed || !expected || with_its_shaft, "{} is {:?} and on no list", view.part, view.decision.outcome);
            }
        }
    }
}
