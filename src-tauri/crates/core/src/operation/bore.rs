//! Bores brought to the next size, all of them alike.

use super::grind::sized;
use super::row::{Row, Stage};
use crate::sheet::SizeGroup;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "bore and hone",
    stage: Stage::Machine,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Give the pistons along: each bore is finished to the piston that runs in it. Main caps on and tightened.",
    source: "Common practice.",
    brought: |scene| sized(scene, SizeGroup::Bores).into_iter().collect(),
};
