//! The sum over all subsets of the shared causes, places side by side.

use std::sync::{Arc, OnceLock};

use rayon::prelude::*;

use super::belief::largest_shares;
use super::columns::Columns;
use super::graph::{Network, Unsound};
use super::known::{Known, KnownSites};
use super::site::Site;
use super::solution::{Solution, weighed};
use super::table::projection;
use crate::cause::scaled::Scaled;

impl Network {
    /// Works the network out.
    ///
    /// # Errors
    /// [`Unsound`].
    pub fn solve(&self) -> Result<Solution<'_>, Unsound> {
        self.solve_with(KnownSites::default())
    }

    /// Works the network out, with places that were worked out before.
    ///
    /// # Errors
    /// [`Unsound`].
    pub fn solve_with(&self, earlier: KnownSites) -> Result<Solution<'_>, Unsound> {
        self.check()?;
        let mut old: Vec<Option<Known>> = earlier.sites.into_iter().map(Some).collect();
        old.resize_with(self.sites.len(), || None);
        let known = |(site, old): (&Site, Option<Known>)| {
            old.filter(|known| known.site == *site).unwrap_or_else(|| Known::new(site))
        };
        let known = KnownSites { sites: self.sites.par_iter().zip(old).map(known).collect() };
        let mut projections: Vec<Arc<Vec<u16>>> = Vec::with_capacity(self.sites.len());
        for own in &known.sites {
            // Places on which the same causes bear share one.
            let alike = known.sites.iter().zip(&projections).find(|(other, _)| other.tables.bits == own.tables.bits);
            let projection = alike.map_or_else(
                || Arc::new(projection(self.priors.len(), &own.tables.bits)),
                |(_, projection)| projection.clone(),
            );
            projections.push(projection);
        }
        let prior = self.prior();
        let weights = weighed(&prior, known.sites.iter().zip(&projections));
        let columns = Columns::new(&largest_shares(&weights, self.priors.len()));
        let seen = self.sites.iter().map(|_| OnceLock::new()).collect();
        Ok(Solution { network: self, known, projections, prior, weights, columns, seen })
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
