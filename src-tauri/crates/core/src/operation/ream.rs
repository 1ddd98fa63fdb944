//! Worn bores of tappets reamed to an oversize, each that needs it.

use super::row::{Brought, Row, Scene, Stage};
use crate::engine::PartKind;
use crate::sizing::TappetBores;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "ream to an oversize",
    stage: Stage::Machine,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Guide the reamer by the axis of the bore, not by its wear: the foot must stand square to the lobe.",
    source: "TM 10-3930-644-14&P (oversize followers available, the bore may be reamed); common practice.",
    brought: |scene| {
        let to = |plan: &TappetBores| match plan.size_shown.as_str() {
            "" => "ream; the machinist names the oversize".to_owned(),
            size => format!("ream to {size}"),
        };
        mended(scene, Work::Machine, to).into_iter().collect()
    },
};

/// Worn bores that are mended in such a way, with the sizes found and wanted.
pub(super) fn mended(scene: &Scene<'_>, work: Work, done: impl Fn(&TappetBores) -> String) -> Option<Brought> {
    let parts = scene.with(PartKind::TappetBore, work);
    let plan = scene.measured.tappet_bores.as_ref().filter(|_| !parts.is_empty())?;
    let wanted = if plan.finished_shown.is_empty() { String::new() } else { format!(", {}", plan.finished_shown) };
    let measured = plan.bores.iter().filter(|own| parts.contains(&own.part) && !own.found_shown.is_empty());
    let found: Vec<String> = measured.map(|own| format!("{} {}", own.label, own.found_shown)).collect();
    let found = if found.is_empty() { String::new() } else { format!("; found: {}", found.join("; ")) };
    Some(Brought {
        done: Some(format!("{}{wanted}{found}", done(plan))),
        which: scene.which(PartKind::TappetBore, &parts),
        size: plan.size.map(|size| (size, plan.size_shown.clone())),
        waits_for: plan.waits_for.clone(),
        is_right: scene.are_tappet_bores_right(),
        ..Brought::new(PartKind::TappetBore, parts, plan.because.clone())
    })
}
