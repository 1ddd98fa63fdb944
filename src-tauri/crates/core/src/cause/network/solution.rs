//! A network worked out: what is believed, and what would be had something not been seen.

use std::sync::{Arc, OnceLock};

use super::belief::{Belief, marginals, marginals_of};
use super::columns::Columns;
use super::graph::{MAX_SHARED, Network};
use super::hypothesis::Hypothesis;
use super::known::{Known, KnownSites};
use super::seat::{CauseSeat, PiecesAt};
use super::site::Branch;
use super::table::{pick, times};
use crate::cause::scaled::Scaled;

/// A network worked out.
#[derive(Debug)]
pub struct Solution<'a> {
    pub(super) network: &'a Network,
    pub(super) known: KnownSites,
    /// For each place the subset of its own causes within every subset of all.
    pub(super) projections: Vec<Arc<Vec<u16>>>,
    /// The weight of every subset of shared causes before anything is seen.
    pub(super) prior: Vec<Scaled>,
    /// The weight of every subset of shared causes, everything taken into account; the largest lies within a step of 1.
    pub(super) weights: Vec<f64>,
    /// The subsets by how much they matter to the belief in any shared cause.
    pub(super) columns: Columns,
    /// As each place sees them, once it is asked; worked out without the pool of threads, as under the lock of a place.
    pub(super) seen: Vec<OnceLock<Seen>>,
}

/// The subsets of shared causes that can be seen beside the others, as a place has them.
#[derive(Debug)]
pub(super) struct Seen {
    /// The subsets of the place's own causes, each once.
    pub(super) own: Vec<u16>,
    /// The weight of each.
    pub(super) weights: Vec<f64>,
    /// Which of them lies in each subset of all.
    pub(super) places: Vec<u16>,
}

/// Places on which the same causes bear, with evidence left out.
struct Together<'a> {
    projection: &'a Arc<Vec<u16>>,
    /// Those of their own subsets that matter.
    own: Vec<u16>,
    /// For these, how many times likelier everything else is.
    ratio: Vec<f64>,
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

    /// The belief in each shared cause had some pieces of evidence at some places not been seen.
    pub fn shared_without(&self, left_out: &[PiecesAt]) -> Vec<Belief> {
        let concerned =
            || left_out.iter().filter_map(|out| Some((out.site, self.known.sites.get(out.site)?, &*out.pieces)));
        let subsets = self.columns.enough(concerned().map(|(_, known, out)| known.growth(out)).sum());
        let mut weights = pick(&self.weights, subsets);
        // Places on which the same causes bear are taken together, so that the long row is walked seldom.
        let mut rows: Vec<Together<'_>> = Vec::new();
        for (site, known, out) in concerned() {
            let Some(projection) = self.projections.get(site) else { continue };
            let n = rows.iter().position(|row| Arc::ptr_eq(row.projection, projection)).unwrap_or_else(|| {
                let own = distinct(subsets.iter().filter_map(|s| projection.get(usize::from(*s)).copied()));
                rows.push(Together { projection, own, ratio: vec![1.0; known.tables.size()] });
                rows.len() - 1
            });
            let Some(row) = rows.get_mut(n) else { continue };
            known.times_ratio(out, &row.own, &mut row.ratio);
        }
        for row in rows {
            for (weight, subset) in weights.iter_mut().zip(subsets) {
                let own = row.projection.get(usize::from(*subset));
                *weight *= own.and_then(|own| row.ratio.get(usize::from(*own))).copied().unwrap_or(1.0);
            }
        }
        marginals_of(subsets, &weights, self.network.priors.len())
    }

    /// The weight of each state of a place, or of one that hangs on it, as far as it can be seen beside the others; not
    /// normalised, and nothing for a place that isn't there.
    pub fn states(&self, CauseSeat { site, branch }: CauseSeat) -> Vec<f64> {
        let (Some(known), Some(seen)) = (self.known.sites.get(site), self.seen_from(site)) else { return vec![] };
        known.tables.states(&known.site, branch, &|_| false, (&seen.own, &seen.weights))
    }

    /// That a place is in one of some states, as `is` says of each; had nothing been found at some other sites.
    pub fn hypothesis(
        &self,
        CauseSeat { site, branch }: CauseSeat,
        is: &dyn Fn(usize) -> bool,
        forgetting: &[usize],
    ) -> Option<Hypothesis<'_>> {
        let known = self.known.sites.get(site)?;
        let row = if forgetting.is_empty() {
            self.gather(site, &self.weights)
        } else {
            let kept = self.known.sites.iter().zip(&self.projections).enumerate();
            let kept = kept.filter(|(number, _)| !forgetting.contains(number)).map(|(_, place)| place);
            self.gather(site, &weighed(&self.prior, kept))
        };
        Some(Hypothesis::new(known, branch, is, row))
    }

    /// The probability that some place is in one of some states: `found` is asked for each place and state.
    pub fn anywhere(&self, found: &dyn Fn(CauseSeat, usize) -> bool) -> f64 {
        let subsets = self.columns.enough(0.0);
        let mut free = pick(&self.weights, subsets);
        for (number, known) in self.known.sites.iter().enumerate() {
            let at = |branch| CauseSeat { site: number, branch };
            let root = || (0..known.site.states.len()).any(|state| found(at(None), state));
            let hanging = |(n, branch): (usize, &Branch)| (0..branch.len()).any(|state| found(at(Some(n)), state));
            if (root() || known.site.branches.iter().enumerate().any(hanging))
                && let Some(seen) = self.seen_from(number)
            {
                let row = known.tables.free_of(&|branch, state| found(at(branch), state), &seen.own);
                times(&mut free, &pick(&row, &seen.places));
            }
        }
        1.0 - free.iter().sum::<f64>() / self.weight()
    }

    /// The places as they were worked out, for the next time.
    pub fn into_known(self) -> KnownSites {
        self.known
    }

    /// Sums weights of all subsets over everything that does not bear on a place.
    fn gather(&self, site: usize, weights: &[f64]) -> Vec<f64> {
        let (Some(known), Some(projection)) = (self.known.sites.get(site), self.projections.get(site)) else {
            return vec![];
        };
        let mut row = vec![0.0; known.tables.size()];
        for (weight, index) in weights.iter().zip(projection.iter()) {
            if let Some(sum) = row.get_mut(usize::from(*index)) {
                *sum += weight;
            }
        }
        row
    }

    pub(super) fn seen_from(&self, site: usize) -> Option<&Seen> {
        let projection = self.projections.get(site)?;
        // Places on which the same causes bear see the same.
        let first = self.projections.iter().position(|other| Arc::ptr_eq(other, projection))?;
        Some(self.seen.get(first)?.get_or_init(|| self.see(projection)))
    }

    fn see(&self, projection: &[u16]) -> Seen {
        let subsets = self.columns.enough(0.0);
        let all: Vec<u16> = subsets.iter().filter_map(|s| projection.get(usize::from(*s)).copied()).collect();
        let own = distinct(all.iter().copied());
        let number = |subset| own.binary_search(subset).ok().and_then(|n| u16::try_from(n).ok());
        let places: Vec<u16> = all.iter().filter_map(number).collect();
        let mut weights = vec![0.0; own.len()];
        for (weight, place) in pick(&self.weights, subsets).into_iter().zip(&places) {
            weights.get_mut(usize::from(*place)).into_iter().for_each(|sum| *sum += weight);
        }
        Seen { own, weights, places }
    }
}

/// The weight of every subset of shared causes, as some of the places have it.
pub(super) fn weighed<'a>(prior: &[Scaled], places: impl Iterator<Item = (&'a Known, &'a Arc<Vec<u16>>)>) -> Vec<f64> {
    // Places on which the same causes bear are taken together, so that the long row is walked seldom.
    let mut rows: Vec<(&Arc<Vec<u16>>, Vec<Scaled>)> = Vec::new();
    for (known, projection) in places {
        let message = &known.tables.message;
        match rows.iter_mut().find(|(other, _)| Arc::ptr_eq(other, projection)) {
            Some((_, row)) => row.iter_mut().zip(message).for_each(|(x, factor)| *x = x.product(*factor)),
            None => rows.push((projection, message.clone())),
        }
    }
    let mut weights = prior.to_vec();
    for (projection, row) in rows {
        for (weight, index) in weights.iter_mut().zip(projection.iter()) {
            if let Some(factor) = row.get(usize::from(*index)) {
                *weight = weight.product(*factor);
            }
        }
    }
    Scaled::aligned(&weights)
}

/// Each of some subsets once, ascending.
pub(super) fn distinct(subsets: impl Iterator<Item = u16>) -> Vec<u16> {
    let mut seen = [0_u64; (1 << MAX_SHARED) / 64];
    for subset in subsets {
        seen.get_mut(usize::from(subset >> 6)).into_iter().for_each(|word| *word |= 1 << (subset & 63));
    }
    let mut distinct = Vec::new();
    for (start, mut word) in (0..).step_by(64).zip(seen) {
        while word != 0 {
            distinct.extend(u16::try_from(word.trailing_zeros()).map(|bit: u16| start + bit));
            word &= word - 1;
        }
    }
    distinct
}
