//! Worn bores sleeved and finished to the size that the others keep. The sleeve is bought by who bores for it, in the price of
//! the work, as bushes are (common practice).

use super::grind::{waits, wanted_and_found};
use super::row::{Brought, Row, Stage};
use crate::engine::{BoreWall, Cylinders, PartKind};
use crate::sheet::SizeGroup;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Sleeve,
    done: |_| "sleeve",
    stage: Stage::Machine,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Have the wall sounded first: it must be thick enough for the sleeve.",
    source: "Common practice.",
    brought: |scene| {
        let parts = scene.with(PartKind::Bore, Work::Sleeve);
        let Some(plan) = scene.plan(SizeGroup::Bores).filter(|_| !parts.is_empty()) else { return vec![] };
        let sleeve = match scene.engine.arrangement().construction.cylinders {
            Some(Cylinders::DrySleeves) => "press the old sleeve out, the machinist’s new one in,",
            _ if scene.engine.arrangement().construction.bore_wall == Some(BoreWall::Coated) => {
                "sleeve, or have the wall coated anew,"
            }
            _ => "sleeve with the machinist’s own",
        };
        vec![Brought {
            done: Some(format!("{sleeve} and finish to {}{}", plan.size_shown, wanted_and_found(plan))),
            which: scene.which(PartKind::Bore, &parts),
            size: plan.size.map(|size| (size, plan.size_shown.clone())),
            waits_for: waits(plan),
            is_right: scene.is_right(SizeGroup::Bores),
            ..Brought::new(PartKind::Bore, parts, plan.because.clone())
        }]
    },
};
