//! A worn camshaft welded up and reground, with its lobes and journals.

use super::row::{Row, Stage};
use crate::engine::PartKind;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::WeldUp,
    done: |_| "weld up and regrind",
    stage: Stage::Machine,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Flat followers are renewed with it.",
    source: "Common practice.",
    brought: |scene| {
        let mut all = scene.decided(&[PartKind::Camshaft], Work::WeldUp);
        for own in &mut all {
            // What is in one piece with it goes along.
            let along = [PartKind::Lobe, PartKind::CamJournal];
            own.parts.extend(along.into_iter().flat_map(|kind| scene.with(kind, Work::WeldUp)));
        }
        all
    },
};
