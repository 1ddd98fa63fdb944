//! A crankshaft brought true, or dressed where it is knocked or rusted.

use super::row::{Row, Stage};
use crate::engine::PartKind;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "measure the run-out; straighten or dress what is damaged",
    stage: Stage::Straighten,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "",
    source: "Common practice.",
    brought: |scene| scene.decided_itself(PartKind::Crankshaft, Work::Machine),
};
