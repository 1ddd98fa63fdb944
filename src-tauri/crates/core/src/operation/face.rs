//! The cover or the body of an oil pump faced flat.

use super::row::{Row, Stage};
use crate::engine::PartKind;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "lap or face flat",
    stage: Stage::Machine,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Take off no more than the marks, and measure the end clearance again with the gasket that is fitted.",
    source: "Common practice.",
    brought: |scene| scene.decided(&[PartKind::PumpBody, PartKind::PumpCover], Work::Machine),
};
