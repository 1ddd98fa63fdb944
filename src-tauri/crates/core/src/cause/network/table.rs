//! Tables over the subsets of a place's shared causes, as plain rows of numbers.

use super::finding::{Factor, Finding};

/// A finding's likelihood for every subset of the shared causes that bear on its place, and its parts, from which the
/// likelihood under any state of the place follows.
#[derive(Debug, Clone)]
pub(super) struct Table {
    high: Vec<f64>,
    low: Vec<f64>,
    /// Weight of the observed pattern and of all patterns; empty where no pattern was seen.
    here: Vec<f64>,
    all: Vec<f64>,
    /// The likelihood with nothing wrong at the place, and one divided by it.
    pub(super) base: Vec<f64>,
    inverse: Vec<f64>,
}

impl Table {
    /// Of a finding, over the subsets of `bits` (numbers of shared causes).
    pub(super) fn new(finding: &Finding, bits: &[usize]) -> Self {
        let factors: Vec<Option<Factor>> = bits
            .iter()
            .map(|bit| finding.shared.iter().find(|(by, _)| by == bit).map(|(_, maker)| finding.factor(maker)))
            .collect();
        let start = finding.start();
        let high = doubled(start.high, factors.iter().map(|f| f.map(|f| f.high)), |x, factor| x * factor);
        let low = doubled(start.low, factors.iter().map(|f| f.map(|f| f.low)), |x, factor| x * factor);
        let mut base: Vec<f64> = high.iter().zip(&low).map(|(high, low)| high - low).collect();
        let (mut here, mut all) = (vec![], vec![]);
        if finding.is_located() {
            here = doubled(start.here, factors.iter().map(|f| f.map(|f| f.here)), |x, more| x + more);
            all = doubled(start.all, factors.iter().map(|f| f.map(|f| f.all)), |x, more| x + more);
            for (base, (here, all)) in base.iter_mut().zip(here.iter().zip(&all)) {
                *base *= here / all;
            }
        }
        let inverse = base.iter().map(|base| 1.0 / base).collect();
        Self { high, low, here, all, base, inverse }
    }

    /// Multiplies each number of a row by how many times likelier the finding is with a state's factor than without.
    pub(super) fn times_ratio(&self, factor: Factor, row: &mut [f64]) {
        let terms = self.high.iter().zip(&self.low).zip(&self.inverse);
        for (x, ((high, low), inverse)) in row.iter_mut().zip(terms) {
            *x *= (high * factor.high - low * factor.low) * inverse;
        }
        for (x, (here, all)) in row.iter_mut().zip(self.here.iter().zip(&self.all)) {
            *x *= (here + factor.here) / (all + factor.all);
        }
    }

    /// Multiplies each number of a row by the likelihood under a state's factor.
    pub(super) fn times_likelihood(&self, factor: Factor, row: &mut [f64]) {
        for (x, (high, low)) in row.iter_mut().zip(self.high.iter().zip(&self.low)) {
            *x *= high * factor.high - low * factor.low;
        }
    }

    /// Multiplies each number of a row by the chance that what was found lies in the pattern.
    pub(super) fn times_pattern(&self, factor: Factor, row: &mut [f64]) {
        for (x, (here, all)) in row.iter_mut().zip(self.here.iter().zip(&self.all)) {
            *x *= (here + factor.here) / (all + factor.all);
        }
    }

    /// Multiplies each number of a row by what two states do together beyond what each does alone.
    pub(super) fn times_interaction(&self, one: Factor, other: Factor, row: &mut [f64]) {
        let both = one.and(other);
        let terms = self.high.iter().zip(&self.low).zip(&self.base);
        if self.here.is_empty() {
            for (x, ((high, low), base)) in row.iter_mut().zip(terms) {
                let at = |factor: Factor| high * factor.high - low * factor.low;
                *x *= at(both) * base / (at(one) * at(other));
            }
            return;
        }
        let patterns = self.here.iter().zip(&self.all);
        for ((x, ((high, low), base)), (here, all)) in row.iter_mut().zip(terms).zip(patterns) {
            let at =
                |factor: Factor| (high * factor.high - low * factor.low) * ((here + factor.here) / (all + factor.all));
            *x *= at(both) * base / (at(one) * at(other));
        }
    }
}

/// A table over subsets, built by doubling: every further member either leaves the numbers as they are or changes them.
pub(super) fn doubled(
    start: f64,
    members: impl Iterator<Item = Option<f64>>,
    with: impl Fn(f64, f64) -> f64,
) -> Vec<f64> {
    let mut table = vec![start];
    for member in members {
        match member {
            None => table.extend_from_within(..),
            Some(factor) => {
                let more: Vec<f64> = table.iter().map(|x| with(*x, factor)).collect();
                table.extend(more);
            }
        }
    }
    table
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
