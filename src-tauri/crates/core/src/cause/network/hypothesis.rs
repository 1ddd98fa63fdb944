//! One place of a solved network, as far as some of its states are concerned.

use std::sync::OnceLock;

use super::belief::Belief;
use super::columns::Columns;
use super::known::Known;
use super::observation::Observation;
use super::table::{pick, plus};

/// Whether a place of a solved network is in one of some states.
#[derive(Debug)]
pub struct Hypothesis<'a> {
    known: &'a Known,
    branch: Option<usize>,
    /// For each state whether it is asked for.
    is: Vec<bool>,
    /// The weight of every subset of the causes that bear on the place.
    row: Vec<f64>,
    /// The part of it in which the place is in one of the states, and the rest.
    sides: [Vec<f64>; 2],
    columns: OnceLock<Columns>,
}

impl<'a> Hypothesis<'a> {
    /// `row` has the weight of every subset of the causes that bear on the place.
    pub(super) fn new(known: &'a Known, branch: Option<usize>, is: &dyn Fn(usize) -> bool, row: Vec<f64>) -> Self {
        let mut sides = [vec![0.0; row.len()], vec![0.0; row.len()]];
        let joint = known.tables.joint(branch, &row);
        let is: Vec<bool> = (0..joint.len()).map(is).collect();
        for (joint, is) in joint.iter().zip(&is) {
            let [with, without] = &mut sides;
            plus(if *is { with } else { without }, joint);
        }
        Self { known, branch, is, row, sides, columns: OnceLock::new() }
    }

    /// The belief that it is, everything taken into account.
    pub fn belief(&self) -> Belief {
        let [present, absent] = &self.sides;
        Belief { present: present.iter().sum(), absent: absent.iter().sum() }
    }

    /// The belief that it is, had some observations of the place not been seen.
    pub fn without(&self, out: &dyn Fn(&Observation) -> bool) -> Belief {
        let Known { site, tables, .. } = self.known;
        let columns = self.columns.get_or_init(|| Columns::of_rows(&self.sides));
        let columns = columns.enough(tables.growth(site, out));
        let weights = tables.states(site, self.branch, out, (columns, &pick(&self.row, columns)));
        Belief::of_states(&weights, &|state| self.is.get(state) == Some(&true))
    }
}
