//! What is believed of causes.

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
