//! A block dressed or faced where it is damaged.

use super::row::{Row, Stage};
use crate::engine::PartKind;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "dress or face what is damaged",
    stage: Stage::Straighten,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "",
    source: "Common practice.",
    brought: |scene| scene.decided_itself(PartKind::Block, Work::Machine),
};
