//! Worn bores of tappets bushed and brought back to standard.

use super::ream::mended;
use super::row::{Row, Stage};
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Bush,
    done: |_| "bush, and ream to standard",
    stage: Stage::Machine,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "A bush must not cover the oil feed of the bore: drill it through where there is one.",
    source: "Common practice.",
    brought: |scene| mended(scene, Work::Bush, |_| "bush, and ream to standard".into()).into_iter().collect(),
};
