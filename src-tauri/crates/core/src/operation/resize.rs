//! Rods whose big end is brought back to size.

use super::row::{Row, Stage};
use crate::engine::PartKind;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "resize the big end; check for bend and twist",
    stage: Stage::Machine,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Keep each rod with its cap, and its number.",
    source: "Common practice.",
    brought: |scene| scene.decided(&[PartKind::Rod], Work::Machine),
};
