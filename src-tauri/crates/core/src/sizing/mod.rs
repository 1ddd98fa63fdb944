//! Sizing in two steps. From readings to the plan of each group, one common size for all of it ([`Measured`]), on which
//! decisions rest; and once those are made, what came back from the machine shop ([`read_back`]) and what clearance to
//! expect ([`clearances`]).

mod bent;
mod clearance;
mod condition;
mod ground_cam;
mod group;
mod own_size;
mod plan;
mod read_back;
mod scratch;
mod shell_grade;
mod tappet_bore;
mod thrust;
mod words;

pub(crate) use bent::{bent_mains, doubtful_mains};
pub(crate) use clearance::clearances;
pub use clearance::{Predicted, Spread, running};
pub(crate) use ground_cam::{cam_journal_back, unmeasured_cam_journals};
pub use group::smallest_size;
pub use own_size::sized_quantity;
pub(crate) use own_size::{Known, own_size};
pub use plan::{Action, GroupPlan, Lack, Missing, PartPlan, plan_of};
pub(crate) use read_back::read_back;
pub use read_back::{ReadBack, ReadBackLine};
pub use scratch::{Scratch, by_nail, deepest_scratch, scratch};
pub use shell_grade::ShellsOfGrade;
pub(crate) use shell_grade::{ShellGrades, shell_grades};
pub use tappet_bore::{Blame, TappetBores, WornBore, blame};
pub(crate) use thrust::{doubtful_thrust, thrust_back, worn_thrust};

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
    /// What is done about worn bores of tappets; none where there are none.
    pub tappet_bores: Option<TappetBores>,
    /// The figures of every part that was measured, phase after phase.
    pub figures: BTreeMap<Part, Vec<Figure>>,
}

impl<'a> Measured<'a> {
    /// Of a job.
    pub fn of(engine: &'a Engine, job: &'a Job) -> Self {
        let readings = Readings::new(engine, job);
        let plans = group::plans(&readings);
        let found = readings.found_sizes();
        let mut figures = figures_in(&readings, &[Phase::Found], &found);
        let tappet_bores = tappet_bore::tappet_bores(&readings, &figures);
        let planned = planned_sizes(&plans, tappet_bores.as_ref());
        for (part, later) in figures_in(&readings, &[Phase::Machined, Phase::Fitted], &planned) {
            figures.entry(part).or_default().extend(later);
        }
        Self { readings, plans, tappet_bores, figures }
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

/// The figures of every part that was measured in some phases, with the sizes that hold then.
fn figures_in(readings: &Readings<'_>, phases: &[Phase], sizes: &Sizes) -> BTreeMap<Part, Vec<Figure>> {
    // Most jobs have no readings for most of their life.
    let parts = readings.engine.parts().iter().filter(|_| !readings.is_empty());
    let of_part = |part: &Part| {
        let of_phase = |phase: &Phase| figures(Bench { readings, phase: *phase, sizes }, *part);
        (*part, phases.iter().flat_map(of_phase).collect::<Vec<Figure>>())
    };
    parts.map(of_part).filter(|(_, all)| !all.is_empty()).collect()
}

/// The sizes that the groups are brought to, and worn bores of tappets with the tappets that run in them.
fn planned_sizes(groups: &[GroupPlan], tappet_bores: Option<&TappetBores>) -> Sizes {
    let worn = tappet_bores.into_iter().filter_map(|plan| Some((plan, plan.size?)));
    Sizes {
        groups: groups.iter().filter_map(|plan| Some((plan.group, plan.size?))).collect(),
        tappets: worn.flat_map(|(plan, size)| plan.bores.iter().map(move |own| (own.part.at, size))).collect(),
    }
}
