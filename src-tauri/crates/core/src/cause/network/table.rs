//! Tables over subsets of shared causes.

use std::sync::Arc;

use super::observation::{Factor, Maker, Observation};
use crate::cause::scaled::binary_log;

/// For every subset of the causes that bear on a place, the subset of a few of them, as an index.
pub(super) type Index = Arc<Vec<u16>>;

/// An observation's likelihood for every subset of the shared causes that make it, in its parts, from which the
/// likelihood under any state of the place follows.
#[derive(Debug, Clone)]
pub(super) struct Table {
    index: Index,
    terms: Vec<Factor>,
    located: bool,
    /// The likelihood with nothing wrong at the place.
    base: Vec<f64>,
    /// By how many doublings leaving the observation out can raise the weight of one thing more than that of another.
    pub(super) growth: f64,
}

/// A product of several functions, each of a few of the shared causes.
#[derive(Debug, Clone, Default)]
pub(super) struct Product(Vec<(Index, Vec<f64>)>);

/// The indices already made for one place, by the causes to which they lead.
#[derive(Debug)]
pub(super) struct Indices<'a> {
    bits: &'a [usize],
    known: Vec<(Vec<usize>, Index)>,
}

impl<'a> Indices<'a> {
    /// For a place on which these shared causes bear.
    pub(super) fn new(bits: &'a [usize]) -> Self {
        Self { bits, known: Vec::new() }
    }

    /// The index that leads to some of them.
    fn to(&mut self, few: &[usize]) -> Index {
        if let Some((_, index)) = self.known.iter().find(|(known, _)| known == few) {
            return index.clone();
        }
        let places: Vec<usize> = few.iter().filter_map(|bit| self.bits.iter().position(|b| b == bit)).collect();
        let index = Arc::new(projection(self.bits.len(), &places));
        self.known.push((few.to_vec(), index.clone()));
        index
    }
}

impl Table {
    /// Of an observation, at a place whose indices are given.
    pub(super) fn new(observation: &Observation, indices: &mut Indices<'_>) -> Self {
        let makers: Vec<usize> = observation.shared.iter().map(|(by, _)| *by).collect();
        let mut terms = vec![observation.start()];
        for (_, maker) in &observation.shared {
            let factor = observation.factor(maker);
            let with: Vec<Factor> = terms.iter().map(|term| term.and(factor)).collect();
            terms.extend(with);
        }
        let located = observation.is_located();
        let base = terms.iter().map(|term| term.likelihood(located)).collect();
        let growth = spread(observation, &terms);
        Self { index: indices.to(&makers), terms, located, base, growth }
    }

    /// The likelihood with nothing wrong at the place.
    pub(super) fn base(&self) -> Product {
        Product(vec![(self.index.clone(), self.base.clone())])
    }

    /// How many times likelier the observation is with a state's factor than without.
    pub(super) fn ratio(&self, factor: Factor) -> Product {
        let pairs = self.terms.iter().zip(&self.base);
        self.product(pairs.map(|(term, base)| term.and(factor).likelihood(self.located) / base).collect())
    }

    /// The likelihood under a state's factor.
    pub(super) fn likelihood(&self, factor: Factor) -> Product {
        self.product(self.terms.iter().map(|term| term.and(factor).likelihood(false)).collect())
    }

    /// The chance that what was found lies in the pattern.
    pub(super) fn pattern(&self, factor: Factor) -> Product {
        let share = |term: &Factor| {
            let both = term.and(factor);
            both.here / both.all
        };
        self.product(self.terms.iter().map(share).collect())
    }

    /// What two states do together beyond what each does alone.
    pub(super) fn interaction(&self, one: Factor, other: Factor) -> Product {
        let beyond = |(term, base): (&Factor, &f64)| {
            let with = |factor: Factor| term.and(factor).likelihood(self.located);
            with(one.and(other)) * base / (with(one) * with(other))
        };
        self.product(self.terms.iter().zip(&self.base).map(beyond).collect())
    }

    fn product(&self, values: Vec<f64>) -> Product {
        Product(vec![(self.index.clone(), values)])
    }
}

/// How much likelier an observation is with what makes it likeliest than with what makes it least likely, in doublings.
fn spread(observation: &Observation, terms: &[Factor]) -> f64 {
    let makers = |links: &[(usize, Maker)]| {
        std::iter::once(Factor::NONE)
            .chain(links.iter().map(|(_, maker)| observation.factor(maker)))
            .collect::<Vec<_>>()
    };
    let (root, own) = (makers(&observation.root), makers(&observation.own));
    let states = root.iter().flat_map(|root| own.iter().map(|own| root.and(*own)));
    let of = |state: Factor| terms.iter().map(move |term| term.and(state).likelihood(observation.is_located()));
    let (least, most) = states.flat_map(of).fold((1.0_f64, 0.0_f64), |(least, most), x| (least.min(x), most.max(x)));
    binary_log(most / least)
}

impl Product {
    /// Times another. Functions of the same causes become one.
    pub(super) fn and(mut self, other: Self) -> Self {
        for (index, values) in other.0 {
            match self.0.iter_mut().find(|(known, _)| Arc::ptr_eq(known, &index)) {
                Some((_, known)) => times(known, &values),
                None => self.0.push((index, values)),
            }
        }
        self
    }

    /// One divided by it.
    pub(super) fn inverse(mut self) -> Self {
        self.0.iter_mut().flat_map(|(_, values)| values).for_each(|x| *x = 1.0 / *x);
        self
    }

    /// Whether it is one, whatever the causes.
    pub(super) fn is_one(&self) -> bool {
        self.0.is_empty()
    }

    /// Multiplies it into a row over all subsets of the causes that bear on the place.
    pub(super) fn times_into(&self, row: &mut [f64]) {
        for (index, values) in &self.0 {
            for (x, at) in row.iter_mut().zip(index.iter()) {
                if let Some(factor) = values.get(usize::from(*at)) {
                    *x *= factor;
                }
            }
        }
    }

    /// Its values at some of the subsets.
    pub(super) fn at(&self, columns: &[u16]) -> Vec<f64> {
        let mut row = vec![1.0; columns.len()];
        for (index, values) in &self.0 {
            for (x, column) in row.iter_mut().zip(columns) {
                let value = index.get(usize::from(*column)).and_then(|at| values.get(usize::from(*at)));
                *x *= value.copied().unwrap_or(1.0);
            }
        }
        row
    }
}

/// For every subset of `causes` shared causes, the subset of `bits` that it contains, as an index.
pub(super) fn projection(causes: usize, bits: &[usize]) -> Vec<u16> {
    let mut table = vec![0];
    for cause in 0..causes {
        let place = bits.iter().position(|bit| *bit == cause);
        let weight = place.map_or(0, |place| 1u16.checked_shl(u32::try_from(place).unwrap_or(16)).unwrap_or(0));
        let more: Vec<u16> = table.iter().map(|index| index | weight).collect();
        table.extend(more);
    }
    table
}

/// The subset of `bits` within one subset of causes, as an index.
pub(super) fn within(subset: u16, bits: &[usize]) -> u16 {
    bits.iter().rev().fold(0, |index, bit| index << 1 | (subset >> bit & 1))
}

/// Some numbers of a row.
pub(super) fn pick<T: Copy + Default>(row: &[T], columns: &[u16]) -> Vec<T> {
    columns.iter().map(|column| row.get(usize::from(*column)).copied().unwrap_or_default()).collect()
}

/// Multiplies one row into another.
pub(super) fn times(row: &mut [f64], by: &[f64]) {
    for (x, y) in row.iter_mut().zip(by) {
        *x *= y;
    }
}

/// Adds one row to another.
pub(super) fn plus(row: &mut [f64], more: &[f64]) {
    for (x, y) in row.iter_mut().zip(more) {
        *x += y;
    }
}
