//! New cam bearings driven into the block.

use super::come::block_awaited;
use super::row::{Brought, Row, Stage};
use crate::engine::PartKind;
use crate::sizing::unmeasured_cam_journals;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Fit,
    done: |_| "drive out the old, press in the new, holes to the oil galleries",
    stage: Stage::Rebuild,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Probe each oil hole with a wire, and turn the camshaft in them before the block goes home.",
    source: "Common practice.",
    brought: |scene| {
        let bearings = scene.with(PartKind::CamBearing, Work::Replace);
        if bearings.is_empty() {
            return vec![];
        }
        let because = scene.because(&bearings);
        let in_block = scene.engine.arrangement().is_cam_in_block();
        let is_new_block = in_block && !scene.with(PartKind::Block, Work::Replace).is_empty();
        let ground =
            unmeasured_cam_journals(&scene.measured.readings, &scene.with(PartKind::CamJournal, Work::Machine));
        let sizes = ground.iter().map(|journal| {
            format!("{} is ground: its bearing has no size before it is measured.", scene.engine.label(*journal))
        });
        let block = if in_block { block_awaited(scene) } else { vec![] };
        vec![Brought {
            done: is_new_block.then(|| "press in the new, holes to the oil galleries".into()),
            which: scene.which(PartKind::CamBearing, &bearings),
            waits_for: block.into_iter().chain(sizes).collect(),
            ..Brought::new(PartKind::CamBearing, bearings, because)
        }]
    },
};
