//! The probability model: causes of the whole engine, what may be wrong at each place, findings with a grade, and exact
//! inference between them.
//!
//! - Each cause of the whole engine is there or not; each place has one state: nothing wrong, or exactly one of the
//!   things that can be wrong there. What hangs on a place (rods on a crankpin) has a state of its own.
//! - A finding's grade is the greatest that any present cause, the states of its place, or the leak (whatever is not in
//!   the catalogue) produces: noisy-MAX. Where the zones were marked, their pattern is that of the maker answerable.
//! - Places are independent once the shared causes are known. So the posterior is a sum over the subsets of shared
//!   causes, and for each subset a product over places of sums over states: no sampling, no approximation.

mod columns;
mod finding;
mod question;
mod site;
mod table;

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use serde::Serialize;

pub use finding::{Finding, GRADES, GradeChances, Maker, Observed};
pub use question::{Answer, Question};
pub use site::{Branch, Site};

use super::scaled::Scaled;
use columns::Columns;
use site::SiteTables;
use table::{pick, plus, projection, times};

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

    /// From the weights of the states of a place, of which some are meant.
    pub fn of_states(weights: &[f64], is: &dyn Fn(usize) -> bool) -> Self {
        let sum = |meant| weights.iter().enumerate().filter(|(n, _)| is(*n) == meant).map(|(_, weight)| weight).sum();
        Self { present: sum(true), absent: sum(false) }
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

/// A place worked out, and what changes when pieces of evidence are left out.
#[derive(Debug)]
struct Known {
    site: Site,
    tables: SiteTables,
    left_out: Mutex<BTreeMap<Vec<usize>, LeftOut>>,
}

/// What changes at a place when pieces of evidence are left out.
#[derive(Debug)]
struct LeftOut {
    /// By how many doublings a weight can rise at the most.
    growth: f64,
    /// How many times likelier everything else is, for every subset; not a number where nobody has asked.
    ratio: Vec<f64>,
}

/// A network worked out.
#[derive(Debug)]
pub struct Solution<'a> {
    network: &'a Network,
    memo: Memo,
    /// For each place the subset of its own causes within every subset of all.
    projections: Vec<Arc<Vec<u16>>>,
    /// The weight of every subset of shared causes, everything taken into account; the largest lies within a step of 1.
    weights: Vec<f64>,
    /// The subsets by how much they matter to the belief in any shared cause.
    columns: Columns,
    seen: Vec<OnceLock<Seen>>,
}

/// The subsets of shared causes that can be seen beside the others, as a place has them.
#[derive(Debug)]
struct Seen {
    /// The subsets of the place's own causes, each once.
    own: Vec<u16>,
    /// The weight of each.
    weights: Vec<f64>,
    /// Which of them lies in each subset of all.
    places: Vec<u16>,
}

/// Places on which the same causes bear, with evidence left out.
struct Together<'a> {
    projection: &'a Arc<Vec<u16>>,
    /// Those of their own subsets that matter.
    own: Vec<u16>,
    /// For these, how many times likelier everything else is.
    ratio: Vec<f64>,
}

/// Whether a place of a solved network is in one of some states.
#[derive(Debug)]
pub struct AtPlace<'a> {
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
        let mut projections: Vec<Arc<Vec<u16>>> = Vec::with_capacity(self.sites.len());
        for site in &self.sites {
            let known = old.next().filter(|known| known.site == *site).unwrap_or_else(|| Known {
                site: site.clone(),
                tables: SiteTables::new(site),
                left_out: Mutex::default(),
            });
            let alike = memo.sites.iter().zip(&projections).find(|(other, _)| other.tables.bits == known.tables.bits);
            let projection = alike.map_or_else(
                || Arc::new(projection(self.priors.len(), &known.tables.bits)),
                |(_, projection)| projection.clone(),
            );
            projections.push(projection);
            memo.sites.push(known);
        }
        let weights = weighed(&self.prior(), memo.sites.iter().zip(&projections));
        let columns = Columns::new(&shares(&weights, self.priors.len()));
        let seen = self.sites.iter().map(|_| OnceLock::new()).collect();
        Ok(Solution { network: self, memo, projections, weights, columns, seen })
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
    pub fn shared_without(&self, left_out: &[AtSite]) -> Vec<Belief> {
        let concerned = || left_out.iter().filter_map(|(site, out)| Some((*site, self.memo.sites.get(*site)?, out)));
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
        let mut sides = [[0.0; MAX_SHARED]; 2];
        for (subset, weight) in subsets.iter().zip(weights) {
            let [absent, present] = &mut sides;
            for (cause, (absent, present)) in absent.iter_mut().zip(present).enumerate() {
                let here = f64::from(subset >> cause & 1);
                *present += weight * here;
                *absent += weight * (1.0 - here);
            }
        }
        let [absent, present] = sides;
        let beliefs = present.into_iter().zip(absent).map(|(present, absent)| Belief { present, absent });
        beliefs.take(self.network.priors.len()).collect()
    }

    /// The weight of each state of a place, or of one that hangs on it, as far as it can be seen beside the others; not
    /// normalised, and nothing for a place that isn't there.
    pub fn states(&self, site: usize, branch: Option<usize>) -> Vec<f64> {
        let (Some(known), Some(seen)) = (self.memo.sites.get(site), self.seen_from(site)) else { return vec![] };
        known.tables.states(&known.site, branch, &|_| false, (&seen.own, &seen.weights))
    }

    /// A place as it would be had nothing been found at some others; `is` says which of its states are asked for.
    pub fn at(
        &self,
        (site, branch): (usize, Option<usize>),
        is: &dyn Fn(usize) -> bool,
        forgetting: &[usize],
    ) -> Option<AtPlace<'_>> {
        let known = self.memo.sites.get(site)?;
        let row = if forgetting.is_empty() {
            self.gather(site, &self.weights)
        } else {
            let kept = self.memo.sites.iter().zip(&self.projections).enumerate();
            let kept = kept.filter(|(number, _)| !forgetting.contains(number)).map(|(_, place)| place);
            self.gather(site, &weighed(&self.network.prior(), kept))
        };
        let mut sides = [vec![0.0; row.len()], vec![0.0; row.len()]];
        let joint = known.tables.joint(branch, &row);
        let is: Vec<bool> = (0..joint.len()).map(is).collect();
        for (joint, is) in joint.iter().zip(&is) {
            let [with, without] = &mut sides;
            plus(if *is { with } else { without }, joint);
        }
        Some(AtPlace { known, branch, is, row, sides, columns: OnceLock::new() })
    }

    /// The probability that some place is in one of some states: `found` is asked for each site, branch and state.
    pub fn anywhere(&self, found: &dyn Fn(usize, Option<usize>, usize) -> bool) -> f64 {
        let subsets = self.columns.enough(0.0);
        let mut free = pick(&self.weights, subsets);
        for (number, known) in self.memo.sites.iter().enumerate() {
            let root = || (0..known.site.states.len()).any(|state| found(number, None, state));
            let hanging = |(n, branch): (usize, &Branch)| (0..branch.len()).any(|s| found(number, Some(n), s));
            if (root() || known.site.branches.iter().enumerate().any(hanging))
                && let Some(seen) = self.seen_from(number)
            {
                let row = known.tables.free_of(&|branch, state| found(number, branch, state), &seen.own);
                times(&mut free, &pick(&row, &seen.places));
            }
        }
        1.0 - free.iter().sum::<f64>() / self.weight()
    }

    /// The places as they were worked out, for the next time.
    pub fn into_memo(self) -> Memo {
        self.memo
    }

    /// Sums weights of all subsets over everything that does not bear on a place.
    fn gather(&self, site: usize, weights: &[f64]) -> Vec<f64> {
        let (Some(known), Some(projection)) = (self.memo.sites.get(site), self.projections.get(site)) else {
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

    fn seen_from(&self, site: usize) -> Option<&Seen> {
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

impl AtPlace<'_> {
    /// The belief that it is, everything taken into account.
    pub fn belief(&self) -> Belief {
        let [present, absent] = &self.sides;
        Belief { present: present.iter().sum(), absent: absent.iter().sum() }
    }

    /// The belief that it is, had some findings of the place not been seen.
    pub fn without(&self, out: &dyn Fn(&Finding) -> bool) -> Belief {
        let Known { site, tables, .. } = self.known;
        let columns = self.columns.get_or_init(|| Columns::of_rows(&self.sides));
        let columns = columns.enough(tables.growth(site, out));
        let weights = tables.states(site, self.branch, out, (columns, &pick(&self.row, columns)));
        Belief::of_states(&weights, &|state| self.is.get(state) == Some(&true))
    }
}

impl Known {
    /// By how many doublings leaving pieces of evidence out can raise a weight at the most.
    fn growth(&self, out: &[usize]) -> f64 {
        self.left_out(out, |left_out| left_out.growth)
    }

    fn left_out<T>(&self, out: &[usize], ask: impl FnOnce(&mut LeftOut) -> T) -> T {
        // What a thread that broke off has left is whole: a figure is put in only once it is there.
        let mut known = self.left_out.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(left_out) = known.get_mut(out) {
            return ask(left_out);
        }
        let growth = self.tables.growth(&self.site, &|finding| out.contains(&finding.piece));
        let left_out = LeftOut { growth, ratio: vec![f64::NAN; self.tables.size()] };
        ask(known.entry(out.to_vec()).or_insert(left_out))
    }

    /// Multiplies into a row what the likelihood of the place changes when pieces of evidence are left out, for some of
    /// the place's own subsets.
    fn times_ratio(&self, out: &[usize], own: &[u16], row: &mut [f64]) {
        self.left_out(out, |left_out| {
            let ratio = &mut left_out.ratio;
            let unknown = |column: &&u16| ratio.get(usize::from(**column)).is_some_and(|x| x.is_nan());
            let missing: Vec<u16> = own.iter().filter(unknown).copied().collect();
            if !missing.is_empty() {
                let asked = self.tables.ratio(&self.site, &|finding| out.contains(&finding.piece), &missing);
                for (column, asked) in missing.iter().zip(asked) {
                    ratio.get_mut(usize::from(*column)).into_iter().for_each(|x| *x = asked);
                }
            }
            for column in own.iter().map(|column| usize::from(*column)) {
                if let (Some(x), Some(ratio)) = (row.get_mut(column), ratio.get(column)) {
                    *x *= ratio;
                }
            }
        });
    }
}

/// The weight of every subset of shared causes, as some of the places have it.
fn weighed<'a>(prior: &[Scaled], places: impl Iterator<Item = (&'a Known, &'a Arc<Vec<u16>>)>) -> Vec<f64> {
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
fn distinct(subsets: impl Iterator<Item = u16>) -> Vec<u16> {
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

/// For every subset of causes the largest share that it has in the belief that one of them is present, or absent.
fn shares(weights: &[f64], causes: usize) -> Vec<f64> {
    let beliefs = marginals(weights.to_vec(), causes);
    let sides: Vec<[f64; 2]> = beliefs.iter().map(|belief| [1.0 / belief.absent, 1.0 / belief.present]).collect();
    let share = |(subset, weight): (usize, &f64)| {
        let of = |(cause, sides): (usize, &[f64; 2])| sides.get(subset >> cause & 1).map_or(0.0, |side| weight * side);
        // A sum of nothing has no shares: nothing times its inverse is not a number, and passed over.
        sides.iter().enumerate().map(of).fold(if causes == 0 { 1.0 } else { 0.0 }, f64::max)
    };
    weights.iter().enumerate().map(share).collect()
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
