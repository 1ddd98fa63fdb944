//! What would be learnt: a look that nobody has taken yet, with all its answers and what would be believed after each.

use super::finding::{Factor, Finding};
use super::site::Site;
use super::table::{Indices, Table, pick, plus, projection, times};
use super::{Known, Seen, Solution, dot, marginals};

/// A look at one part.
#[derive(Debug, Clone, PartialEq)]
pub enum Question {
    /// What is there? Each finding as it is when it goes unreported. The answers are the first of them that is reported,
    /// in this order, and then that none is. Grades and zones are left out, so a real look tells somewhat more.
    What(Vec<Finding>),
    /// In which of these patterns does something lie that is known to be there? The same finding, [`super::Observed::Located`]
    /// in each of the patterns.
    Where(Vec<Finding>),
}

/// An answer with what would be believed after it; weights that are not normalised.
#[derive(Debug, Clone)]
pub struct Answer {
    /// The weight of the answer itself.
    pub weight: f64,
    /// The weight of each shared cause together with the answer.
    pub shared: Vec<f64>,
    /// The weight of each state of the root together with the answer.
    pub root: Vec<f64>,
    /// The weight of each state of the branch together with the answer; empty without a branch.
    pub branch: Vec<f64>,
}

impl Question {
    fn findings(&self) -> &[Finding] {
        match self {
            Self::What(findings) | Self::Where(findings) => findings,
        }
    }
}

impl Solution<'_> {
    /// The answers to a question about a part of a place, and what would be believed after each.
    pub fn ask(&self, number: usize, branch: Option<usize>, question: &Question) -> Vec<Answer> {
        let Some(Known { site, tables: place, .. }) = self.memo.sites.get(number) else { return vec![] };
        let causes = self.network.priors.len();
        let mut bits: Vec<usize> =
            question.findings().iter().flat_map(|f| f.shared.iter().map(|(by, _)| *by)).collect();
        bits.extend(&place.bits);
        bits.sort_unstable();
        bits.dedup();
        let local: Vec<usize> =
            place.bits.iter().filter_map(|bit| bits.iter().position(|other| other == bit)).collect();
        let narrow = projection(bits.len(), &local);
        let wide = projection(causes, &bits);
        let mut indices = Indices::new(&bits);
        let tables: Vec<Table> = question.findings().iter().map(|f| Table::new(f, &mut indices)).collect();
        let size = 1usize << bits.len();

        let weights = &self.weights;
        let here = gather(weights, &wide, size);
        let answers = question.findings().len() + usize::from(matches!(question, Question::What(_)));
        let mut rows = vec![vec![0.0; size]; answers];
        let (roots, branches) =
            (site.states.len(), branch.and_then(|n| site.branches.get(n)).map_or(1, super::Branch::len));
        let mut by_root = vec![vec![0.0; roots]; answers];
        let mut by_branch = vec![vec![0.0; if branch.is_some() { branches } else { 0 }]; answers];
        for root in 0..roots {
            for state in 0..branches {
                let pair = match branch {
                    None => place.root.get(root).cloned(),
                    Some(branch) => place.pair_row(branch, root, state),
                };
                let Some(pair) = pair else { continue };
                let mut left: Vec<f64> = here
                    .iter()
                    .zip(&narrow)
                    .map(|(weight, index)| weight * pair.get(usize::from(*index)).copied().unwrap_or(0.0))
                    .collect();
                let own = if branch.is_some() { state } else { root };
                let chances = question.split(&tables, (branch.map(|_| root), own), &mut left);
                for (n, chance) in chances.iter().enumerate() {
                    let weight: f64 = chance.iter().sum();
                    if let Some(row) = rows.get_mut(n) {
                        plus(row, chance);
                    }
                    add(&mut by_root, n, root, weight);
                    add(&mut by_branch, n, state, weight);
                }
            }
        }
        let rest = Rest::new(weights, &wide, &bits, &here, causes);
        rows.iter()
            .zip(by_root)
            .zip(by_branch)
            .map(|((row, root), branch)| Answer { weight: row.iter().sum(), shared: rest.shared(row), root, branch })
            .collect()
    }

    /// The probability that a finding, known to be there, lies in a pattern. Only the states that have to do with it are
    /// gone through singly.
    pub fn in_pattern(&self, (number, branch): (usize, Option<usize>), finding: &Finding) -> f64 {
        let Some(Known { site, tables: place, .. }) = self.memo.sites.get(number) else { return 0.0 };
        // The finding is one of the place's own, so that nothing bears on it that does not bear on the place.
        if finding.shared.iter().any(|(by, _)| !place.bits.contains(by)) {
            return 0.0;
        }
        let table = Table::new(finding, &mut Indices::new(&place.bits));
        let Some(Seen { own: columns, weights: here, .. }) = self.seen_from(number) else { return 0.0 };
        let mut sum = 0.0;
        let mut add = |root: Option<usize>, own: usize, row: &[f64]| {
            let pattern = table.pattern(factor(finding, root, own)).at(columns);
            sum += row.iter().zip(pattern).map(|(x, pattern)| x * pattern).sum::<f64>();
        };
        let concerns = |links: &[(usize, super::Maker)], state: usize| links.iter().any(|(by, _)| *by == state);
        for (root, row) in place.root.iter().enumerate() {
            let mut rest = pick(row, columns);
            times(&mut rest, here);
            let Some(branch) = branch else {
                add(None, root, &rest);
                continue;
            };
            let whole = rest.clone();
            let states = site.branches.get(branch).map_or(0, super::Branch::len);
            for state in (0..states).filter(|state| concerns(&finding.own, *state)) {
                let chances = place.branches.get(branch).and_then(|chances| chances.get(root)?.get(state)?.as_ref());
                let Some(chances) = chances else { continue };
                let mut pair = pick(chances, columns);
                times(&mut pair, &whole);
                rest.iter_mut().zip(&pair).for_each(|(rest, pair)| *rest -= pair);
                add(Some(root), state, &pair);
            }
            // No link goes out from *nothing wrong*: state 0 stands for all that have nothing to do with the finding.
            add(Some(root), 0, &rest);
        }
        sum / here.iter().sum::<f64>()
    }

    /// Whether two places, with their branches, are known to be alike.
    pub fn alike(&self, one: (usize, Option<usize>), other: (usize, Option<usize>)) -> bool {
        let site = |seat: (usize, Option<usize>)| self.network.sites.get(seat.0);
        let branch = |site: &Site, n: Option<usize>| n.and_then(|n| site.branches.get(n)).cloned();
        match (site(one), site(other)) {
            (Some(a), Some(b)) => a == b && branch(a, one.1) == branch(b, other.1),
            _ => false,
        }
    }
}

impl Question {
    /// Splits a row of weights by the answers, under the states given.
    fn split(&self, tables: &[Table], (root, own): (Option<usize>, usize), row: &mut Vec<f64>) -> Vec<Vec<f64>> {
        let asked = self.findings().iter().zip(tables);
        match self {
            Self::What(_) => {
                let mut parts = Vec::with_capacity(tables.len() + 1);
                for (finding, table) in asked {
                    let mut without = row.clone();
                    table.likelihood(factor(finding, root, own)).times_into(&mut without);
                    for (left, without) in row.iter_mut().zip(&without) {
                        *left -= without;
                    }
                    parts.push(std::mem::replace(row, without));
                }
                parts.push(std::mem::take(row));
                parts
            }
            Self::Where(_) => asked
                .map(|(finding, table)| {
                    let mut part = row.clone();
                    table.pattern(factor(finding, root, own)).times_into(&mut part);
                    part
                })
                .collect(),
        }
    }
}

/// What the states of a place do to a finding.
fn factor(finding: &Finding, root: Option<usize>, own: usize) -> Factor {
    let of = |links: &[(usize, super::Maker)], state: usize| {
        links.iter().find(|(by, _)| *by == state).map_or(Factor::NONE, |(_, maker)| finding.factor(maker))
    };
    root.map_or(Factor::NONE, |root| of(&finding.root, root)).and(of(&finding.own, own))
}

/// The shared causes that do not bear on a place: how likely each is for every subset of those that do.
struct Rest<'a> {
    bits: &'a [usize],
    others: Vec<(usize, Vec<f64>)>,
    causes: usize,
}

impl<'a> Rest<'a> {
    fn new(weights: &[f64], wide: &[u16], bits: &'a [usize], here: &[f64], causes: usize) -> Self {
        let others = (0..causes)
            .filter(|cause| !bits.contains(cause))
            .map(|cause| {
                let with: Vec<f64> = weights
                    .iter()
                    .enumerate()
                    .map(|(subset, weight)| if subset >> cause & 1 == 1 { *weight } else { 0.0 })
                    .collect();
                let with = gather(&with, wide, here.len());
                let share = |(with, all): (&f64, &f64)| if *all > 0.0 { with / all } else { 0.0 };
                (cause, with.iter().zip(here).map(share).collect())
            })
            .collect();
        Self { bits, others, causes }
    }

    fn shared(&self, row: &[f64]) -> Vec<f64> {
        let own = marginals(row.to_vec(), self.bits.len());
        let mut all = vec![0.0; self.causes];
        for (bit, belief) in self.bits.iter().zip(own) {
            if let Some(weight) = all.get_mut(*bit) {
                *weight = belief.present;
            }
        }
        for (cause, share) in &self.others {
            if let Some(weight) = all.get_mut(*cause) {
                *weight = dot(row, share);
            }
        }
        all
    }
}

fn gather(weights: &[f64], wide: &[u16], size: usize) -> Vec<f64> {
    let mut row = vec![0.0; size];
    for (weight, index) in weights.iter().zip(wide) {
        if let Some(sum) = row.get_mut(usize::from(*index)) {
            *sum += weight;
        }
    }
    row
}

fn add(rows: &mut [Vec<f64>], answer: usize, state: usize, weight: f64) {
    if let Some(sum) = rows.get_mut(answer).and_then(|row| row.get_mut(state)) {
        *sum += weight;
    }
}
