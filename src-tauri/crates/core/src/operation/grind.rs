//! Journals ground to a size, all of a group to the same.

use super::row::{Brought, Row, Scene, Stage};
use crate::engine::PartKind;
use crate::sheet::SizeGroup;
use crate::sizing::{GroupPlan, Missing, unmeasured_cam_journals};
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "grind",
    stage: Stage::Machine,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Keep the fillet radii; chamfer and stone the edges of the oil holes.",
    source: "AC 43.13-1B para 8-3 (fillet radii); TM 5-4320-300-14 p. 6-103 (oil holes, finish).",
    brought: |scene| {
        let mut all: Vec<Brought> =
            [SizeGroup::Mains, SizeGroup::Crankpins].into_iter().filter_map(|group| sized(scene, group)).collect();
        let mut cam = scene.decided(&[PartKind::CamJournal], Work::Machine);
        for own in &mut cam {
            own.done = Some("ask first for which size bearings are to be had, then grind to it".into());
            own.is_right = unmeasured_cam_journals(&scene.measured.readings, &own.parts).is_empty();
        }
        all.extend(cam);
        all
    },
};

/// The parts of a group that is brought to a size, with the sizes found and wanted.
pub(super) fn sized(scene: &Scene<'_>, group: SizeGroup) -> Option<Brought> {
    let kind = group.kind();
    let parts = scene.with(kind, Work::Machine);
    let plan = scene.plan(group)?;
    if parts.is_empty() {
        return None;
    }
    if plan.machined().next().is_none() {
        // A person's word, or one group that goes with the other, where the plan has no size for it.
        let missing: Vec<String> = plan.missing.iter().map(Missing::sentence).collect();
        return Some(Brought {
            waits_for: if missing.is_empty() { vec![plan.ask_size()] } else { missing },
            ..Brought::new(kind, parts.clone(), scene.because(&parts))
        });
    }
    Some(Brought {
        done: Some(format!("{}{}", plan.words, wanted_and_found(plan))),
        size: plan.size.map(|size| (size, plan.size_shown.clone())),
        waits_for: waits(plan),
        is_right: scene.is_right(group),
        ..Brought::new(kind, parts, plan.because.clone())
    })
}

/// What holds a group: its plan is not settled.
pub(super) fn waits(plan: &GroupPlan) -> Vec<String> {
    if plan.settled { vec![] } else { plan.missing.iter().map(Missing::sentence).collect() }
}

/// ", 2.4890 to 2.4900 in; found: Crankpin 1 2.4940 in".
pub(super) fn wanted_and_found(plan: &GroupPlan) -> String {
    let wanted = if plan.finished_shown.is_empty() { String::new() } else { format!(", {}", plan.finished_shown) };
    let measured = plan.machined().filter(|part| !part.found_shown.is_empty());
    let found: Vec<String> = measured.map(|part| format!("{} {}", part.label, part.found_shown)).collect();
    if found.is_empty() { wanted } else { format!("{wanted}; found: {}", found.join("; ")) }
}
