//! What to order in which size, and whether it may be ordered yet: nothing is ordered on guesses.

use std::collections::{BTreeMap, BTreeSet};

use super::decided::Decided;
use super::ground_cam::cam_bearings;
use super::order_line::{OrderLine, held_or_free};
use crate::engine::{At, Engine, Part, PartKind};
use crate::figure::Readings;
use crate::measure::Length;
use crate::sheet::{Journals, SizeGroup};
use crate::sizing::{
    Action, GroupPlan, Missing, PartPlan, ReadBack, ReadBackLine, ShellGrades, TappetBores, shell_grades,
};
use crate::words::plural;

/// The sized lines: main and rod bearings, pistons, rings. What goes with journals or bores that are renewed with their
/// shaft or block is held, for the new ones have sizes of their own.
pub(super) fn orders(
    readings: &Readings<'_>,
    plans: &[GroupPlan],
    tappet_bores: Option<&TappetBores>,
    read_back: &[ReadBack],
    decided: &Decided<'_>,
) -> Vec<OrderLine> {
    let engine = readings.engine;
    let replaced = decided.replaced;
    let of_group = |plan: &GroupPlan| {
        // A liner or barrel that is renewed takes no others with it.
        let is_lost = |part: &Part| part.kind == plan.group.kind() && part.comes_with(engine.arrangement()).is_some();
        let is_renewed = plan.action == Action::Replace || replaced.iter().any(is_lost);
        let is_sized = plan.machined().next().is_some();
        let is_unsized = !is_sized && plan.parts.iter().any(|own| decided.machined.contains(&own.part));
        let asked = is_unsized.then(|| plan.ask_size());
        let returned = read_back.iter().find(|back| back.group == Some(plan.group));
        match plan.group {
            SizeGroup::Mains | SizeGroup::Crankpins => {
                let held = if is_renewed { vec![renewed(plan.group)] } else { asked.into_iter().collect() };
                shells(readings, plan, returned, &held, &decided.on_shaft.of_shells(plan.group))
            }
            SizeGroup::Bores => {
                let confirmed = readings.job.confirmed_sizes.get(&plan.group);
                let is_back = returned.is_some_and(|back| back.parts.iter().any(|line| line.verdict.is_some()));
                let is_confirmed = is_back || confirmed.is_some_and(|own| Some(own.size.length) == plan.size);
                let held = is_renewed.then(|| renewed(plan.group)).or(asked);
                pistons_and_rings(engine, plan, held, is_confirmed)
            }
        }
    };
    plans
        .iter()
        .flat_map(of_group)
        .chain(decided.on_shaft.thrust_set(engine))
        .chain(cam_bearings(readings, decided))
        .chain(tappet_bores.and_then(|plan| tappets(engine, plan, read_back, replaced)))
        .collect()
}

/// Tappets for bores that are reamed or bushed wait for the size that these really have when they are back. A new block
/// brings new bores.
fn tappets(
    engine: &Engine,
    plan: &TappetBores,
    read_back: &[ReadBack],
    replaced: &BTreeSet<Part>,
) -> Option<OrderLine> {
    let mended = plan.bores.iter().filter(|own| !replaced.contains(&own.part));
    let parts: Vec<Part> = mended.map(|own| Part { kind: PartKind::Tappet, at: own.part.at }).collect();
    let name = PartKind::Tappet.row().name.said(engine.terms());
    let name = if parts.len() == 1 { name.into_owned() } else { plural(&name) };
    let unknown = plan.size.is_none().then(|| plan.because.clone());
    let waits: Vec<String> = match read_back.iter().find(|back| back.of.kind == PartKind::TappetBore) {
        Some(back) if back.confirmed => vec![],
        back => unknown
            .into_iter()
            .chain(plan.waits_for.iter().cloned())
            .chain(back.iter().flat_map(|back| &back.parts).filter_map(ReadBackLine::sentence))
            .collect(),
    };
    let size = plan.size.map(|size| (size, plan.size_shown.as_str()));
    (!parts.is_empty()).then(|| OrderLine {
        quantity: parts.len(),
        parts,
        ..held_or_free(PartKind::Tappet, &name, size, &waits)
    })
}

/// Shells wait for what holds them whatever is planned (then their size is open), for what is done to the shaft, for the
/// plan, and where journals are ground or polished for what size they really have when they are back.
fn shells(
    readings: &Readings<'_>,
    plan: &GroupPlan,
    returned: Option<&ReadBack>,
    held: &[String],
    on_shaft: &[String],
) -> Vec<OrderLine> {
    let engine = readings.engine;
    let group = if plan.group == SizeGroup::Mains { Journals::Mains } else { Journals::Crankpins };
    let kind = plan.group.mate();
    let what = if kind == PartKind::MainShell { "main bearing shells, pairs" } else { "rod bearing shells, pairs" };
    let waits = match (plan.action, returned) {
        _ if !held.is_empty() => held.to_vec(),
        (Action::Open | Action::Machine, None) => missing(plan).chain([plan.because.clone()]).collect(),
        // What does not clean up is ground after all.
        (Action::Machine | Action::Polish, Some(back)) if !back.confirmed => {
            missing(plan).chain(back.parts.iter().filter_map(ReadBackLine::sentence)).collect()
        }
        _ => missing(plan).collect(),
    };
    let mut by_size: BTreeMap<Option<Length>, Vec<&PartPlan>> = BTreeMap::new();
    for own in &plan.parts {
        by_size.entry(own.mate.filter(|_| held.is_empty())).or_default().push(own);
    }
    let line = |(size, journals): (Option<Length>, Vec<&PartPlan>)| {
        let runs_here = |shell: &&Part| journals.iter().any(|own| runs_on(engine, **shell, own.part));
        let shown = journals.first().map_or("", |own| own.mate_shown.as_str());
        let on: Vec<Part> = journals.iter().map(|own| own.part).collect();
        let graded = match size == Some(Length::default()) {
            true => shell_grades(engine, readings.job, group, &on),
            false => ShellGrades::default(),
        };
        let waits: Vec<String> = on_shaft.iter().chain(&waits).cloned().chain(graded.missing).collect();
        OrderLine {
            grades: graded.known,
            parts: of_kind(engine, kind).filter(runs_here).copied().collect(),
            // Two rods on one crankpin take two pairs.
            quantity: match plan.group {
                SizeGroup::Crankpins => journals.len() * usize::from(engine.arrangement().rods_per_crankpin),
                _ => journals.len(),
            },
            ..held_or_free(kind, what, size.map(|size| (size, shown)), &waits)
        }
    };
    // What is farthest from standard first.
    by_size.into_iter().rev().map(line).collect()
}

/// Whether a shell belongs on a journal.
fn runs_on(engine: &Engine, shell: Part, journal: Part) -> bool {
    match (journal.at, shell.at) {
        (At::Crankpin(pin), At::CylinderHalf(cylinder, _)) => engine.arrangement().crankpin_of(cylinder) == pin,
        (At::Main(main), At::MainHalf(n, _)) => main == n,
        _ => false,
    }
}

/// Pistons of another size wait until the machinist has confirmed that the bores clean up at it; they do not wait for the
/// boring, which is done to the pistons that are given along (common practice). Rings are renewed in any case, in the size
/// of the bores.
fn pistons_and_rings(engine: &Engine, plan: &GroupPlan, held: Option<String>, is_confirmed: bool) -> Vec<OrderLine> {
    let is_held = held.is_some();
    let waits: Vec<String> = match plan.size {
        _ if is_held => held.into_iter().collect(),
        None => missing(plan).chain([plan.because.clone()]).collect(),
        Some(_) if plan.action == Action::Machine && !is_confirmed => {
            let ask = format!("The machine shop confirms first that the bores clean up at {}.", plan.size_shown);
            missing(plan).chain([ask]).collect()
        }
        Some(_) => missing(plan).collect(),
    };
    let size = plan.size.filter(|_| !is_held).map(|size| (size, plan.size_shown.as_str()));
    let line = |kind: PartKind, what| OrderLine {
        parts: of_kind(engine, kind).copied().collect(),
        quantity: plan.parts.len(),
        ..held_or_free(kind, what, size, &waits)
    };
    let rings = line(PartKind::Rings, "piston rings, sets");
    match plan.action {
        _ if is_held => vec![line(PartKind::Piston, "pistons"), rings],
        Action::Machine | Action::Replace => vec![line(PartKind::Piston, "pistons"), rings],
        _ => vec![rings],
    }
}

fn of_kind(engine: &Engine, kind: PartKind) -> impl Iterator<Item = &Part> {
    engine.parts().iter().filter(move |part| part.kind == kind)
}

fn missing(plan: &GroupPlan) -> impl Iterator<Item = String> {
    plan.missing.iter().map(Missing::sentence)
}

fn renewed(group: SizeGroup) -> String {
    match group {
        SizeGroup::Bores => "The block is replaced: measure the bores of the new one before ordering.".into(),
        _ => "The crankshaft is replaced: measure the journals of the new one before ordering.".into(),
    }
}
