//! A camshaft reground.

use super::row::{Row, Stage};
use crate::engine::PartKind;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "regrind; check for run-out",
    stage: Stage::Machine,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Flat followers are renewed with it.",
    source: "TM 9-4310-397-14 p. 6-44 (no old followers on a new cam); common practice.",
    brought: |scene| scene.decided(&[PartKind::Lobe, PartKind::Camshaft], Work::Machine),
};
