//! What is cleaned and goes back: each part a line of its own. The block is washed and the crankshaft flushed, which are
//! operations of their own; bores are honed.

use super::row::{Brought, Row, Scene, Stage};
use super::{Operation, operation};
use crate::engine::PartKind;
use crate::work::{Hands, Work};

const ROW: Row = Row {
    work: Work::Clean,
    done: |_| "clean",
    stage: Stage::Wash,
    hands: Hands::Here,
    is_by_part: true,
    mind: "",
    source: "Common practice.",
    brought: |scene| {
        let is_own = |kind: &PartKind| !matches!(kind, PartKind::Block | PartKind::Crankshaft | PartKind::Bore);
        let parts = PartKind::ALL.into_iter().filter(is_own).flat_map(|kind| scene.with(kind, Work::Clean));
        parts.map(|part| Brought::new(part.kind, vec![part], scene.because(&[part]))).collect()
    },
};

/// Each part that is cleaned.
pub(super) fn each(scene: &Scene<'_>) -> Vec<Operation> {
    (ROW.brought)(scene).into_iter().map(|brought| operation(scene, &ROW, brought)).collect()
}
