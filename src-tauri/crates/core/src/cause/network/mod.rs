//! The probability model: causes of the whole engine, what may be wrong at each place, findings with a grade, and exact
//! inference between them.
//!
//! - Each cause of the whole engine is there or not; each place has one state: nothing wrong, or exactly one of the
//!   things that can be wrong there. What hangs on a place (rods on a crankpin) has a state of its own.
//! - A finding's grade is the greatest that any present cause, the states of its place, or the leak (whatever is not in
//!   the catalogue) produces: noisy-MAX. Where the zones were marked, their pattern is that of the maker answerable.
//! - Places are independent once the shared causes are known. So the posterior is a sum over the subsets of shared
//!   causes, and for each subset a product over places of sums over states: no sampling, no approximation.

mod at_place;
mod belief;
mod columns;
mod finding;
mod memo;
mod question;
mod site;
mod solution;
mod table;

use std::sync::{Arc, OnceLock};

use rayon::prelude::*;
use serde::Serialize;

pub use at_place::AtPlace;
pub use belief::Belief;
pub use finding::{Finding, GRADES, GradeChances, Maker, Observed};
pub use memo::Memo;
pub use question::{Answer, Question};
pub use site::{Branch, Site};
pub use solution::Solution;

use super::scaled::Scaled;
use belief::largest_shares;
use columns::Columns;
use memo::Known;
use solution::weighed;
use table::projection;

/// The most shared causes over which the sum is taken: 2¹³ subsets are still quick and small.
pub const MAX_SHARED: usize = 13;

/// Causes, places and what was seen.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Network {
    /// The prior probability of each cause of the whole engine, 0 to 1.
    pub priors: Vec<f64>,
    /// The places.
    pub sites: Vec<Site>,
}

/// Some pieces of evidence at a place, by their numbers.
pub type AtSite = (usize, Vec<usize>);

/// A network that can't be reckoned with: more than [`MAX_SHARED`] shared causes, a finding that the leak can't make, a
/// maker that is certain, a prior outside 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("Nothing in the model may be certain or impossible beforehand, and it bears no more than {MAX_SHARED} causes.")]
pub struct Unsound;

impl Network {
    /// Works the network out.
    ///
    /// # Errors
    /// [`Unsound`].
    pub fn solve(&self) -> Result<Solution<'_>, Unsound> {
        self.solve_with(Memo::default())
    }

    /// Works the network out, with places that were worked out before.
    ///
    /// # Errors
    /// [`Unsound`].
    pub fn solve_with(&self, memo: Memo) -> Result<Solution<'_>, Unsound> {
        self.check()?;
        let mut old: Vec<Option<Known>> = memo.sites.into_iter().map(Some).collect();
        old.resize_with(self.sites.len(), || None);
        let known = |(site, old): (&Site, Option<Known>)| {
            old.filter(|known| known.site == *site).unwrap_or_else(|| Known::new(site))
        };
        let memo = Memo { sites: self.sites.par_iter().zip(old).map(known).collect() };
        let mut projections: Vec<Arc<Vec<u16>>> = Vec::with_capacity(self.sites.len());
        for known in &memo.sites {
            // Places on which the same causes bear share one.
            let alike = memo.sites.iter().zip(&projections).find(|(other, _)| other.tables.bits == known.tables.bits);
            let projection = alike.map_or_else(
                || Arc::new(projection(self.priors.len(), &known.tables.bits)),
                |(_, projection)| projection.clone(),
            );
            projections.push(projection);
        }
        let prior = self.prior();
        let weights = weighed(&prior, memo.sites.iter().zip(&projections));
        let columns = Columns::new(&largest_shares(&weights, self.priors.len()));
        let seen = self.sites.iter().map(|_| OnceLock::new()).collect();
        Ok(Solution { network: self, memo, projections, prior, weights, columns, seen })
    }

    fn check(&self) -> Result<(), Unsound> {
        let chance = |p: &f64| *p >= 0.0 && *p <= 1.0;
        let states = |states: &[f64]| states.first().is_some_and(|nothing| *nothing > 0.0) && states.iter().all(chance);
        let sound = self.priors.len() <= MAX_SHARED
            && self.priors.iter().all(chance)
            && self.sites.iter().all(|site| {
                states(&site.states)
                    && site.branches.iter().all(|branch| {
                        branch.states.len() == site.states.len()
                            && branch.states.iter().all(|given| states(given) && given.len() == branch.len())
                    })
                    && site.all_findings().all(Finding::is_open)
                    && site.all_findings().all(|finding| finding.shared.iter().all(|(by, _)| *by < self.priors.len()))
            });
        if sound { Ok(()) } else { Err(Unsound) }
    }

    /// The weight of every subset of shared causes before anything is seen.
    fn prior(&self) -> Vec<Scaled> {
        let mut weights = vec![Scaled::ONE];
        for prior in &self.priors {
            let with: Vec<Scaled> = weights.iter().map(|weight| weight.times(*prior)).collect();
            weights = weights.iter().map(|weight| weight.times(1.0 - prior)).collect();
            weights.extend(with);
        }
        weights
    }
}
