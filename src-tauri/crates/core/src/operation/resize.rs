//! Rods whose big end is brought back to size.

use super::come::bolts_awaited;
use super::row::{Brought, Row, Scene, Stage};
use crate::decide::rules::is_resized;
use crate::engine::{Part, PartKind};
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "resize the big end; check for bend and twist",
    stage: Stage::Machine,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Keep each rod with its cap, and its number.",
    source: "Common practice.",
    brought: |scene| {
        let rods = resized(scene);
        if rods.is_empty() {
            return vec![];
        }
        let (which, because) = (scene.which(PartKind::Rod, &rods), scene.because(&rods));
        vec![Brought { which, waits_for: bolts_awaited(scene), ..Brought::new(PartKind::Rod, rods, because) }]
    },
};

/// The rods whose big end is resized; of others the bush of the small end alone is renewed.
pub(super) fn resized(scene: &Scene<'_>) -> Vec<Part> {
    let mut rods = scene.with(PartKind::Rod, Work::Machine);
    rods.retain(|rod| is_resized(scene.job(), scene.measured, *rod));
    rods
}
