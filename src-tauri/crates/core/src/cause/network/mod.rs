//! The probability model: causes of the whole engine, what may be wrong at each place, findings with a grade, and exact
//! inference between them.
//!
//! - Each cause of the whole engine is there or not; each place has one state: nothing wrong, or exactly one of the
//!   things that can be wrong there. What hangs on a place (rods on a crankpin) has a state of its own.
//! - A finding's grade is the greatest that any present cause, the states of its place, or the leak (whatever is not in
//!   the catalogue) produces: noisy-MAX. Where the zones were marked, their pattern is that of the maker answerable.
//! - Places are independent once the shared causes are known. So the posterior is a sum over the subsets of shared
//!   causes, and for each subset a product over places of sums over states: no sampling, no approximation.

mod finding;
mod question;
mod site;
mod table;

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::sync::Arc;

pub use finding::{Finding, GRADES, GradeChances, Maker, Observed};
pub use question::{Answer, Question};
pub use site::{Branch, Site};

use super::scaled::Scaled;
use site::SiteTables;
use table::{projection, times};

/// The most shared causes over which the sum is taken: 2¹³ subsets are still quick and small.
pub const MAX_SHARED: usize = 13;

/// Causes, places and what was seen.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Network {
    /// The prior probability of each cause of the whole engine, 0 to 1.
    pub priors: Vec<f64>,
    /// The places.
    pub sites: Vec<Site>,
}

/// A network that can't be reckoned with: more than [`MAX_SHARED`] shared causes, a finding that the leak can't make, a
/// maker that is certain, a prior outside 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("Nothing in the model may be certain or impossible beforehand, and it bears no more than {MAX_SHARED} causes.")]
pub struct Unsound;

/// What is believed of a cause, as two weights, so that neither near-certainty is lost in rounding.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Belief {
    present: f64,
    absent: f64,
}

impl Belief {
    /// From a probability between 0 and 1.
    pub fn of(probability: f64) -> Self {
        Self { present: probability, absent: 1.0 - probability }
    }

    /// From the weights of both answers.
    pub fn weighed(present: f64, absent: f64) -> Self {
        Self { present, absent }
    }

    /// The probability that the cause is present, 0 to 1.
    pub fn probability(self) -> f64 {
        self.present / (self.present + self.absent)
    }

    /// The odds that it is present; infinite when its absence is out of the question.
    pub fn odds(self) -> f64 {
        self.present / self.absent
    }
}

/// Places worked out earlier. Nothing depends on it but the time that it takes.
#[derive(Debug, Default)]
pub struct Memo {
    sites: Vec<Known>,
}

/// A place worked out, and by what its likelihood changes when pieces of evidence are left out.
#[derive(Debug)]
struct Known {
    site: Site,
    tables: Arc<SiteTables>,
    left_out: RefCell<BTreeMap<Vec<usize>, Arc<Vec<f64>>>>,
}

/// A network worked out.
#[derive(Debug)]
pub struct Solution<'a> {
    network: &'a Network,
    memo: Memo,
    sites: Vec<Place>,
    /// The weight of every subset of shared causes, everything taken into account; the largest lies within a step of 1.
    weights: Vec<f64>,
}

#[derive(Debug, Clone)]
struct Place {
    tables: Arc<SiteTables>,
    /// For every subset of all shared causes, the subset that bears on the place.
    projection: Arc<Vec<u16>>,
}

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
        let mut old = memo.sites.into_iter();
        let mut memo = Memo::default();
        let mut sites: Vec<Place> = Vec::with_capacity(self.sites.len());
        for site in &self.sites {
            let known = old.next().filter(|known| known.site == *site).unwrap_or_else(|| Known {
                site: site.clone(),
                tables: Arc::new(SiteTables::new(site)),
                left_out: RefCell::default(),
            });
            let tables = known.tables.clone();
            memo.sites.push(known);
            let alike = sites.iter().find(|place| place.tables.bits == tables.bits);
            let projection = alike.map_or_else(
                || Arc::new(projection(self.priors.len(), &tables.bits)),
                |place| place.projection.clone(),
            );
            sites.push(Place { tables, projection });
        }
        let mut weights = self.prior_weights();
        for place in &sites {
            place.multiply(&mut weights, &place.tables.message);
        }
        let weights = Scaled::aligned(&weights);
        Ok(Solution { network: self, memo, sites, weights })
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

    fn prior_weights(&self) -> Vec<Scaled> {
        let mut table = vec![Scaled::ONE];
        for prior in &self.priors {
            let with: Vec<Scaled> = table.iter().map(|weight| weight.times(*prior)).collect();
            table = table.iter().map(|weight| weight.times(1.0 - prior)).collect();
            table.extend(with);
        }
        table
    }
}

impl Place {
    /// Multiplies a row over the place's own subsets into the weights of all subsets.
    fn multiply(&self, weights: &mut [Scaled], row: &[Scaled]) {
        for (weight, index) in weights.iter_mut().zip(self.projection.iter()) {
            if let Some(factor) = row.get(usize::from(*index)) {
                *weight = weight.product(*factor);
            }
        }
    }

    /// The weight of each state of the place or of a branch, where its own subsets have the weights given.
    fn weights(&self, branch: Option<usize>, row: &[f64], without: Option<&site::Without>) -> Vec<f64> {
        match branch {
            None => (0..self.tables.root.len()).map(|state| dot(row, &self.tables.root_row(state, without))).collect(),
            Some(branch) => self.tables.branch_weights(branch, row, without),
        }
    }

    /// Sums weights of all subsets over everything that does not bear on the place.
    fn gather(&self, weights: &[f64]) -> Vec<f64> {
        let mut row = vec![0.0; self.tables.size()];
        for (weight, index) in weights.iter().zip(self.projection.iter()) {
            if let Some(sum) = row.get_mut(usize::from(*index)) {
                *sum += weight;
            }
        }
        row
    }
}

impl Solution<'_> {
    /// The weight of everything that was seen, by which other weights of the solution are normalised.
    pub fn weight(&self) -> f64 {
        self.weights.iter().sum()
    }

    /// The belief in each shared cause.
    pub fn shared(&self) -> Vec<Belief> {
        marginals(self.weights.clone(), self.network.priors.len())
    }

    /// The weight of each state of a place, not normalised; nothing for a place that isn't there.
    pub fn root(&self, site: usize) -> Vec<f64> {
        self.states(site, None)
    }

    /// The weight of each state of a branch, not normalised.
    pub fn branch(&self, site: usize, branch: usize) -> Vec<f64> {
        self.states(site, Some(branch))
    }

    fn states(&self, site: usize, branch: Option<usize>) -> Vec<f64> {
        let Some(place) = self.sites.get(site) else { return vec![] };
        place.weights(branch, &place.gather(&self.weights), None)
    }

    /// The probability that some place is in one of some states: `found` is asked for each site, branch and state.
    pub fn anywhere(&self, found: &dyn Fn(usize, Option<usize>, usize) -> bool) -> f64 {
        let concerned = self.network.sites.iter().enumerate().filter(|(number, site)| {
            let root = || (0..site.states.len()).any(|state| found(*number, None, state));
            let hanging = |(n, branch): (usize, &Branch)| (0..branch.len()).any(|s| found(*number, Some(n), s));
            root() || site.branches.iter().enumerate().any(hanging)
        });
        let rows = concerned.filter_map(|(number, _)| {
            let place = self.sites.get(number)?;
            Some((number, Arc::new(place.tables.free_of(&|branch, state| found(number, branch, state)))))
        });
        let mut free = vec![1.0; self.weights.len()];
        for (number, row) in rows {
            let Some(place) = self.sites.get(number) else { continue };
            for (x, index) in free.iter_mut().zip(place.projection.iter()) {
                *x *= row.get(usize::from(*index)).copied().unwrap_or(1.0);
            }
        }
        1.0 - dot(&self.weights, &free) / self.weight()
    }

    /// The places as they were worked out, for the next time.
    pub fn into_memo(self) -> Memo {
        self.memo
    }

    /// The belief in each shared cause had some findings of some places not been seen: `out` is asked for each finding of
    /// each of the places.
    pub fn shared_without(&self, places: &[usize], out: &dyn Fn(usize, &Finding) -> bool) -> Vec<Belief> {
        let ratios = places.iter().map(|number| (*number, self.ratio(*number, &|finding| out(*number, finding))));
        marginals(self.weights_times(ratios), self.network.priors.len())
    }

    /// The weight of each state of a place, or of a branch of it, had some findings of that place not been seen.
    pub fn states_without(&self, (site, branch): (usize, Option<usize>), out: &dyn Fn(&Finding) -> bool) -> Vec<f64> {
        let (Some(place), Some(of)) = (self.sites.get(site), self.network.sites.get(site)) else { return vec![] };
        let without = place.tables.without(of, out);
        // Only this place changes: its change is taken in after all else has been summed out.
        let mut row = place.gather(&self.weights);
        times(&mut row, &without.ratio);
        place.weights(branch, &over(&row, &without.mean), Some(&without))
    }

    /// The weight of each state of a place, or of a branch of it, had nothing been found at some other places.
    pub fn states_forgetting(&self, (site, branch): (usize, Option<usize>), places: &[usize]) -> Vec<f64> {
        let mut weights = self.network.prior_weights();
        for (_, place) in self.sites.iter().enumerate().filter(|(number, _)| !places.contains(number)) {
            place.multiply(&mut weights, &place.tables.message);
        }
        let Some(place) = self.sites.get(site) else { return vec![] };
        place.weights(branch, &place.gather(&Scaled::aligned(&weights)), None)
    }

    /// By what the likelihood of a place changes when some findings are left out; worked out once.
    fn ratio(&self, number: usize, out: &dyn Fn(&Finding) -> bool) -> Arc<Vec<f64>> {
        let (Some(place), Some(known)) = (self.sites.get(number), self.memo.sites.get(number)) else {
            return Arc::default();
        };
        let pieces: Vec<usize> =
            known.site.all_findings().filter(|finding| out(finding)).map(|finding| finding.piece).collect();
        if let Some(ratio) = known.left_out.borrow().get(&pieces) {
            return ratio.clone();
        }
        let ratio = Arc::new(place.tables.without(&known.site, out).ratio);
        known.left_out.borrow_mut().insert(pieces, ratio.clone());
        ratio
    }

    /// The weights of all subsets with those of some places changed.
    fn weights_times(&self, ratios: impl Iterator<Item = (usize, Arc<Vec<f64>>)>) -> Vec<f64> {
        // Places on which the same causes bear are taken together, so that the long row is walked seldom.
        let mut rows: Vec<(&Place, Vec<f64>)> = Vec::new();
        for (number, ratio) in ratios {
            let Some(place) = self.sites.get(number) else { continue };
            match rows.iter_mut().find(|(other, _)| Arc::ptr_eq(&other.projection, &place.projection)) {
                Some((_, row)) => times(row, &ratio),
                None => rows.push((place, ratio.to_vec())),
            }
        }
        let mut weights = self.weights.clone();
        for (place, row) in rows {
            for (weight, index) in weights.iter_mut().zip(place.projection.iter()) {
                *weight *= row.get(usize::from(*index)).copied().unwrap_or(1.0);
            }
        }
        weights
    }
}

fn over(row: &[f64], by: &[f64]) -> Vec<f64> {
    row.iter().zip(by).map(|(x, by)| x / by).collect()
}

fn dot(one: &[f64], other: &[f64]) -> f64 {
    one.iter().zip(other).map(|(x, y)| x * y).sum()
}

/// From a weight for every subset of causes to a belief in each cause. Each step sums a cause out and halves the table.
fn marginals(mut table: Vec<f64>, causes: usize) -> Vec<Belief> {
    let mut beliefs = Vec::with_capacity(causes);
    for _ in 0..causes {
        let (mut present, mut absent) = (0.0, 0.0);
        let mut half = Vec::with_capacity(table.len() / 2);
        for pair in table.chunks_exact(2) {
            let [without, with] = pair else { continue };
            absent += without;
            present += with;
            half.push(without + with);
        }
        beliefs.push(Belief { present, absent });
        table = half;
    }
    beliefs
}
