//! One place of the engine: what may be wrong there, what was found there, and the sum over all that may be wrong.

use std::rc::Rc;

use rayon::prelude::*;
use serde::Serialize;

use super::observation::{Factor, Maker, Observation};
use super::table::{Indices, Product, Table, pick, plus, times};
use crate::cause::scaled::Scaled;

/// A place and the places that hang on it: a crankpin and its rods; or a main bearing, with nothing on it.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Site {
    /// The prior chance of each state; state 0 is *nothing wrong*. They sum to 1.
    pub states: Vec<f64>,
    /// What was found at the place itself.
    pub observations: Vec<Observation>,
    /// The places that hang on it. Their observations may have to do with its state and with their own.
    pub branches: Vec<Branch>,
}

/// A place that hangs on another.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Branch {
    /// For each state of the root, the prior chance of each state; state 0 is *nothing wrong*. Each row sums to 1. A
    /// state with chance zero can't be together with that state of the root.
    pub states: Vec<Vec<f64>>,
    /// What was found there.
    pub observations: Vec<Observation>,
}

impl Site {
    /// All observations of the place and its branches.
    pub fn all_observations(&self) -> impl Iterator<Item = &Observation> {
        self.observations.iter().chain(self.branches.iter().flat_map(|branch| &branch.observations))
    }
}

impl Branch {
    /// How many states it has.
    pub fn len(&self) -> usize {
        self.states.first().map_or(0, Vec::len)
    }

    /// Whether it has none.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }
}

/// Numbers for every subset of the shared causes that bear on a place.
pub(super) type Row = Vec<f64>;

/// A place worked out over the subsets of the shared causes that bear on it.
#[derive(Debug)]
pub(super) struct SiteTables {
    /// The shared causes that bear on it, ascending.
    pub(super) bits: Vec<usize>,
    /// The likelihood of everything that was found.
    pub(super) message: Vec<Scaled>,
    /// The chance of each state of the root, given everything that was found.
    pub(super) root: Vec<Row>,
    /// For each branch, each state of the root and each state that can go with it: its chance, given that of the root.
    pub(super) branches: Vec<Vec<Vec<Option<Row>>>>,
    observations: Vec<Table>,
    hanging: Vec<Vec<Table>>,
}

/// By what the chances of states change when some observations are left out, at some of the subsets; none where nothing
/// does.
#[derive(Debug)]
struct Without {
    /// Of each state of the root, its branches' changes included.
    by_root: Vec<Option<Row>>,
    /// Of each state of each branch with each state of the root.
    by_pair: Vec<Vec<Vec<Change>>>,
}

/// By what something changes, at some of the subsets; none where it stays as it is. Many states change by the same.
type Change = Option<Rc<Row>>;

/// Which observations are left out.
pub(super) type Out<'a> = &'a dyn Fn(&Observation) -> bool;

const EVERYTHING: Out<'static> = &|_| true;

impl SiteTables {
    pub(super) fn new(site: &Site) -> Self {
        let mut bits: Vec<usize> =
            site.all_observations().flat_map(|observation| observation.shared.iter().map(|(by, _)| *by)).collect();
        bits.sort_unstable();
        bits.dedup();
        let size = 1 << bits.len();
        let mut indices = Indices::new(&bits);
        let mut tables = |observations: &[Observation]| {
            observations.iter().map(|observation| Table::new(observation, &mut indices)).collect()
        };
        let observations: Vec<Table> = tables(&site.observations);
        let hanging: Vec<Vec<Table>> = site.branches.iter().map(|branch| tables(&branch.observations)).collect();
        let mut root: Vec<Row> = site
            .states
            .iter()
            .enumerate()
            .map(|(state, prior)| {
                let mut row = vec![*prior; size];
                product(&of(&site.observations, &observations, EVERYTHING), own(state)).times_into(&mut row);
                row
            })
            .collect();
        let mut branches = Vec::with_capacity(hanging.len());
        for (branch, tables) in site.branches.iter().zip(&hanging) {
            let pairs: Vec<Vec<Option<Row>>> =
                root.iter_mut().zip(pairs(size, branch, tables)).map(|(row, pairs)| shares(row, pairs)).collect();
            branches.push(pairs);
        }
        let mut total = vec![0.0; size];
        root.iter().for_each(|row| plus(&mut total, row));
        for row in &mut root {
            row.iter_mut().zip(&total).for_each(|(x, total)| *x /= total);
        }
        let mut message: Vec<Scaled> = base(size, observations.iter().chain(hanging.iter().flatten()));
        for (message, total) in message.iter_mut().zip(total) {
            *message = message.times(total);
        }
        Self { bits, message, root, branches, observations, hanging }
    }

    pub(super) fn size(&self) -> usize {
        1 << self.bits.len()
    }

    /// By how many doublings one weight can gain on another, at the most, when some observations are left out.
    pub(super) fn growth(&self, site: &Site, out: Out<'_>) -> f64 {
        self.left_out(site, out).map(|table| table.growth).sum()
    }

    /// By what the likelihood of everything that was found changes when some observations are left out, at some of the
    /// subsets.
    pub(super) fn ratio(&self, site: &Site, out: Out<'_>, columns: &[u16]) -> Row {
        let without = self.without(site, out, columns);
        let mut ratio = vec![1.0; columns.len()];
        for (chance, change) in self.root.iter().zip(&without.by_root) {
            if let Some(change) = change {
                add_change(&mut ratio, &pick(chance, columns), change);
            }
        }
        times(&mut ratio, &self.likelier(site, out, columns));
        ratio
    }

    /// The weight of each state of the root, or of a branch whatever the state of the root, with some observations left
    /// out, where some of the subsets have the weights given.
    pub(super) fn states(
        &self,
        site: &Site,
        branch: Option<usize>,
        out: Out<'_>,
        (columns, weights): (&[u16], &[f64]),
    ) -> Vec<f64> {
        let without = self.without(site, out, columns);
        let mut left = weights.to_vec();
        times(&mut left, &self.likelier(site, out, columns));
        let by_root = self.root.iter().zip(&without.by_root).map(|(chance, change)| {
            let mut row = pick(chance, columns);
            times(&mut row, &left);
            change.iter().for_each(|change| times(&mut row, change));
            row
        });
        let Some(branch) = branch else { return by_root.map(|row| row.iter().sum()).collect() };
        let (Some(chances), Some(changes)) = (self.branches.get(branch), without.by_pair.get(branch)) else {
            return vec![];
        };
        let mut sums = vec![0.0; chances.first().map_or(0, Vec::len)];
        for ((mut here, chances), changes) in by_root.zip(chances).zip(changes) {
            // What the branch did to the root on the whole gives way to what each state of it does.
            if let Some(mean) = mean_change(columns, chances, changes) {
                here.iter_mut().zip(mean).for_each(|(x, mean)| *x /= mean);
            }
            for ((sum, chance), change) in sums.iter_mut().zip(chances).zip(changes) {
                let Some(chance) = chance else { continue };
                let mut row = pick(chance, columns);
                change.iter().for_each(|change| times(&mut row, change));
                *sum += row.iter().zip(&here).map(|(chance, here)| chance * here).sum::<f64>();
            }
        }
        sums
    }

    fn without(&self, site: &Site, out: Out<'_>, columns: &[u16]) -> Without {
        let change = |product: Product| (!product.is_one()).then(|| product.inverse().at(columns));
        let gone = of(&site.observations, &self.observations, out);
        let mut by_root: Vec<Option<Row>> =
            (0..self.root.len()).map(|state| change(product(&gone, own(state)))).collect();
        let mut by_pair = Vec::with_capacity(self.hanging.len());
        for ((branch, tables), chances) in site.branches.iter().zip(&self.hanging).zip(&self.branches) {
            // What has nothing to do with the root is the same whatever the root's state.
            let (free, tied): (Vec<_>, Vec<_>) = of(&branch.observations, tables, out)
                .into_iter()
                .partition(|(observation, _)| observation.root.is_empty());
            let by_state = |gone: &[(&Observation, &Table)]| -> Vec<Change> {
                (0..branch.len()).map(|state| change(product(gone, own(state))).map(Rc::new)).collect()
            };
            let (alone, of_states) = (by_state(&free), by_state(&tied));
            let pairs: Vec<Vec<Change>> = chances
                .iter()
                .enumerate()
                .map(|(root, chances)| {
                    let of_root: Change = change(product(&tied, by(root))).map(Rc::new);
                    let of_pair = |(state, chance): (usize, &Option<Row>)| {
                        chance.as_ref()?;
                        let of_state = of_states.get(state).and_then(Option::as_ref);
                        let tied = match (&of_root, of_state) {
                            (Some(_), Some(_)) => change(product(&tied, both(root, state))).map(Rc::new),
                            (one, other) => one.as_ref().or(other).cloned(),
                        };
                        match (tied, alone.get(state).and_then(Option::as_ref)) {
                            (Some(tied), Some(alone)) => {
                                Some(Rc::new(tied.iter().zip(&**alone).map(|(tied, alone)| tied * alone).collect()))
                            }
                            (tied, alone) => tied.or(alone.cloned()),
                        }
                    };
                    chances.iter().enumerate().map(of_pair).collect()
                })
                .collect();
            for ((root, chances), pairs) in by_root.iter_mut().zip(chances).zip(&pairs) {
                if let Some(mean) = mean_change(columns, chances, pairs) {
                    match root {
                        Some(row) => times(row, &mean),
                        None => *root = Some(mean),
                    }
                }
            }
            by_pair.push(pairs);
        }
        Without { by_root, by_pair }
    }

    /// How much likelier all is with some observations left out and nothing wrong at the place.
    fn likelier(&self, site: &Site, out: Out<'_>, columns: &[u16]) -> Row {
        let gone = self.left_out(site, out).fold(Product::default(), |all, table| all.and(table.base().inverse()));
        gone.at(columns)
    }

    fn left_out(&self, site: &Site, out: Out<'_>) -> impl Iterator<Item = &Table> {
        let tables = self.observations.iter().chain(self.hanging.iter().flatten());
        site.all_observations().zip(tables).filter(|(observation, _)| out(observation)).map(|(_, table)| table)
    }

    /// The weight of each state that matters to the root or a branch, for every subset, where those have the weights
    /// given.
    pub(super) fn joint(&self, branch: Option<usize>, weights: &[f64]) -> Vec<Row> {
        let with = |by: &[Row]| -> Row {
            let mut row = weights.to_vec();
            by.iter().for_each(|by| times(&mut row, by));
            row
        };
        let Some(pairs) = branch.and_then(|branch| self.branches.get(branch)) else {
            return self.root.iter().map(|row| with(std::slice::from_ref(row))).collect();
        };
        let mut sums = vec![vec![0.0; weights.len()]; pairs.first().map_or(0, Vec::len)];
        for (root, pairs) in self.root.iter().zip(pairs) {
            let root = with(std::slice::from_ref(root));
            for (sum, pair) in sums.iter_mut().zip(pairs) {
                let terms = root.iter().zip(pair.iter().flatten());
                sum.iter_mut().zip(terms).for_each(|(sum, (root, pair))| *sum += root * pair);
            }
        }
        sums
    }

    /// The chance that neither the root nor any branch is in one of some states, at some of the subsets.
    pub(super) fn free_of(&self, found: &dyn Fn(Option<usize>, usize) -> bool, columns: &[u16]) -> Row {
        let of_branch = |(number, branch): (usize, &Vec<Vec<Option<Row>>>)| -> Vec<usize> {
            let states = branch.first().map_or(0, Vec::len);
            (0..states).filter(|state| found(Some(number), *state)).collect()
        };
        let asked: Vec<Vec<usize>> = self.branches.iter().enumerate().map(of_branch).collect();
        let mut free = vec![1.0; columns.len()];
        for (root, row) in self.root.iter().enumerate() {
            // What is left where no branch is in one of them; nothing where the root itself is.
            let mut left = found(None, root).then(|| vec![0.0; columns.len()]);
            for (branch, states) in self.branches.iter().zip(&asked) {
                let chances = branch.get(root).into_iter().flat_map(|chances| states.iter().map(|n| chances.get(*n)));
                let mut chances = chances.flatten().flatten().peekable();
                if chances.peek().is_none() {
                    continue;
                }
                let mut none = vec![1.0; columns.len()];
                for chance in chances {
                    none.iter_mut().zip(pick(chance, columns)).for_each(|(none, chance)| *none -= chance);
                }
                match &mut left {
                    Some(left) => times(left, &none),
                    None => left = Some(none),
                }
            }
            if let Some(left) = left {
                let gone = pick(row, columns).into_iter().zip(left).map(|(chance, left)| chance * (1.0 - left));
                free.iter_mut().zip(gone).for_each(|(free, gone)| *free -= gone);
            }
        }
        free.iter_mut().for_each(|free| *free = free.max(0.0));
        free
    }
}

/// The likelihood of all observations with nothing wrong at the place.
fn base<'a>(size: usize, tables: impl Iterator<Item = &'a Table>) -> Vec<Scaled> {
    let tables: Vec<&Table> = tables.collect();
    let mut base = vec![Scaled::ONE; size];
    // No likelihood of a single observation is smaller than 2^-64, so a few at a time need no care.
    for few in tables.chunks(7) {
        let mut row = vec![1.0; size];
        few.iter().fold(Product::default(), |all, table| all.and(table.base())).times_into(&mut row);
        for (base, factor) in base.iter_mut().zip(row) {
            *base = base.times(factor);
        }
    }
    base
}

/// Each state of a branch with each state of the root, with its prior: how many times likelier everything found at the
/// branch is than with nothing wrong.
fn pairs(size: usize, branch: &Branch, tables: &[Table]) -> Vec<Vec<Option<Row>>> {
    let observations = of(&branch.observations, tables, EVERYTHING);
    let row = |product: Product| {
        let mut row = vec![1.0; size];
        product.times_into(&mut row);
        row
    };
    let alone: Vec<Row> = (0..branch.len()).map(|state| row(product(&observations, own(state)))).collect();
    let of_root = |(root, priors): (usize, &Vec<f64>)| -> Vec<Option<Row>> {
        let by_root = row(product(&observations, by(root)));
        let pair = |(state, (prior, alone)): (usize, (&f64, &Row))| {
            if *prior == 0.0 {
                return None;
            }
            let mut row: Row = by_root.iter().zip(alone).map(|(root, alone)| prior * root * alone).collect();
            for (observation, table) in &observations {
                if let (Some(one), Some(other)) = (by(root)(observation), own(state)(observation)) {
                    table.interaction(one, other).times_into(&mut row);
                }
            }
            Some(row)
        };
        priors.iter().zip(&alone).enumerate().map(pair).collect()
    };
    branch.states.par_iter().enumerate().map(of_root).collect()
}

/// Takes the sum of the pairs over to the root and leaves the share of each.
fn shares(root: &mut [f64], mut pairs: Vec<Option<Row>>) -> Vec<Option<Row>> {
    let mut sum = vec![0.0; root.len()];
    pairs.iter().flatten().for_each(|row| plus(&mut sum, row));
    times(root, &sum);
    for row in pairs.iter_mut().flatten() {
        row.iter_mut().zip(&sum).for_each(|(x, sum)| *x /= sum);
    }
    pairs
}

/// By what a branch's changes change a state of the root, at some of the subsets; none if nothing changes.
fn mean_change(columns: &[u16], chances: &[Option<Row>], changes: &[Change]) -> Option<Row> {
    if changes.iter().all(Option::is_none) {
        return None;
    }
    let mut mean = vec![1.0; columns.len()];
    for (chance, change) in chances.iter().zip(changes) {
        let Some(chance) = chance else { continue };
        if let Some(change) = change {
            add_change(&mut mean, &pick(chance, columns), change);
        }
    }
    Some(mean)
}

/// Adds what a state of some chance changes to the mean of all states.
fn add_change(mean: &mut [f64], chance: &[f64], change: &[f64]) {
    for (x, (chance, change)) in mean.iter_mut().zip(chance.iter().zip(change)) {
        *x += chance * (change - 1.0);
    }
}

/// What a state of the observation's own place does to it; none if it has nothing to do with it.
fn own(state: usize) -> impl Fn(&Observation) -> Option<Factor> {
    move |observation| factor(observation, &observation.own, state)
}

/// What a state of the root does to it.
fn by(root: usize) -> impl Fn(&Observation) -> Option<Factor> {
    move |observation| factor(observation, &observation.root, root)
}

/// What both do to it.
fn both(root: usize, state: usize) -> impl Fn(&Observation) -> Option<Factor> {
    move |observation| match (by(root)(observation), own(state)(observation)) {
        (Some(one), Some(other)) => Some(one.and(other)),
        (one, other) => one.or(other),
    }
}

fn factor(observation: &Observation, links: &[(usize, Maker)], state: usize) -> Option<Factor> {
    links.iter().find(|(by, _)| *by == state).map(|(_, maker)| observation.factor(maker))
}

/// How many times likelier observations are under some states than with nothing wrong.
fn product(observations: &[(&Observation, &Table)], does: impl Fn(&Observation) -> Option<Factor>) -> Product {
    observations
        .iter()
        .filter_map(|(observation, table)| Some(table.ratio(does(observation)?)))
        .fold(Product::default(), Product::and)
}

/// Observations with their tables, as far as asked for.
fn of<'a>(observations: &'a [Observation], tables: &'a [Table], which: Out<'_>) -> Vec<(&'a Observation, &'a Table)> {
    observations.iter().zip(tables).filter(|(observation, _)| which(observation)).collect()
}
