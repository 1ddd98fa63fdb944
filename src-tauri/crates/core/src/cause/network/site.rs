//! One place of the engine: what may be wrong there, what was found there, and the sum over all that may be wrong.

use super::finding::{Factor, Finding};
use super::table::{Table, plus, times};
use crate::cause::scaled::Scaled;

/// A place and the places that hang on it: a crankpin and its rods; or a main bearing, with nothing on it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Site {
    /// The prior chance of each state; state 0 is *nothing wrong*. They sum to 1.
    pub states: Vec<f64>,
    /// What was found at the place itself.
    pub findings: Vec<Finding>,
    /// The places that hang on it. Their findings may have to do with its state and with their own.
    pub branches: Vec<Branch>,
}

/// A place that hangs on another.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Branch {
    /// For each state of the root, the prior chance of each state; state 0 is *nothing wrong*. Each row sums to 1. A
    /// state with chance nought can't be together with that state of the root.
    pub states: Vec<Vec<f64>>,
    /// What was found there.
    pub findings: Vec<Finding>,
}

impl Site {
    /// All findings of the place and its branches.
    pub fn all_findings(&self) -> impl Iterator<Item = &Finding> {
        self.findings.iter().chain(self.branches.iter().flat_map(|branch| &branch.findings))
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
    findings: Vec<Table>,
    hanging: Vec<Vec<Table>>,
}

/// By what chances change when some findings are left out.
#[derive(Debug)]
pub(super) struct Without {
    /// Of everything that was found.
    pub(super) ratio: Row,
    /// The same as far as the states of the place are concerned.
    pub(super) mean: Row,
    /// Of each state of the root; none where nothing changes.
    by_root: Vec<Option<Row>>,
    /// Of each state of each branch with each state of the root; none where nothing changes.
    by_pair: Vec<Vec<Vec<Option<Row>>>>,
}

/// Which findings are left out.
pub(super) type Out<'a> = &'a dyn Fn(&Finding) -> bool;

const EVERYTHING: Out<'static> = &|_| true;

impl SiteTables {
    pub(super) fn new(site: &Site) -> Self {
        let mut bits: Vec<usize> =
            site.all_findings().flat_map(|finding| finding.shared.iter().map(|(by, _)| *by)).collect();
        bits.sort_unstable();
        bits.dedup();
        let size = 1 << bits.len();
        let tables = |findings: &[Finding]| findings.iter().map(|finding| Table::new(finding, &bits)).collect();
        let findings: Vec<Table> = tables(&site.findings);
        let hanging: Vec<Vec<Table>> = site.branches.iter().map(|branch| tables(&branch.findings)).collect();
        let mut root: Vec<Row> = site
            .states
            .iter()
            .enumerate()
            .map(|(state, prior)| {
                let mut row = vec![*prior; size];
                let alone = product(size, &of(&site.findings, &findings, EVERYTHING), own(state));
                alone.iter().for_each(|alone| times(&mut row, alone));
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
        let mut message: Vec<Scaled> = base(size, findings.iter().chain(hanging.iter().flatten()));
        for (message, total) in message.iter_mut().zip(total) {
            *message = message.times(total);
        }
        Self { bits, message, root, branches, findings, hanging }
    }

    pub(super) fn size(&self) -> usize {
        1 << self.bits.len()
    }

    /// By what chances change when some findings are left out. What a finding contributed is divided out again.
    pub(super) fn without(&self, site: &Site, out: Out<'_>) -> Without {
        let size = self.size();
        let inverse = |row: Option<Row>| {
            row.map(|mut row| {
                row.iter_mut().for_each(|x| *x = 1.0 / *x);
                row
            })
        };
        let gone = of(&site.findings, &self.findings, out);
        let mut by_root: Vec<Option<Row>> =
            (0..self.root.len()).map(|state| inverse(product(size, &gone, own(state)))).collect();
        let mut by_pair = Vec::with_capacity(self.hanging.len());
        for ((branch, tables), chances) in site.branches.iter().zip(&self.hanging).zip(&self.branches) {
            let gone = of(&branch.findings, tables, out);
            let pairs: Vec<Vec<Option<Row>>> = chances
                .iter()
                .enumerate()
                .map(|(root, chances)| {
                    let gone = |(state, chance): (usize, &Option<Row>)| {
                        chance.as_ref()?;
                        inverse(product(size, &gone, both(root, state)))
                    };
                    chances.iter().enumerate().map(gone).collect()
                })
                .collect();
            for ((root, chances), pairs) in by_root.iter_mut().zip(chances).zip(&pairs) {
                if let Some(mean) = mean_change(size, chances, pairs) {
                    match root {
                        Some(row) => times(row, &mean),
                        None => *root = Some(mean),
                    }
                }
            }
            by_pair.push(pairs);
        }
        let mut mean = vec![1.0; size];
        for (chance, change) in self.root.iter().zip(&by_root) {
            let Some(change) = change else { continue };
            for (x, (chance, change)) in mean.iter_mut().zip(chance.iter().zip(change)) {
                *x += chance * (change - 1.0);
            }
        }
        let mut gone = vec![1.0; size];
        let tables = self.findings.iter().chain(self.hanging.iter().flatten());
        for (_, table) in site.all_findings().zip(tables).filter(|(finding, _)| out(finding)) {
            times(&mut gone, &table.base);
        }
        let ratio = mean.iter().zip(gone).map(|(mean, gone)| mean / gone).collect();
        Without { ratio, mean, by_root, by_pair }
    }

    /// The chance of a state of the root; once some findings are left out, as a multiple of the chance of everything
    /// that was found.
    pub(super) fn root_row(&self, state: usize, without: Option<&Without>) -> Row {
        let mut row = self.root.get(state).cloned().unwrap_or_default();
        if let Some(Some(change)) = without.and_then(|without| without.by_root.get(state)) {
            times(&mut row, change);
        }
        row
    }

    /// The chance of a state of the root together with one of a branch; none if they can't be together.
    pub(super) fn pair_row(&self, branch: usize, root: usize, state: usize) -> Option<Row> {
        let mut row = self.root.get(root)?.clone();
        times(&mut row, self.branches.get(branch)?.get(root)?.get(state)?.as_ref()?);
        Some(row)
    }

    /// The weight of each state of a branch, whatever the state of the root, where the subsets have the weights given.
    pub(super) fn branch_weights(&self, branch: usize, row: &[f64], without: Option<&Without>) -> Vec<f64> {
        let Some(chances) = self.branches.get(branch) else { return vec![] };
        let mut weights = vec![0.0; chances.first().map_or(0, Vec::len)];
        let nothing = vec![];
        for (root, chances) in chances.iter().enumerate() {
            let mut here = self.root_row(root, without);
            times(&mut here, row);
            let pairs = without.and_then(|without| without.by_pair.get(branch)?.get(root)).unwrap_or(&nothing);
            // What the branch did to the root on the whole gives way to what each state of it does.
            if let Some(mean) = mean_change(here.len(), chances, pairs) {
                here.iter_mut().zip(mean).for_each(|(x, mean)| *x /= mean);
            }
            for (state, (weight, chance)) in weights.iter_mut().zip(chances).enumerate() {
                let Some(chance) = chance else { continue };
                let terms = here.iter().zip(chance);
                *weight += match pairs.get(state) {
                    Some(Some(change)) => terms.zip(change).map(|((x, chance), change)| x * chance * change).sum(),
                    _ => terms.map(|(x, chance)| x * chance).sum::<f64>(),
                };
            }
        }
        weights
    }

    /// The chance that neither the root nor any branch is in one of some states.
    pub(super) fn free_of(&self, found: &dyn Fn(Option<usize>, usize) -> bool) -> Row {
        let mut free = vec![0.0; self.size()];
        for (root, row) in self.root.iter().enumerate().filter(|(root, _)| !found(None, *root)) {
            let mut row = row.clone();
            for (number, branch) in self.branches.iter().enumerate() {
                let mut left = vec![1.0; self.size()];
                let states = branch.get(root).map(Vec::as_slice).unwrap_or_default().iter().enumerate();
                for (_, chance) in states.filter(|(state, _)| found(Some(number), *state)) {
                    left.iter_mut().zip(chance.iter().flatten()).for_each(|(left, chance)| *left -= chance);
                }
                times(&mut row, &left);
            }
            plus(&mut free, &row);
        }
        free
    }
}

/// The likelihood of all findings with nothing wrong at the place.
fn base<'a>(size: usize, tables: impl Iterator<Item = &'a Table>) -> Vec<Scaled> {
    let tables: Vec<&Table> = tables.collect();
    let mut base = vec![Scaled::ONE; size];
    // No likelihood of a single finding is smaller than 2^-64, so a few at a time need no care.
    for few in tables.chunks(7) {
        let mut product = vec![1.0; size];
        few.iter().for_each(|table| times(&mut product, &table.base));
        for (base, factor) in base.iter_mut().zip(product) {
            *base = base.times(factor);
        }
    }
    base
}

/// Each state of a branch with each state of the root, with its prior: how many times likelier everything found at the
/// branch is than with nothing wrong.
fn pairs(size: usize, branch: &Branch, tables: &[Table]) -> Vec<Vec<Option<Row>>> {
    let findings = of(&branch.findings, tables, EVERYTHING);
    let alone: Vec<Option<Row>> = (0..branch.len()).map(|state| product(size, &findings, own(state))).collect();
    let of_root = |(root, priors): (usize, &Vec<f64>)| {
        let by_root = product(size, &findings, by(root));
        let pair = |(state, (prior, alone)): (usize, (&f64, &Option<Row>))| {
            if *prior == 0.0 {
                return None;
            }
            let mut row = vec![*prior; size];
            [&by_root, alone].into_iter().flatten().for_each(|factor| times(&mut row, factor));
            for (finding, table) in &findings {
                if let (Some(one), Some(other)) = (by(root)(finding), own(state)(finding)) {
                    table.times_interaction(one, other, &mut row);
                }
            }
            Some(row)
        };
        priors.iter().zip(&alone).enumerate().map(pair).collect()
    };
    branch.states.iter().enumerate().map(of_root).collect()
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

/// By what a branch's changes change a state of the root; none if nothing changes.
fn mean_change(size: usize, chances: &[Option<Row>], changes: &[Option<Row>]) -> Option<Row> {
    if changes.iter().all(Option::is_none) {
        return None;
    }
    let mut mean = vec![1.0; size];
    for (chance, change) in chances.iter().zip(changes) {
        let (Some(chance), Some(change)) = (chance, change) else { continue };
        for (x, (chance, change)) in mean.iter_mut().zip(chance.iter().zip(change)) {
            *x += chance * (change - 1.0);
        }
    }
    Some(mean)
}

/// What a state of the finding's own place does to it; none if it has nothing to do with it.
fn own(state: usize) -> impl Fn(&Finding) -> Option<Factor> {
    move |finding| factor(finding, &finding.own, state)
}

/// What a state of the root does to it.
fn by(root: usize) -> impl Fn(&Finding) -> Option<Factor> {
    move |finding| factor(finding, &finding.root, root)
}

/// What both do to it.
fn both(root: usize, state: usize) -> impl Fn(&Finding) -> Option<Factor> {
    move |finding| match (by(root)(finding), own(state)(finding)) {
        (Some(one), Some(other)) => Some(one.and(other)),
        (one, other) => one.or(other),
    }
}

fn factor(finding: &Finding, links: &[(usize, super::Maker)], state: usize) -> Option<Factor> {
    links.iter().find(|(by, _)| *by == state).map(|(_, maker)| finding.factor(maker))
}

/// How many times likelier findings are under some states than with nothing wrong; none if not at all.
fn product(size: usize, findings: &[(&Finding, &Table)], does: impl Fn(&Finding) -> Option<Factor>) -> Option<Row> {
    let mut row: Option<Row> = None;
    for (finding, table) in findings {
        if let Some(factor) = does(finding) {
            table.times_ratio(factor, row.get_or_insert_with(|| vec![1.0; size]));
        }
    }
    row
}

/// Findings with their tables, as far as asked for.
fn of<'a>(findings: &'a [Finding], tables: &'a [Table], which: Out<'_>) -> Vec<(&'a Finding, &'a Table)> {
    findings.iter().zip(tables).filter(|(finding, _)| which(finding)).collect()
}
