//! The sizes of a rebuild.

use serde::Serialize;

use super::decided::Decided;
use super::order_line::OrderLine;
use super::orders::orders;
use crate::engine::Part;
use crate::figure::Readings;
use crate::sheet::SizeGroup;
use crate::sizing::{GroupPlan, Predicted, ReadBack, TappetBores, clearances, plan_of};

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
    /// What is done about worn bores of tappets; none where there are none.
    pub tappet_bores: Option<TappetBores>,
    /// What to order, in which size: held or free.
    pub orders: Vec<OrderLine>,
}

impl Sizing {
    /// What follows from the plans once it is decided which parts are replaced: for a reason that readings do not tell,
    /// such as a crack or a scuffed skirt, too.
    pub(crate) fn of(
        readings: &Readings<'_>,
        plans: Vec<GroupPlan>,
        tappet_bores: Option<TappetBores>,
        read_back: Vec<ReadBack>,
        decided: &Decided<'_>,
    ) -> Self {
        Self {
            orders: orders(readings, &plans, tappet_bores.as_ref(), &read_back, decided),
            clearances: clearances(readings, &plans, decided.replaced),
            read_back,
            tappet_bores,
            groups: plans,
        }
    }

    /// Whether a part has come back with all of its group, was measured and is right: the work on it is behind.
    pub fn is_right(&self, part: Part) -> bool {
        self.read_back.iter().any(|back| back.confirmed && back.parts.iter().any(|line| line.part == part))
    }

    /// The plan of a group.
    pub fn plan(&self, group: SizeGroup) -> Option<&GroupPlan> {
        plan_of(&self.groups, group)
    }
}
