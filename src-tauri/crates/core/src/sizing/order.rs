//! What to order in which size, and whether it may be ordered yet: nothing is ordered on guesses.

use serde::Serialize;

use super::words::size_words;
use super::{Action, GroupPlan, ReadBack, Readings};
use crate::engine::PartKind;
use crate::measure::Length;
use crate::sheet::SizeGroup;

/// Whether a line may be ordered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum OrderState {
    /// The readings it rests on do not all exist: not to be ordered yet.
    Held,
    /// Free to order.
    Free,
}

/// One line of an order.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct OrderLine {
    /// The kind of part; of shells a pair each bearing.
    pub kind: PartKind,
    /// What, in words: "main bearing shells, pairs".
    pub what: String,
    /// The size beyond standard, in nanometres; none while it is not known.
    pub size: Option<Length>,
    /// The size in words: "0.010 in undersize", "size not known yet".
    pub size_shown: String,
    /// How many: pairs of shells, pistons, sets of rings.
    pub quantity: usize,
    /// Held or free.
    pub state: OrderState,
    /// What it waits for, each in a sentence; empty if it is free.
    pub waits_for: Vec<String>,
}

/// The sized lines: main and rod bearings, pistons, rings.
pub(super) fn orders(readings: &Readings<'_>, groups: &[GroupPlan], read_back: &[ReadBack]) -> Vec<OrderLine> {
    let mut lines = Vec::new();
    for plan in groups {
        let returned = read_back.iter().find(|back| back.group == plan.group);
        match plan.group {
            SizeGroup::Mains | SizeGroup::Crankpins => lines.extend(shells(readings, plan, returned)),
            SizeGroup::Bores => lines.extend(pistons_and_rings(readings, plan)),
        }
    }
    lines
}

/// Shells wait for the plan, and where journals are ground for what the shop really ground.
fn shells(readings: &Readings<'_>, plan: &GroupPlan, returned: Option<&ReadBack>) -> Vec<OrderLine> {
    let kind = plan.group.mate();
    let what = format!("{} shells, pairs", if kind == PartKind::MainShell { "main bearing" } else { "rod bearing" });
    let mut waits: Vec<String> = plan.missing.iter().map(|missing| missing.words.clone()).collect();
    match (plan.action, returned) {
        (Action::Open, _) => waits.push(plan.because.clone()),
        (Action::Replace, _) => {
            waits = vec![renewed(plan.group)];
        }
        (Action::Machine, None) => waits.push(plan.because.clone()),
        (Action::Machine, Some(back)) if !back.confirmed => {
            waits.extend(back.parts.iter().map(|line| line.problem.clone()).filter(|problem| !problem.is_empty()));
        }
        _ => {}
    }
    // Two rods on one crankpin take two pairs.
    let pairs = |shown: &str| {
        let arrangement = readings.engine.arrangement();
        let own = plan.parts.iter().filter(|part| part.mate_shown == shown).count();
        if plan.group == SizeGroup::Crankpins { own * usize::from(arrangement.rods_per_crankpin) } else { own }
    };
    let mut sizes: Vec<&str> = plan.parts.iter().map(|part| part.mate_shown.as_str()).collect();
    sizes.sort_unstable();
    sizes.dedup();
    sizes
        .into_iter()
        .map(|shown| OrderLine {
            kind,
            what: what.clone(),
            size: size_of(readings, plan, shown),
            size_shown: if shown.is_empty() { "size not known yet".into() } else { shown.to_owned() },
            quantity: pairs(shown),
            state: if waits.is_empty() { OrderState::Free } else { OrderState::Held },
            waits_for: waits.clone(),
        })
        .collect()
}

fn size_of(readings: &Readings<'_>, plan: &GroupPlan, shown: &str) -> Option<Length> {
    let series = readings.job.sheet.series(plan.group);
    let sizes = series.iter().map(|row| row.size).chain(plan.size).chain([Length::default()]);
    sizes.into_iter().find(|size| size_words(*size, plan.group, readings) == shown)
}

/// Pistons wait for the plan only: the shop bores to the pistons it is given, not the other way round (common practice).
/// Rings are renewed in any case, in the size of the bores.
fn pistons_and_rings(readings: &Readings<'_>, plan: &GroupPlan) -> Vec<OrderLine> {
    let mut waits: Vec<String> = plan.missing.iter().map(|missing| missing.words.clone()).collect();
    if plan.action == Action::Replace {
        waits = vec![renewed(plan.group)];
    } else if plan.size.is_none() {
        waits.push(plan.because.clone());
    }
    let line = |kind: PartKind, what: &str| OrderLine {
        kind,
        what: what.into(),
        size: plan.size,
        size_shown: plan
            .size
            .map_or_else(|| "size not known yet".into(), |size| size_words(size, plan.group, readings)),
        quantity: plan.parts.len(),
        state: if waits.is_empty() { OrderState::Free } else { OrderState::Held },
        waits_for: waits.clone(),
    };
    let rings = line(PartKind::Rings, "piston rings, sets");
    match plan.action {
        Action::Machine | Action::Replace => vec![line(PartKind::Piston, "pistons"), rings],
        _ => vec![rings],
    }
}

fn renewed(group: SizeGroup) -> String {
    match group {
        SizeGroup::Bores => "The block is replaced: measure the bores of the new one before ordering.".into(),
        _ => "The crankshaft is replaced: measure the journals of the new one before ordering.".into(),
    }
}

/// See [`Sizing::hold_renewed`](super::Sizing::hold_renewed).
pub(super) fn hold_renewed(orders: &mut [OrderLine], groups: &[GroupPlan], is_renewed: impl Fn(PartKind) -> bool) {
    for plan in groups.iter().filter(|plan| plan.action != Action::Replace && is_renewed(plan.group.kind())) {
        let goes_with = |kind| kind == plan.group.mate() || (plan.group == SizeGroup::Bores && kind == PartKind::Rings);
        for line in orders.iter_mut().filter(|line| goes_with(line.kind)) {
            line.state = OrderState::Held;
            line.size = None;
            line.size_shown = "size not known yet".into();
            line.waits_for = vec![renewed(plan.group)];
        }
    }
}
