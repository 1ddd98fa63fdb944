//! The block washed hot, bare, with its core and gallery plugs out.

use super::row::{Brought, Row, Stage};
use crate::engine::{Part, PartKind};
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::Clean,
    done: |_| "hot wash, core and gallery plugs out, galleries brushed",
    stage: Stage::Wash,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Caustic eats aluminium: a light-metal block, bushes and plated parts need another bath.",
    source: "Common practice.",
    brought: |scene| {
        let mut block = scene.parts(PartKind::Block, |own| own.outcome != Outcome::Replace);
        // What is only suspected of it is tested, and for that it is washed.
        let is_damaged = |part: &Part| scene.job().parts.get(part).is_some_and(|record| record.worst().is_some());
        block.retain(|part| match scene.decision(*part).map(|own| own.outcome) {
            Some(Outcome::Clean | Outcome::Machine) => true,
            Some(Outcome::CantSay) => is_damaged(part),
            _ => false,
        });
        if block.is_empty() {
            return vec![];
        }
        let dirty = scene.reason(&block, Outcome::Clean).map(|reason| reason.because.clone());
        let because = dirty
            .unwrap_or_else(|| "It is washed before it is tested or machined, and of the chips afterwards.".into());
        vec![Brought::new(PartKind::Block, block, because)]
    },
};
