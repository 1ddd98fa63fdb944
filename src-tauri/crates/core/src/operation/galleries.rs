//! The oil galleries of a crankshaft opened, brushed and flushed.

use super::balance::is_balanced;
use super::row::{Brought, Row, Stage};
use crate::engine::PartKind;
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::Clean,
    done: |_| "open, brush and flush the oil galleries",
    stage: Stage::Flush,
    hands: Hands::Here,
    is_by_part: false,
    mind: "Brush each drilling from both ends, and look through it.",
    source: "Common practice.",
    brought: |scene| {
        let shaft = scene.parts(PartKind::Crankshaft, |own| own.outcome != Outcome::Replace);
        if shaft.is_empty() {
            return vec![];
        }
        let because = if let Some(dirty) = scene.reason(&shaft, Work::Clean) {
            dirty.because.clone()
        } else if !scene.with(PartKind::Crankshaft, Work::Clean).is_empty() {
            scene.because(&shaft)
        } else if scene.works_on_journals() || scene.works_on(PartKind::Crankshaft) {
            "Grinding and polishing leave grit in the galleries.".into()
        } else if is_balanced(scene) {
            "Balancing leaves chips in the galleries.".into()
        } else {
            return vec![];
        };
        vec![Brought::new(PartKind::Crankshaft, shaft, because)]
    },
};
