//! Sizing in two steps. From readings to the plan of each group, one common size for all of it ([`Measured`]), on which
//! decisions rest; and once those are made, what came back from the machine shop ([`read_back`]) and what clearance to
//! expect ([`clearances`]).

mod clearance;
mod condition;
mod group;
mod plan;
mod read_back;
mod scratch;
mod words;

pub(crate) use clearance::clearances;
pub use clearance::{Predicted, Spread, running};
pub use group::smallest_size;
pub use plan::{Action, GroupPlan, Lack, Missing, PartPlan, plan_of};
pub(crate) use read_back::read_back;
pub use read_back::{ReadBack, ReadBackLine};
pub use scratch::{Scratch, by_nail, deepest_scratch, scratch};

use std::collections::BTreeMap;

use crate::engine::{Engine, Part};
use crate::figure::{Bench, Figure, Readings, Sizes, figures};
use crate::job::Job;
use crate::measure::Phase;
use crate::sheet::SizeGroup;

/// All that was measured and all that follows from it.
#[derive(Debug)]
pub struct Measured<'a> {
    /// The readings that stand.
    pub readings: Readings<'a>,
    /// What is done with each group, and why.
    pub plans: Vec<GroupPlan>,
    /// The figures of every part that was measured, phase after phase.
    pub figures: BTreeMap<Part, Vec<Figure>>,
}

impl<'a> Measured<'a> {
    /// Of a job.
    pub fn of(engine: &'a Engine, job: &'a Job) -> Self {
        let readings = Readings::new(engine, job);
        let plans = group::plans(&readings);
        let found = readings.found_sizes();
        let planned = planned_sizes(&plans);
        let mut all: BTreeMap<Part, Vec<Figure>> = BTreeMap::new();
        // Most jobs have no readings for most of their life.
        let parts = engine.parts().iter().filter(|_| !readings.is_empty());
        for part in parts {
            let of_phase = |phase: Phase| {
                let sizes = if phase == Phase::Found { &found } else { &planned };
                figures(Bench { readings: &readings, phase, sizes }, *part)
            };
            let of_part: Vec<Figure> = Phase::ALL.into_iter().flat_map(of_phase).collect();
            if !of_part.is_empty() {
                all.insert(*part, of_part);
            }
        }
        Self { readings, plans, figures: all }
    }

    /// The figures of a part in one phase.
    pub fn figures(&self, part: Part, phase: Phase) -> impl Iterator<Item = &Figure> {
        self.figures.get(&part).into_iter().flatten().filter(move |figure| figure.phase == phase)
    }

    /// The plan of the group to which a part belongs.
    pub fn plan_of(&self, part: Part) -> Option<&GroupPlan> {
        plan_of(&self.plans, SizeGroup::of(part.kind)?)
    }
}

/// The sizes that the groups are brought to.
fn planned_sizes(groups: &[GroupPlan]) -> Sizes {
    groups.iter().filter_map(|plan| Some((plan.group, plan.size?))).collect()
}
