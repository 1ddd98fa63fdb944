//! Sizing: from readings to one common size per group, what to order in which size, and what clearance to expect.

mod clearance;
mod condition;
mod group;
mod order;
mod plan;
mod read_back;
mod words;

pub use clearance::{Predicted, Spread, running};
pub use group::smallest_size;
pub use order::{OrderLine, OrderState};
pub use plan::{Action, GroupPlan, Lack, Missing, PartPlan};
pub use read_back::{ReadBack, ReadBackLine};

use std::collections::BTreeMap;

use serde::Serialize;

use crate::engine::{Engine, Part, PartKind};
use crate::figure::{Bench, Figure, Readings, Sizes, figures};
use crate::job::Job;
use crate::measure::Phase;
use crate::sheet::{Dispute, SizeGroup};

/// The sizes of a rebuild.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Sizing {
    /// What is done with each group, and why.
    pub groups: Vec<GroupPlan>,
    /// The clearance to expect at each position.
    pub clearances: Vec<Predicted>,
    /// What came back from the machine shop, beside what was asked for.
    pub read_back: Vec<ReadBack>,
    /// What to order, in which size: held or free.
    pub orders: Vec<OrderLine>,
}

impl Sizing {
    /// Takes into account which parts are replaced for a reason that readings do not tell, such as a crack or a scuffed
    /// skirt. What was to go with journals or bores that are renewed with their shaft or block is held, for the new ones
    /// have sizes of their own; and a clearance to expect no longer rests on the old piston's reading.
    pub fn settle(&mut self, readings: &Readings<'_>, is_replaced: &dyn Fn(Part) -> bool) {
        let replaced: Vec<PartKind> =
            readings.engine.parts().iter().filter(|part| is_replaced(**part)).map(|part| part.kind).collect();
        order::hold_renewed(&mut self.orders, &self.groups, |kind| replaced.contains(&kind));
        if replaced.contains(&PartKind::Piston) {
            self.clearances = clearance::predict(readings, &self.groups, is_replaced);
        }
    }
}

/// All that was measured and all that follows from it.
#[derive(Debug)]
pub struct Measured<'a> {
    /// The readings that stand.
    pub readings: Readings<'a>,
    /// The sizes.
    pub sizing: Sizing,
    /// The figures of every part that was measured, phase after phase.
    pub figures: BTreeMap<Part, Vec<Figure>>,
}

impl<'a> Measured<'a> {
    /// Of a job.
    pub fn of(engine: &'a Engine, job: &'a Job) -> Self {
        let readings = Readings::new(engine, job);
        let sizing = size(&readings);
        let found = found_sizes(&readings);
        let planned = planned_sizes(&sizing.groups);
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
        Self { readings, sizing, figures: all }
    }

    /// The figures of a part in one phase.
    pub fn figures(&self, part: Part, phase: Phase) -> impl Iterator<Item = &Figure> {
        self.figures.get(&part).into_iter().flatten().filter(move |figure| figure.phase == phase)
    }

    /// The plan of the group to which a part belongs.
    pub fn plan_of(&self, part: Part) -> Option<&GroupPlan> {
        self.sizing.groups.iter().find(|plan| plan.group.kind() == part.kind)
    }
}

/// The sizes that follow from all readings.
pub fn size(readings: &Readings<'_>) -> Sizing {
    let groups = plans(readings);
    let read_back: Vec<ReadBack> = groups.iter().filter_map(|plan| read_back::read_back(readings, plan)).collect();
    let orders = order::orders(readings, &groups, &read_back);
    let clearances = clearance::predict(readings, &groups, &|_| false);
    Sizing { groups, clearances, read_back, orders }
}

/// The plan of each group; where the shop grinds all journals of a crankshaft together, one group takes the other along.
fn plans(readings: &Readings<'_>) -> Vec<GroupPlan> {
    let mut plans: Vec<GroupPlan> =
        SizeGroup::ALL.into_iter().map(|group| group::plan(readings, group, None)).collect();
    if !readings.job.sheet.follows_other(Dispute::GroundJournals) {
        return plans;
    }
    let is_ground = |group: SizeGroup| of(&plans, group).is_some_and(|plan| plan.action == Action::Machine);
    let along = match (is_ground(SizeGroup::Mains), is_ground(SizeGroup::Crankpins)) {
        (true, false) => SizeGroup::Crankpins,
        (false, true) => SizeGroup::Mains,
        _ => return plans,
    };
    if let Some(plan) = plans.iter_mut().find(|plan| plan.group == along && plan.action != Action::Replace) {
        let why =
            format!("Other journals of the crankshaft must be ground. {}", Dispute::GroundJournals.sentence(true));
        *plan = group::plan(readings, along, Some(why));
    }
    plans
}

/// The sizes that the groups had when they were found.
pub fn found_sizes(readings: &Readings<'_>) -> Sizes {
    readings.job.found_sizes.iter().map(|(group, size)| (*group, size.length)).collect()
}

/// The sizes that the groups are brought to.
pub fn planned_sizes(groups: &[GroupPlan]) -> Sizes {
    groups.iter().filter_map(|plan| Some((plan.group, plan.size?))).collect()
}

/// The plan of a group.
fn of(groups: &[GroupPlan], group: SizeGroup) -> Option<&GroupPlan> {
    groups.iter().find(|plan| plan.group == group)
}
