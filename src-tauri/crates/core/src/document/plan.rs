//! The engine as a plan, hatched by what was seen.

use super::desk::Desk;
use super::paper::PlanDrawing;
use crate::engine::Engine;
use crate::view::PartView;

/// The engine as a plan; none before its arrangement is entered.
pub(super) fn plan(desk: &Desk<'_>) -> Option<PlanDrawing> {
    let Desk { job, assessment, .. } = desk;
    let engine = Engine::speaking(job.arrangement.clone()?, job.terms).ok()?;
    let progress = assessment.progress;
    // What is only looked at with another part needs no drawing of its own.
    let mut plan = engine.plan();
    let is_drawn = |part| assessment.part(part).is_none_or(PartView::is_looked_at_alone);
    plan.sections.retain(|section| section.cells.iter().any(|cell| is_drawn(cell.part)));
    Some(PlanDrawing {
        plan,
        ink: assessment.parts.iter().map(|view| (view.part, view.seen, view.worst)).collect(),
        alt: format!(
            "Plan of the engine, {}. Of {} parts drawn as worn: {}; as clean: {}; as not looked at: {}.",
            engine.arrangement().summary(),
            progress.parts,
            progress.worn,
            progress.looked - progress.worn,
            progress.parts - progress.looked
        ),
    })
}
