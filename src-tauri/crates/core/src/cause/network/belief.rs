//! What is believed of causes.

use super::graph::MAX_SHARED;

/// What is believed of a cause, as two weights, so that neither near-certainty is lost in rounding.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Belief {
    pub(super) present: f64,
    pub(super) absent: f64,
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

/// From a weight for every subset of causes to a belief in each cause. Each step sums a cause out and halves the table.
pub(super) fn marginals(mut table: Vec<f64>, causes: usize) -> Vec<Belief> {
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

/// The causes that the first of two small tables tells apart.
const FIRST: usize = MAX_SHARED.div_ceil(2);

/// The same where only some subsets have a weight. Each weight is added up twice, by its first causes and by the
/// others, rather than once for each cause.
pub(super) fn marginals_of(subsets: &[u16], weights: &[f64], causes: usize) -> Vec<Belief> {
    let mut first = vec![0.0; 1 << FIRST];
    let mut others = vec![0.0; 1 << (MAX_SHARED - FIRST)];
    for (subset, weight) in subsets.iter().map(|subset| usize::from(*subset)).zip(weights) {
        first.get_mut(subset % (1 << FIRST)).into_iter().for_each(|sum| *sum += weight);
        others.get_mut(subset >> FIRST).into_iter().for_each(|sum| *sum += weight);
    }
    let mut beliefs = marginals(first, FIRST);
    beliefs.extend(marginals(others, MAX_SHARED - FIRST));
    beliefs.truncate(causes);
    beliefs
}

/// For every subset of causes the largest share that it has in the belief that one of them is present, or absent.
pub(super) fn largest_shares(weights: &[f64], causes: usize) -> Vec<f64> {
    let beliefs = marginals(weights.to_vec(), causes);
    let sides: Vec<[f64; 2]> = beliefs.iter().map(|belief| [1.0 / belief.absent, 1.0 / belief.present]).collect();
    let share = |(subset, weight): (usize, &f64)| {
        let of = |(cause, sides): (usize, &[f64; 2])| sides.get(subset >> cause & 1).map_or(0.0, |side| weight * side);
        // A sum of nothing has no shares: nothing times its inverse is not a number, and passed over.
        sides.iter().enumerate().map(of).fold(if causes == 0 { 1.0 } else { 0.0 }, f64::max)
    };
    weights.iter().enumerate().map(share).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn some_subsets_give_the_same_as_all_with_nothing_in_the_others() {
        let causes = MAX_SHARED - 1;
        let subsets: Vec<u16> = (0..1 << causes).filter(|subset| subset % 7 < 3).collect();
        let weights: Vec<f64> = subsets.iter().map(|subset| f64::from(subset % 31) + 0.5).collect();
        let mut all = vec![0.0; 1 << causes];
        subsets.iter().zip(&weights).for_each(|(subset, weight)| all[usize::from(*subset)] = *weight);
        // Sums of halves are exact, in whichever order they are taken.
        assert_eq!(marginals_of(&subsets, &weights, causes), marginals(all, causes));
    }
}
