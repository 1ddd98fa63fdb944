//! A block dressed or faced where it is damaged.

use super::row::{Row, Stage};
use crate::engine::PartKind;
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "dress or face what is damaged",
    stage: Stage::Straighten,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "",
    source: "Common practice.",
    brought: |scene| {
        let mut all = scene.decided(&[PartKind::Block], Work::Machine);
        // Its bores alone send it along, and have operations of their own.
        all.retain(|own| scene.is_by_hand(&own.parts) || scene.reason(&own.parts, Outcome::Machine).is_some());
        all
    },
};
