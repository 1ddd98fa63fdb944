//! What would be learnt: a look that nobody has taken yet, with all its answers and what would be believed after each.

use super::known::Known;
use super::observation::{Factor, Maker, Observation};
use super::seat::CauseSeat;
use super::site::{Branch, Site};
use super::solution::{Seen, Solution, distinct};
use super::table::{Indices, Table, pick, plus, times, within};

/// A look at one part.
#[derive(Debug, Clone, PartialEq)]
pub enum Query {
    /// What is there? Each observation as it is when it goes unreported. The answers are the first of them that is
    /// reported, in this order, and then that none is. Grades and zones are left out, so a real look tells somewhat
    /// more.
    What(Vec<Observation>),
    /// In which of these patterns does something lie that is known to be there? The same observation,
    /// [`super::Observed::Located`] in each of the patterns.
    Where(Vec<Observation>),
}

/// An answer and each cause together: joint weights, not normalised, from which follows what would be believed after
/// the answer.
#[derive(Debug, Clone)]
pub struct Joint {
    /// The weight of the answer itself.
    pub weight: f64,
    /// The weight of each shared cause together with the answer.
    pub shared: Vec<f64>,
    /// The weight of each state of the root together with the answer.
    pub root: Vec<f64>,
    /// The weight of each state of the branch together with the answer; empty without a branch.
    pub branch: Vec<f64>,
}

impl Query {
    fn observations(&self) -> &[Observation] {
        match self {
            Self::What(observations) | Self::Where(observations) => observations,
        }
    }
}

impl Solution<'_> {
    /// The answers to a query about a part of a place, each with what would be believed after it.
    pub fn ask(&self, CauseSeat { site: number, branch }: CauseSeat, query: &Query) -> Vec<Joint> {
        let Some(Known { site, tables: place, .. }) = self.known.sites.get(number) else { return vec![] };
        let causes = self.network.priors.len();
        let mut bits: Vec<usize> =
            query.observations().iter().flat_map(|f| f.shared.iter().map(|(by, _)| *by)).collect();
        bits.extend(&place.bits);
        bits.sort_unstable();
        bits.dedup();
        let local: Vec<usize> =
            place.bits.iter().filter_map(|bit| bits.iter().position(|other| other == bit)).collect();
        let mut indices = Indices::new(&bits);
        let tables: Vec<Table> = query.observations().iter().map(|f| Table::new(f, &mut indices)).collect();
        let subsets = self.columns.enough(0.0);
        let own: Vec<u16> = subsets.iter().map(|subset| within(*subset, &bits)).collect();
        let columns = distinct(own.iter().copied());
        let narrow: Vec<u16> = columns.iter().map(|column| within(*column, &local)).collect();
        let rest = Rest::new(&bits, &columns, Kept { subsets, weights: &pick(&self.weights, subsets), own }, causes);
        let here = &rest.here;
        let answers = query.observations().len() + usize::from(matches!(query, Query::What(_)));
        let mut rows = vec![vec![0.0; columns.len()]; answers];
        let (roots, branches) = (site.states.len(), branch.and_then(|n| site.branches.get(n)).map_or(1, Branch::len));
        let mut by_root = vec![vec![0.0; roots]; answers];
        let mut by_branch = vec![vec![0.0; if branch.is_some() { branches } else { 0 }]; answers];
        // What has nothing to do with the query leaves its answers as they are with nothing wrong.
        let plain = query.split(&tables, &columns, (None, 0), vec![1.0; columns.len()]);
        let mut apart = vec![0.0; columns.len()];
        let concerns = |links: fn(&Observation) -> &[(usize, Maker)], state: usize| {
            query.observations().iter().any(|asked| links(asked).iter().any(|(by, _)| *by == state))
        };
        let concerning: Vec<bool> = (0..roots.max(branches)).map(|state| concerns(|asked| &asked.own, state)).collect();
        for root in 0..roots {
            let Some(mut whole) = place.root.get(root).map(|chance| pick(chance, &narrow)) else { continue };
            times(&mut whole, here);
            let root_concerns = branch.is_some() && concerns(|asked| &asked.root, root);
            for state in 0..branches {
                let mut left = whole.clone();
                if let Some(branch) = branch {
                    let chances =
                        place.branches.get(branch).and_then(|chances| chances.get(root)?.get(state)?.as_ref());
                    let Some(chances) = chances else { continue };
                    times(&mut left, &pick(chances, &narrow));
                }
                let own = if branch.is_some() { state } else { root };
                let mut weigh = |n: usize, weight: f64| {
                    add(&mut by_root, n, root, weight);
                    add(&mut by_branch, n, state, weight);
                };
                if !root_concerns && concerning.get(own) != Some(&true) {
                    for (n, chance) in plain.iter().enumerate() {
                        weigh(n, left.iter().zip(chance).map(|(left, chance)| left * chance).sum());
                    }
                    plus(&mut apart, &left);
                    continue;
                }
                let chances = query.split(&tables, &columns, (branch.map(|_| root), own), left);
                for (n, (row, chance)) in rows.iter_mut().zip(&chances).enumerate() {
                    weigh(n, chance.iter().sum());
                    plus(row, chance);
                }
            }
        }
        for (row, mut chance) in rows.iter_mut().zip(plain) {
            times(&mut chance, &apart);
            plus(row, &chance);
        }
        rows.iter()
            .zip(by_root)
            .zip(by_branch)
            .map(|((row, root), branch)| Joint { weight: row.iter().sum(), shared: rest.shared(row), root, branch })
            .collect()
    }

    /// The probability that an observation, known to be there, lies in a pattern. Only the states that have to do with
    /// it are gone through singly.
    pub fn in_pattern(&self, CauseSeat { site: number, branch }: CauseSeat, observation: &Observation) -> f64 {
        let Some(Known { site, tables: place, .. }) = self.known.sites.get(number) else { return 0.0 };
        // The observation is one of the place's own, so that nothing bears on it that does not bear on the place.
        if observation.shared.iter().any(|(by, _)| !place.bits.contains(by)) {
            return 0.0;
        }
        let table = Table::new(observation, &mut Indices::new(&place.bits));
        let Some(Seen { own: columns, weights: here, .. }) = self.seen_from(number) else { return 0.0 };
        let mut sum = 0.0;
        let mut add = |root: Option<usize>, own: usize, row: &[f64]| {
            let pattern = table.pattern(factor(observation, root, own)).at(columns);
            sum += row.iter().zip(pattern).map(|(x, pattern)| x * pattern).sum::<f64>();
        };
        let concerns = |links: &[(usize, Maker)], state: usize| links.iter().any(|(by, _)| *by == state);
        for (root, row) in place.root.iter().enumerate() {
            let mut rest = pick(row, columns);
            times(&mut rest, here);
            let Some(branch) = branch else {
                add(None, root, &rest);
                continue;
            };
            let whole = rest.clone();
            let states = site.branches.get(branch).map_or(0, Branch::len);
            for state in (0..states).filter(|state| concerns(&observation.own, *state)) {
                let chances = place.branches.get(branch).and_then(|chances| chances.get(root)?.get(state)?.as_ref());
                let Some(chances) = chances else { continue };
                let mut pair = pick(chances, columns);
                times(&mut pair, &whole);
                rest.iter_mut().zip(&pair).for_each(|(rest, pair)| *rest -= pair);
                add(Some(root), state, &pair);
            }
            // No link goes out from *nothing wrong*: state 0 stands for all that have nothing to do with the
            // observation.
            add(Some(root), 0, &rest);
        }
        sum / here.iter().sum::<f64>()
    }

    /// Whether two places, with their branches, are known to be alike.
    pub fn alike(&self, one: CauseSeat, other: CauseSeat) -> bool {
        let site = |seat: CauseSeat| self.network.sites.get(seat.site);
        let branch = |site: &Site, n: Option<usize>| n.and_then(|n| site.branches.get(n)).cloned();
        match (site(one), site(other)) {
            (Some(a), Some(b)) => a == b && branch(a, one.branch) == branch(b, other.branch),
            _ => false,
        }
    }
}

impl Query {
    /// Splits a row of weights by the answers, under the states given.
    fn split(
        &self,
        tables: &[Table],
        columns: &[u16],
        (root, own): (Option<usize>, usize),
        mut row: Vec<f64>,
    ) -> Vec<Vec<f64>> {
        let asked = self.observations().iter().zip(tables);
        match self {
            Self::What(_) => {
                let mut parts = Vec::with_capacity(tables.len() + 1);
                for (observation, table) in asked {
                    let mut without = table.likelihood(factor(observation, root, own)).at(columns);
                    times(&mut without, &row);
                    for (left, without) in row.iter_mut().zip(&without) {
                        *left -= without;
                    }
                    parts.push(std::mem::replace(&mut row, without));
                }
                parts.push(row);
                parts
            }
            Self::Where(_) => asked
                .map(|(observation, table)| {
                    let mut part = table.pattern(factor(observation, root, own)).at(columns);
                    times(&mut part, &row);
                    part
                })
                .collect(),
        }
    }
}

/// What the states of a place do to an observation.
fn factor(observation: &Observation, root: Option<usize>, own: usize) -> Factor {
    let of = |links: &[(usize, Maker)], state: usize| {
        links.iter().find(|(by, _)| *by == state).map_or(Factor::NONE, |(_, maker)| observation.factor(maker))
    };
    root.map_or(Factor::NONE, |root| of(&observation.root, root)).and(of(&observation.own, own))
}

/// The subsets of all shared causes that can be seen, with their weights.
struct Kept<'a> {
    subsets: &'a [u16],
    weights: &'a [f64],
    /// The subset within each, of the causes on which the query bears.
    own: Vec<u16>,
}

/// The weights of the subsets of those shared causes on which a query bears, and how likely the others are with each.
struct Rest<'a> {
    bits: &'a [usize],
    columns: &'a [u16],
    here: Vec<f64>,
    others: Vec<(usize, Vec<f64>)>,
    causes: usize,
}

impl<'a> Rest<'a> {
    fn new(bits: &'a [usize], columns: &'a [u16], kept: Kept<'_>, causes: usize) -> Self {
        let places: Vec<usize> = kept.own.iter().map(|own| columns.binary_search(own).unwrap_or(usize::MAX)).collect();
        // Of the subsets in which all these causes are.
        let gather = |causes: u16| {
            let mut row = vec![0.0; columns.len()];
            for ((subset, weight), place) in kept.subsets.iter().zip(kept.weights).zip(&places) {
                if subset & causes == causes {
                    row.get_mut(*place).into_iter().for_each(|sum| *sum += weight);
                }
            }
            row
        };
        let here = gather(0);
        let others = (0..causes)
            .filter(|cause| !bits.contains(cause))
            .map(|cause| {
                let with = gather(1 << cause);
                let share = |(with, all): (&f64, &f64)| if *all > 0.0 { with / all } else { 0.0 };
                (cause, with.iter().zip(&here).map(share).collect())
            })
            .collect();
        Self { bits, columns, here, others, causes }
    }

    fn shared(&self, row: &[f64]) -> Vec<f64> {
        let mut all = vec![0.0; self.causes];
        for (place, bit) in self.bits.iter().enumerate() {
            let with = self.columns.iter().zip(row).filter(|(column, _)| **column >> place & 1 == 1);
            all.get_mut(*bit).into_iter().for_each(|sum| *sum = with.clone().map(|(_, weight)| weight).sum());
        }
        for (cause, share) in &self.others {
            all.get_mut(*cause)
                .into_iter()
                .for_each(|sum| *sum = row.iter().zip(share).map(|(weight, share)| weight * share).sum());
        }
        all
    }
}

fn add(rows: &mut [Vec<f64>], answer: usize, state: usize, weight: f64) {
    if let Some(sum) = rows.get_mut(answer).and_then(|row| row.get_mut(state)) {
        *sum += weight;
    }
}
