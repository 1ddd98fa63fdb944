//! What is cleaned and goes back: each part a line of its own. The block is washed and the crankshaft flushed, which are
//! operations of their own; bores are honed, but for coated ones.

use super::row::{Brought, Row, Stage};
use crate::engine::{BoreWall, PartKind};
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Clean,
    done: |_| "clean",
    stage: Stage::Wash,
    hands: Hands::Here,
    is_by_part: true,
    mind: "",
    source: "Common practice.",
    brought: |scene| {
        let is_coated = scene.engine.arrangement().construction.bore_wall == Some(BoreWall::Coated);
        let is_own = |kind: &PartKind| match kind {
            PartKind::Block | PartKind::Crankshaft => false,
            PartKind::Bore => is_coated,
            _ => true,
        };
        let parts = PartKind::ALL.into_iter().filter(is_own).flat_map(|kind| scene.with(kind, Work::Clean));
        parts.map(|part| Brought::new(part.kind, vec![part], scene.because(&[part]))).collect()
    },
};
