//! Bores brought to the next size, all of them alike.

use super::come::has_come;
use super::grind::sized;
use super::row::{Brought, Row, Stage};
use crate::engine::PartKind;
use crate::job::Job;
use crate::measure::{Phase, Reading};
use crate::sheet::SizeGroup;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "bore and hone",
    stage: Stage::Machine,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Give the pistons along: each bore is finished to the piston that runs in it. Main caps on and tightened.",
    source: "Common practice.",
    brought: |scene| {
        let mut all: Vec<Brought> = sized(scene, SizeGroup::Bores).into_iter().collect();
        for own in all.iter_mut().filter(|own| !own.is_right && !are_pistons_here(scene.job())) {
            own.waits_for.push("The pistons go along, and have not come yet.".into());
        }
        all
    },
};

/// Whether the new pistons have come; also where it was measured what was bored to them.
fn are_pistons_here(job: &Job) -> bool {
    let is_bored = |reading: &Reading| reading.part.kind == PartKind::Bore && reading.phase == Phase::Machined;
    has_come(job, PartKind::Piston) || job.readings.iter().any(|taken| is_bored(&taken.reading))
}
