//! Where more than one way serves: what the plan or a person's choice makes of a decision.

use super::decision::{Decision, Reason};
use super::rules::{CHOSEN_WAY, Scene};
use crate::engine::{CamBore, Part, PartKind};
use crate::job::ChosenWay;
use crate::sizing::Action;
use crate::wear::{Grade, Tag};
use crate::words::capitalised;
use crate::work::{Outcome, Work};

/// Bores that the plan sleeves, and a worn camshaft with its lobes and journals that a person has welded up.
pub(super) fn take(scene: &Scene<'_>, part: Part, decision: &mut Decision) {
    if part.kind == PartKind::Bore && decision.outcome == Outcome::Machine {
        let plan = scene.measured.plan_of(part).filter(|plan| plan.action == Action::Sleeve);
        decision.way = plan.map(|_| Work::Sleeve);
    }
    if part.kind == PartKind::TappetBore && decision.outcome == Outcome::Machine {
        let plan = scene.measured.tappet_bores.as_ref().filter(|plan| plan.way == Work::Bush);
        decision.way = plan.map(|_| Work::Bush);
    }
    // Where the cam runs in the casting there is no bearing to renew.
    let in_casting = scene.engine.arrangement().construction.cam_bore == Some(CamBore::Casting);
    if part.kind == PartKind::CamBearing && in_casting && decision.outcome == Outcome::Replace {
        decision.outcome = Outcome::Machine;
    }
    if decision.outcome == Outcome::Replace
        && decision.overruled_because.is_none()
        && let Some(chosen) = welded(scene, part)
    {
        decision.way = Some(Work::WeldUp);
        decision.outcome = Outcome::Machine;
        let because = format!("{}, chosen by hand: {}", capitalised(Work::WeldUp.words()), chosen.reason);
        decision.reasons.insert(0, Reason::of(&CHOSEN_WAY, Outcome::Machine, because, scene.engine.terms()));
    }
}

/// The choice to weld up a camshaft, for the shaft and what is in one piece with it. A cracked one is not welded up, and a
/// person's word on the shaft itself goes before.
fn welded<'a>(scene: &Scene<'a>, part: Part) -> Option<&'a ChosenWay> {
    let chosen = scene.job.chosen_ways.get(&PartKind::Camshaft).filter(|chosen| chosen.way == Work::WeldUp)?;
    let shaft = if part.kind == PartKind::Camshaft { part } else { part.comes_with(scene.engine.arrangement())? };
    let record = scene.job.parts.get(&shaft);
    let is_cracked = record.and_then(|record| record.grade(Tag::Cracks)).is_some_and(|grade| grade >= Grade::TWO);
    let is_decided = record.is_some_and(|record| record.overrule.is_some());
    (shaft.kind == PartKind::Camshaft && !is_cracked && !is_decided).then_some(chosen)
}
