//! The block washed hot, bare, with its core and gallery plugs out.

use super::row::{Brought, Row, Scene, Stage};
use crate::decide::rules::{self, is_washed};
use crate::engine::{Cooling, Part, PartKind};
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::Clean,
    done: |_| "hot wash, core and gallery plugs out, galleries brushed",
    stage: Stage::Wash,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Dry it at once and oil the bores: bare iron rusts.",
    source: "Common practice.",
    brought: |scene| {
        let block = washed(scene);
        if block.is_empty() {
            return vec![];
        }
        let dirty = scene.reason(&block, Work::Clean).map(|reason| reason.because.clone());
        let because = dirty
            .unwrap_or_else(|| "It is washed before it is tested or machined, and of the chips afterwards.".into());
        let done = is_air_cooled(scene).then(|| "hot wash, gallery plugs out, galleries brushed".into());
        vec![Brought { done, ..Brought::new(PartKind::Block, block, because) }]
    },
};

/// The block, where it is washed hot and stays.
pub(super) fn washed(scene: &Scene<'_>) -> Vec<Part> {
    let mut block = scene.parts(PartKind::Block, |own| own.outcome != Outcome::Replace);
    let known = rules::Scene { engine: scene.engine, job: scene.job(), measured: scene.measured };
    // Boring the seats of the camshaft in the casting leaves its chips in the block.
    let are_seats_bored =
        scene.engine.arrangement().is_cam_in_block() && !scene.with(PartKind::CamBearing, Work::Machine).is_empty();
    block.retain(|part| {
        are_seats_bored || scene.decision(*part).is_some_and(|own| is_washed(&known, *part, own.outcome))
    });
    block
}

/// Whether it has no water jacket, and so no core plugs.
pub(super) fn is_air_cooled(scene: &Scene<'_>) -> bool {
    scene.engine.arrangement().construction.cooling == Some(Cooling::Air)
}
