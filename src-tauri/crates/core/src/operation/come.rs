//! Whether what was ordered has come: what goes along with a piece is waited for.

use super::row::Scene;
use crate::engine::PartKind;
use crate::job::{ItemKey, Job, Step, Ticked};
use crate::work::Work;

/// Whether all of a kind that were ordered have come.
pub(crate) fn has_come(job: &Job, kind: PartKind) -> bool {
    let came = |ticked: &Ticked| {
        let is_of = matches!(&ticked.asked.key, ItemKey::Order { kind: own, .. } if *own == kind);
        is_of && ticked.tick.at(Step::Back) >= ticked.asked.quantity.max(1)
    };
    job.ticks.iter().any(came)
}

/// What holds work on a block that is renewed, until the new one has come.
pub(super) fn block_awaited(scene: &Scene<'_>) -> Vec<String> {
    let is_new = !scene.with(PartKind::Block, Work::Replace).is_empty();
    let is_held = is_new && !has_come(scene.job(), PartKind::Block);
    if is_held { vec!["The new block has not come yet.".into()] } else { vec![] }
}

/// What holds rods whose bolts are renewed: a big end can't be finished without them.
pub(super) fn bolts_awaited(scene: &Scene<'_>) -> Vec<String> {
    let are_renewed = !scene.with(PartKind::RodBolts, Work::Replace).is_empty();
    let is_held = are_renewed && !has_come(scene.job(), PartKind::RodBolts);
    if is_held { vec!["The new bolts go along, and have not come yet.".into()] } else { vec![] }
}
