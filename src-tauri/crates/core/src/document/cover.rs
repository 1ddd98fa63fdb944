//! The first page of a report: who, whose, which engine, when, and the engine as a plan.

use super::{Block, Cover, PlanDrawing, Shop};
use crate::assess::Assessment;
use crate::engine::Engine;
use crate::job::{Job, TextField};

/// The cover.
pub(super) fn cover(job: &Job, assessment: &Assessment, shop: &Shop) -> Block {
    let filled = |field: &TextField| Some((field.label().to_owned(), typed(job, *field)?));
    // The machine and the engine stand in the subtitle.
    let fields = [TextField::Customer, TextField::EngineNumber, TextField::Use, TextField::Complaint];
    let facts = fields.iter().filter_map(filled).collect();
    let by = shop.name.lines().chain(shop.address.lines()).map(str::trim).filter(|line| !line.is_empty());
    Block::Cover(Box::new(Cover { shop: by.map(str::to_owned).collect(), facts, plan: plan(job, assessment) }))
}

/// What was typed into a line of the job's sheet; none if it is blank.
pub(super) fn typed(job: &Job, field: TextField) -> Option<String> {
    let text = job.texts.get(&field)?.trim();
    (!text.is_empty()).then(|| text.to_owned())
}

/// The engine as a plan; none before its arrangement is entered.
pub(super) fn plan(job: &Job, assessment: &Assessment) -> Option<PlanDrawing> {
    let engine = Engine::new(job.arrangement.clone()?).ok()?;
    let progress = assessment.progress;
    Some(PlanDrawing {
        plan: engine.plan(),
        ink: assessment.parts.iter().map(|view| (view.part, view.seen, view.worst)).collect(),
        alt: format!(
            "Plan of the engine, {}. Of {} parts, {} are drawn as worn, {} as clean, {} as not looked at.",
            engine.arrangement().summary(),
            progress.parts,
            progress.worn,
            progress.looked - progress.worn,
            progress.parts - progress.looked
        ),
    })
}
