//! New cam bearings driven into the block.

use super::row::{Brought, Row, Stage};
use crate::engine::PartKind;
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
        vec![Brought {
            which: scene.which(PartKind::CamBearing, &bearings),
            ..Brought::new(PartKind::CamBearing, bearings, because)
        }]
    },
};
