//! Journals and lobes polished. A journal that does not clean up is ground after all, so its size is open until it is back.

use super::row::{Row, Stage};
use crate::engine::PartKind;
use crate::sheet::SizeGroup;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Polish,
    done: |kind| match kind {
        PartKind::MainJournal | PartKind::Crankpin => "polish; grind with all of its group what does not clean up",
        _ => "polish",
    },
    stage: Stage::Finish,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Polish in the direction in which the shaft turns; keep the oil holes free of grit.",
    source: "TM 10-4320-307-24 (polish with crocus cloth, else grind); common practice.",
    brought: |scene| {
        let mut all = scene.decided(&[PartKind::MainJournal, PartKind::Crankpin], Work::Polish);
        for own in &mut all {
            own.is_right = SizeGroup::of(own.kind).is_some_and(|group| scene.is_right(group));
        }
        all.extend(scene.decided(&[PartKind::CamJournal, PartKind::Lobe], Work::Polish));
        // A shaft goes along with its journals; by a person's word it is polished itself.
        all.extend(scene.decided_itself(PartKind::Crankshaft, Work::Polish));
        all
    },
};
