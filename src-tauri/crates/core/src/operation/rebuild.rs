//! What is taken apart, cleaned, measured and put together again: each part a line of its own.

use super::row::{Brought, Row, Stage};
use crate::engine::PartKind;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Rebuild,
    done: |kind| match kind {
        PartKind::OilPump => "strip, clean, measure and rebuild: end clearance, side clearance, backlash",
        PartKind::AuxiliaryDrive => "strip, clean, measure and rebuild: run-out, bushes, play at the end, backlash",
        _ => "strip, clean, measure and rebuild",
    },
    stage: Stage::Rebuild,
    hands: Hands::Here,
    is_by_part: true,
    mind: "Keep what has run together together; mix no parts of two.",
    source: "TM 5-4210-230-14&P-1 and NAVEDTRA 14076 (hydraulic followers: parts are not mixed); common practice.",
    brought: |scene| {
        let parts = PartKind::ALL.into_iter().flat_map(|kind| scene.with(kind, Work::Rebuild));
        parts.map(|part| Brought::new(part.kind, vec![part], scene.because(&[part]))).collect()
    },
};
