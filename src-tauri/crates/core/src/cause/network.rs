//! The probability model: hidden causes that are there or not, findings with a grade, and exact inference between them.
//!
//! A finding's grade is the greatest that any present cause, or the leak (whatever no cause of the catalogue explains),
//! produces: noisy-MAX. Findings are independent once the causes are known, so the posterior is a sum over the subsets
//! of causes: no sampling, no approximation.

use super::scaled::Scaled;

/// Grades 0 (absent) to 4.
pub const GRADES: usize = 5;

/// The most causes over which the sum is taken: 2¹⁶ subsets are still quick and small.
pub const MAX_CAUSES: usize = 16;

/// A distribution over grades as cumulative chances: `at_most[g]` is the chance that the grade is at most `g`. The last
/// is 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GradeChances {
    /// Chance of a grade of at most 0, 1, 2, 3, 4.
    pub at_most: [f64; GRADES],
}

impl GradeChances {
    /// A finding is produced with a chance (0 to 1), and then has grade 1, 2, 3, 4 with the shares given (summing to 1).
    pub fn new(chance: f64, shares: [f64; 4]) -> Self {
        let mut at_most = [1.0 - chance, 0.0, 0.0, 0.0, 1.0];
        let mut sum = 1.0 - chance;
        for (below, share) in at_most.iter_mut().skip(1).take(3).zip(shares) {
            sum += chance * share;
            *below = sum.min(1.0);
        }
        Self { at_most }
    }

    fn at_most(&self, grade: usize) -> f64 {
        self.at_most.get(grade).copied().unwrap_or(1.0)
    }
}

/// What is known of a finding.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Observed {
    /// Seen with this grade, 1 to 4; or 0: certainly absent.
    Grade(u8),
    /// Not reported by somebody who looked. If it had been there it would have been passed over with this chance.
    Unreported {
        /// Chance of passing over a finding that is there, 0 to 1.
        missed: f64,
    },
}

/// A finding, or several alike.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// What produces it when no cause does.
    pub leak: GradeChances,
    /// What each cause produces: index of the cause, chances.
    pub links: Vec<(usize, GradeChances)>,
    /// What was seen.
    pub observed: Observed,
    /// How many findings of just this kind there are.
    pub count: u32,
}

/// Causes and what was seen.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Network {
    /// The prior probability of each cause, 0 to 1.
    pub priors: Vec<f64>,
    /// Pieces of evidence, each of one or more findings. A finding that nobody looked for is left out.
    pub evidence: Vec<Vec<Finding>>,
}

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

    /// The probability that the cause is present, 0 to 1.
    pub fn probability(self) -> f64 {
        self.present / (self.present + self.absent)
    }

    /// The odds that it is present; infinite when its absence is out of the question.
    pub fn odds(self) -> f64 {
        self.present / self.absent
    }
}

/// What is believed of the causes.
#[derive(Debug, Clone, PartialEq)]
pub struct Solution {
    /// Each cause, given all the evidence.
    pub posterior: Vec<Belief>,
    /// For each piece of evidence: each cause had it not been seen.
    pub without: Vec<Vec<Belief>>,
}

/// The observations can't come about in this model: every subset of causes gives them probability zero; or there are
/// more than [`MAX_CAUSES`] causes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("No combination of causes can produce what was observed.")]
pub struct Contradiction;

impl Network {
    /// The probability of each cause, given the evidence, and given all but each piece of it. Exact; one pass over the
    /// subsets of causes.
    ///
    /// # Errors
    /// [`Contradiction`].
    pub fn solve(&self) -> Result<Solution, Contradiction> {
        let causes = self.priors.len();
        if causes > MAX_CAUSES {
            return Err(Contradiction);
        }
        let pieces: Vec<Vec<Scaled>> = self.evidence.iter().map(|findings| weights(findings, causes)).collect();
        // What precedes each piece and what follows it, so that each can be left out without dividing.
        let mut following = vec![vec![Scaled::ONE; 1 << causes]];
        for piece in pieces.iter().rev() {
            let last = following.last().map(|after| products(after, piece));
            following.extend(last);
        }
        let mut following = following.into_iter().rev();
        let mut before = self.prior_weights();
        let all = following.next().and_then(|after| marginals(&products(&before, &after), causes));
        let mut without = Vec::with_capacity(pieces.len());
        for (piece, after) in pieces.iter().zip(following) {
            without.push(marginals(&products(&before, &after), causes).ok_or(Contradiction)?);
            before = products(&before, piece);
        }
        Ok(Solution { posterior: all.ok_or(Contradiction)?, without })
    }

    fn prior_weights(&self) -> Vec<Scaled> {
        let mut table = vec![Scaled::ONE];
        for prior in &self.priors {
            let with: Vec<Scaled> = table.iter().map(|weight| weight.times(*prior)).collect();
            table = table.iter().map(|weight| weight.times(1.0 - prior)).collect();
            table.extend(with);
        }
        table
    }
}

fn products(a: &[Scaled], b: &[Scaled]) -> Vec<Scaled> {
    a.iter().zip(b).map(|(a, b)| a.product(*b)).collect()
}

/// From a weight for every subset of causes to a belief in each cause; none if all weights are zero. Each step sums a
/// cause out and halves the table.
fn marginals(weights: &[Scaled], causes: usize) -> Option<Vec<Belief>> {
    let mut table = Scaled::aligned(weights);
    let mut beliefs = Vec::with_capacity(causes);
    for _ in 0..causes {
        let present = table.iter().skip(1).step_by(2).sum();
        let absent = table.iter().step_by(2).sum();
        beliefs.push(Belief { present, absent });
        table = table.chunks(2).map(|pair| pair.iter().sum()).collect();
    }
    table.first().filter(|total| **total > 0.0).map(|_| beliefs)
}

/// The likelihood of a piece of evidence for every subset of causes.
fn weights(findings: &[Finding], causes: usize) -> Vec<Scaled> {
    let mut weights = vec![Scaled::ONE; 1 << causes];
    for finding in findings {
        for (weight, likelihood) in weights.iter_mut().zip(finding.likelihoods(causes)) {
            *weight = weight.times_often(likelihood, finding.count);
        }
    }
    weights
}

impl Finding {
    /// The chance of the observation for every subset of causes.
    fn likelihoods(&self, causes: usize) -> Vec<f64> {
        let at_most = |grade: usize| self.at_most_for_subsets(grade, causes);
        match self.observed {
            Observed::Unreported { missed } => {
                at_most(0).into_iter().map(|absent| missed + (1.0 - missed) * absent).collect()
            }
            Observed::Grade(0) => at_most(0),
            Observed::Grade(grade) => {
                let grade = usize::from(grade);
                at_most(grade)
                    .into_iter()
                    .zip(at_most(grade - 1))
                    .map(|(this, below)| (this - below).max(0.0))
                    .collect()
            }
        }
    }

    /// The chance that the grade is at most so much, for every subset: each cause doubles the table, so that a subset
    /// costs one product.
    fn at_most_for_subsets(&self, grade: usize, causes: usize) -> Vec<f64> {
        let mut table = Vec::with_capacity(1 << causes);
        table.push(self.leak.at_most(grade));
        for cause in 0..causes {
            let link = self.links.iter().find(|(linked, _)| *linked == cause);
            let factor = link.map_or(1.0, |(_, chances)| chances.at_most(grade));
            for subset in 0..table.len() {
                table.extend(table.get(subset).map(|without| without * factor));
            }
        }
        table
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn binary(chance: f64) -> GradeChances {
        GradeChances::new(chance, [1.0, 0.0, 0.0, 0.0])
    }

    fn posterior(priors: &[f64], findings: &[Finding]) -> Vec<f64> {
        probabilities(
            &Network { priors: priors.to_vec(), evidence: vec![findings.to_vec()] }.solve().unwrap().posterior,
        )
    }

    fn probabilities(beliefs: &[Belief]) -> Vec<f64> {
        beliefs.iter().map(|belief| belief.probability()).collect()
    }

    fn seen(leak: f64, links: &[(usize, f64)]) -> Finding {
        let links = links.iter().map(|(cause, chance)| (*cause, binary(*chance))).collect();
        Finding { leak: binary(leak), links, observed: Observed::Grade(1), count: 1 }
    }

    #[test]
    fn nothing_observed_returns_the_priors() {
        let priors = [0.3, 0.02, 0.5];
        for (posterior, prior) in posterior(&priors, &[]).iter().zip(&priors) {
            assert!((posterior - prior).abs() < 1e-15);
        }
    }

    #[test]
    fn a_second_cause_explains_the_first_away() {
        let shared = seen(0.01, &[(0, 0.8), (1, 0.8)]);
        let second = seen(0.0001, &[(1, 0.9)]);
        let alone = posterior(&[0.1, 0.1], std::slice::from_ref(&shared));
        let explained = posterior(&[0.1, 0.1], &[shared, second]);
        assert!(explained[0] < alone[0]);
    }

    #[test]
    fn what_cannot_be_is_said_so() {
        let impossible = Network { priors: vec![0.5], evidence: vec![vec![seen(0.0, &[])]] };
        assert_eq!(impossible.solve(), Err(Contradiction));
    }

    #[test]
    fn chances_add_up() {
        let chances = GradeChances::new(0.8, [0.25, 0.4, 0.25, 0.1]);
        assert!((chances.at_most[0] - 0.2).abs() < 1e-15);
        assert!((chances.at_most[3] - 0.92).abs() < 1e-15);
        assert_eq!(chances.at_most[4], 1.0);
    }

    /// Brute force: the full joint over causes and over what each cause and the leak produce at each finding, by plain
    /// enumeration of who produced which grade, without the product formula.
    fn brute_force(priors: &[f64], findings: &[Finding]) -> Vec<f64> {
        let causes = priors.len();
        let mut total = 0.0;
        let mut with = vec![0.0; causes];
        for subset in 0..1_u32 << causes {
            let present = |cause: usize| subset >> cause & 1 == 1;
            let mut weight: f64 =
                priors.iter().enumerate().map(|(c, p)| if present(c) { *p } else { 1.0 - p }).product();
            for finding in findings {
                let mut makers = vec![finding.leak];
                makers.extend(finding.links.iter().filter(|(cause, _)| present(*cause)).map(|(_, chances)| *chances));
                let by_grade = greatest_of(&makers);
                let likelihood = match finding.observed {
                    Observed::Grade(grade) => by_grade[usize::from(grade)],
                    Observed::Unreported { missed } => by_grade[0] + missed * by_grade[1..].iter().sum::<f64>(),
                };
                weight *= (0..finding.count).map(|_| likelihood).product::<f64>();
            }
            total += weight;
            for (cause, sum) in with.iter_mut().enumerate() {
                *sum += if present(cause) { weight } else { 0.0 };
            }
        }
        with.into_iter().map(|sum| sum / total).collect()
    }

    fn greatest_of(makers: &[GradeChances]) -> [f64; GRADES] {
        let exactly = |maker: &GradeChances, grade: usize| {
            maker.at_most[grade] - if grade == 0 { 0.0 } else { maker.at_most[grade - 1] }
        };
        let mut by_grade = [0.0; GRADES];
        let mut grades = vec![0; makers.len()];
        loop {
            let chance: f64 = makers.iter().zip(&grades).map(|(maker, grade)| exactly(maker, *grade)).product();
            by_grade[*grades.iter().max().unwrap()] += chance;
            // The next combination, counting in base five.
            let Some(place) = grades.iter().position(|grade| *grade < GRADES - 1) else { return by_grade };
            grades[place] += 1;
            grades[..place].fill(0);
        }
    }

    fn any_chances() -> impl Strategy<Value = GradeChances> {
        (0.01f64..0.95, prop::array::uniform4(0.05f64..1.0)).prop_map(|(chance, raw)| {
            let sum: f64 = raw.iter().sum();
            GradeChances::new(chance, raw.map(|share| share / sum))
        })
    }

    fn any_network() -> impl Strategy<Value = (Vec<f64>, Vec<Finding>)> {
        (1usize..=4).prop_flat_map(|causes| {
            let observed = prop_oneof![
                (0u8..=4).prop_map(Observed::Grade),
                (0.0f64..0.5).prop_map(|missed| Observed::Unreported { missed })
            ];
            let links = prop::collection::vec(prop::option::of(any_chances()), causes).prop_map(|links| {
                links.into_iter().enumerate().filter_map(|(cause, chances)| Some((cause, chances?))).collect()
            });
            let finding = (any_chances(), links, observed, 1u32..3)
                .prop_map(|(leak, links, observed, count)| Finding { leak, links, observed, count });
            (prop::collection::vec(0.01f64..0.9, causes), prop::collection::vec(finding, 0..5))
        })
    }

    #[track_caller]
    fn close(exact: &[f64], brute: &[f64]) {
        for (exact, brute) in exact.iter().zip(brute) {
            assert!((exact - brute).abs() < 1e-9, "{exact} is not {brute}");
        }
    }

    proptest! {
        #[test]
        fn equals_brute_force_on_random_networks((priors, findings) in any_network()) {
            let evidence: Vec<Vec<Finding>> = findings.iter().map(|finding| vec![finding.clone()]).collect();
            let solution = Network { priors: priors.clone(), evidence }.solve().unwrap();
            close(&probabilities(&solution.posterior), &brute_force(&priors, &findings));
            for (left_out, without) in solution.without.iter().enumerate() {
                let mut others = findings.clone();
                others.remove(left_out);
                close(&probabilities(without), &brute_force(&priors, &others));
            }
        }
    }
}
