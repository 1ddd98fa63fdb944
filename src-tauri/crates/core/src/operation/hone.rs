//! Bores that stay, honed: new rings do not bed in on an old wall.

use super::row::{Brought, Row, Stage};
use crate::engine::{BoreWall, PartKind};
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::Hone,
    done: |_| "hone for the new rings, and wash by hand with soap and hot water",
    stage: Stage::Finish,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Take out no more than the marks of wear: the bore keeps its size. It is clean when a white cloth stays white.",
    source: "NMWR 9-2815-220 (wash with soap and hot water after honing); common practice.",
    brought: |scene| {
        if scene.engine.arrangement().construction.bore_wall == Some(BoreWall::Coated) {
            return vec![];
        }
        let parts = scene.parts(PartKind::Bore, |own| matches!(own.outcome, Outcome::PutBack | Outcome::Clean));
        if parts.is_empty() || scene.with(PartKind::Rings, Work::Replace).is_empty() {
            return vec![];
        }
        let damaged = scene.parts(PartKind::Bore, |own| own.outcome == Outcome::Clean);
        let because = if damaged.is_empty() {
            "New rings bed in only on a freshly honed wall.".to_owned()
        } else {
            scene.because(&damaged)
        };
        vec![Brought { which: scene.which(PartKind::Bore, &parts), ..Brought::new(PartKind::Bore, parts, because) }]
    },
};
