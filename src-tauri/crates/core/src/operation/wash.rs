//! The block washed hot, bare, with its core and gallery plugs out.

use super::row::{Brought, Row, Stage};
use crate::decide::rules::is_washed;
use crate::engine::PartKind;
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::Clean,
    done: |_| "hot wash, core and gallery plugs out, galleries brushed",
    stage: Stage::Wash,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Dry it at once and oil the bores: bare iron rusts.",
    source: "Common practice.",
    brought: |scene| {
        let mut block = scene.parts(PartKind::Block, |own| own.outcome != Outcome::Replace);
        block.retain(|part| scene.decision(*part).is_some_and(|own| is_washed(scene.job(), *part, own.outcome)));
        if block.is_empty() {
            return vec![];
        }
        let dirty = scene.reason(&block, Work::Clean).map(|reason| reason.because.clone());
        let because = dirty
            .unwrap_or_else(|| "It is washed before it is tested or machined, and of the chips afterwards.".into());
        vec![Brought::new(PartKind::Block, block, because)]
    },
};
