//! The seats of the main bearings, and of a camshaft that runs in the casting, brought into line and to size.

use super::row::{Row, Stage};
use crate::engine::PartKind;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |kind| match kind {
        PartKind::CamBearing => {
            "bore out the seats in the casting and bush them with the machinist’s own, to the camshaft’s journals"
        }
        _ => "measure; line-bore or hone to size",
    },
    stage: Stage::Straighten,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Caps on in their places and tightened to the manual's torque.",
    source: "Common practice.",
    brought: |scene| scene.decided(&[PartKind::HousingBore, PartKind::CamBearing], Work::Machine),
};
