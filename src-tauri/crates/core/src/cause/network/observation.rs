//! Observations: what was seen, and what can have made it.

use serde::Serialize;

/// Grades 0 (absent) to 4.
pub const GRADES: usize = 5;

/// A distribution over grades as cumulative chances: `at_most[g]` is the chance that the grade is at most `g`. The last
/// is 1.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct GradeChances {
    /// Chance of a grade of at most 0, 1, 2, 3, 4.
    pub at_most: [f64; GRADES],
}

/// What a cause, a state of a place or the leak makes of an observation.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Maker {
    /// With which chance it makes which grade.
    pub grades: GradeChances,
    /// What it makes lies in the observed pattern of zones with this chance, 0 to 1; without effect unless the
    /// observation is [`Observed::Located`].
    pub share: f64,
}

impl Maker {
    /// Of two things that it makes as if they were one, as far as it is concerned whether either is there.
    fn and_none_of(&self, other: &Self) -> Self {
        let none = self.grades.at_most(0) * other.grades.at_most(0);
        Self { grades: GradeChances { at_most: [none, 1.0, 1.0, 1.0, 1.0] }, share: 1.0 }
    }
}

/// What was observed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Observed {
    /// Seen with this grade, 1 to 4; or 0: certainly absent.
    Grade(u8),
    /// Seen with this grade, 1 to 4, in a certain pattern of zones. The pattern is that of the maker which is
    /// answerable for the observation; of several that are present each is so in proportion to its own chance of making
    /// that grade.
    Located(u8),
    /// Certainly there, with whatever grade: a size beyond its limit.
    Present,
    /// Not reported by somebody who looked. If it had been there it would have been passed over with this chance.
    Unreported {
        /// Chance of passing over an observation that is there, 0 to 1.
        missed: f64,
    },
    /// Not reported by somebody who looked, or no more than grade 1, which at such a place tells nothing. If it had been worse
    /// it would have been passed over with this chance.
    Slight {
        /// Chance of passing over what is there in a higher grade, 0 to 1.
        missed: f64,
    },
}

/// An observation on one part: its grade is the greatest that any maker produces.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Observation {
    /// The piece of evidence to which it belongs: what is left out together.
    pub piece: usize,
    /// What was seen.
    pub observed: Observed,
    /// What produces it when nothing else does. It must be able to.
    pub leak: Maker,
    /// What each cause of the whole engine produces, by the cause's number.
    pub shared: Vec<(usize, Maker)>,
    /// What each state of the place's root produces, by the state's number; for observations of a branch.
    pub root: Vec<(usize, Maker)>,
    /// What each state of the observation's own place produces, by the state's number.
    pub own: Vec<(usize, Maker)>,
}

impl GradeChances {
    /// An observation is produced with a chance (0 to 1), and then has grade 1, 2, 3, 4 with the shares given (summing
    /// to 1).
    pub fn new(chance: f64, shares: [f64; 4]) -> Self {
        let mut at_most = [1.0 - chance, 0.0, 0.0, 0.0, 1.0];
        let mut sum = 1.0 - chance;
        for (below, share) in at_most.iter_mut().skip(1).take(3).zip(shares) {
            sum += chance * share;
            *below = sum.min(1.0);
        }
        Self { at_most }
    }

    /// An observation is produced with these chances in grade 1, 2, 3, 4; together they are less than 1.
    pub fn of([first, second, third, fourth]: [f64; 4]) -> Self {
        let none = 1.0 - first - second - third - fourth;
        let at_most = [none, none + first, none + first + second, none + first + second + third, 1.0];
        Self { at_most: at_most.map(|chance: f64| chance.min(1.0)) }
    }

    /// The chance of a grade of at most this.
    pub fn at_most(&self, grade: u8) -> f64 {
        self.at_most.get(usize::from(grade)).copied().unwrap_or(1.0)
    }

    /// The chance of less than this grade.
    pub fn below(&self, grade: u8) -> f64 {
        grade.checked_sub(1).map_or(0.0, |below| self.at_most(below))
    }
}

/// By what a maker changes the two terms of an observation's likelihood, and the weights of its pattern.
///
/// The likelihood is `high − low` (times `here / all` where a pattern was seen), and each present maker multiplies the
/// first two and adds to the others.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Factor {
    pub(super) high: f64,
    pub(super) low: f64,
    pub(super) here: f64,
    pub(super) all: f64,
}

impl Factor {
    /// Of nothing.
    pub(super) const NONE: Self = Self { high: 1.0, low: 1.0, here: 0.0, all: 0.0 };

    pub(super) fn and(self, other: Self) -> Self {
        Self {
            high: self.high * other.high,
            low: self.low * other.low,
            here: self.here + other.here,
            all: self.all + other.all,
        }
    }

    /// The likelihood, all makers taken together; of the pattern too if one was seen.
    pub(super) fn likelihood(self, located: bool) -> f64 {
        let grade = self.high - self.low;
        if located { grade * (self.here / self.all) } else { grade }
    }
}

impl Observation {
    /// What a maker that is present does to the likelihood.
    pub(super) fn factor(&self, maker: &Maker) -> Factor {
        match self.observed {
            Observed::Grade(grade) | Observed::Located(grade) => {
                let (high, low) = (maker.grades.at_most(grade), maker.grades.below(grade));
                Factor { high, low, here: (high - low) * maker.share, all: high - low }
            }
            Observed::Present | Observed::Unreported { .. } => {
                Factor { high: 1.0, low: maker.grades.at_most(0), here: 0.0, all: 0.0 }
            }
            Observed::Slight { .. } => Factor { high: 1.0, low: maker.grades.at_most(1), here: 0.0, all: 0.0 },
        }
    }

    /// The likelihood's terms when only the leak is there.
    pub(super) fn start(&self) -> Factor {
        let leak = self.factor(&self.leak);
        match self.observed {
            // Not reported: it was missed, or else it was absent, or slight.
            Observed::Unreported { missed } | Observed::Slight { missed } => {
                Factor { high: missed, low: -(1.0 - missed) * leak.low, ..leak }
            }
            Observed::Grade(_) | Observed::Located(_) | Observed::Present => leak,
        }
    }

    /// Several that go unreported, as one: somebody who looked reported none of them, and has passed over whatever was there
    /// with this chance. None of none.
    pub fn all_unreported(several: Vec<Self>, missed: f64) -> Option<Self> {
        let mut together: Option<Self> = None;
        for observation in several {
            match &mut together {
                Some(together) => together.absorb(observation),
                None => together = Some(Self { observed: Observed::Unreported { missed }, ..observation }),
            }
        }
        together
    }

    /// Takes in another that can be told from this one by nothing but what makes it.
    fn absorb(&mut self, other: Self) {
        self.leak = self.leak.and_none_of(&other.leak);
        let links = [(&mut self.shared, other.shared), (&mut self.root, other.root), (&mut self.own, other.own)];
        for (links, others) in links {
            for (by, maker) in others {
                match links.binary_search_by_key(&by, |(by, _)| *by) {
                    Ok(at) => links.get_mut(at).into_iter().for_each(|(_, own)| *own = own.and_none_of(&maker)),
                    Err(at) => links.insert(at, (by, maker)),
                }
            }
        }
    }

    pub(super) fn is_located(&self) -> bool {
        matches!(self.observed, Observed::Located(_))
    }

    /// Whether nothing about it is certain beforehand: the leak can make what was seen, and nobody makes it for sure.
    pub(super) fn is_open(&self) -> bool {
        let start = self.start();
        let makers = || self.shared.iter().chain(&self.root).chain(&self.own).map(|(_, maker)| maker);
        start.high - start.low > 0.0
            && (!self.is_located() || self.leak.share > 0.0)
            && makers().all(|maker| maker.grades.at_most(0) > 0.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cause::network::{CauseSeat, Network, Site};

    /// Three that go unreported, one of them made by two causes and a state: where nobody passes over anything it is the same as
    /// each by itself; and where everything is passed over it says nothing.
    #[test]
    fn several_unreported_are_as_each_by_itself() {
        let maker = |chance| Maker { grades: GradeChances::new(chance, [0.4, 0.3, 0.2, 0.1]), share: 0.5 };
        let unreported = |leak, shared: &[(usize, f64)], own: &[(usize, f64)]| Observation {
            piece: 0,
            observed: Observed::Unreported { missed: 0.0 },
            leak: maker(leak),
            shared: shared.iter().map(|(by, chance)| (*by, maker(*chance))).collect(),
            root: vec![],
            own: own.iter().map(|(by, chance)| (*by, maker(*chance))).collect(),
        };
        let several = vec![
            unreported(0.02, &[(1, 0.5)], &[(2, 0.7)]),
            unreported(0.10, &[(0, 0.3), (1, 0.2)], &[]),
            unreported(0.01, &[], &[(1, 0.9), (2, 0.1)]),
        ];
        let site = |observations| Site { states: vec![0.7, 0.2, 0.1], observations, branches: vec![] };
        let told = |observations| {
            let network = Network { priors: vec![0.3, 0.4], sites: vec![site(observations)] };
            let solution = network.solve().unwrap();
            let mut told: Vec<f64> = solution.shared().iter().map(|belief| belief.probability()).collect();
            let states = solution.states(CauseSeat { site: 0, branch: None });
            told.extend(states.iter().map(|weight| weight / states.iter().sum::<f64>()));
            told
        };
        let together = |missed| told(vec![Observation::all_unreported(several.clone(), missed).unwrap()]);
        for (one, other) in told(several.clone()).into_iter().zip(together(0.0)) {
            assert!((one - other).abs() < 1e-12, "{one} and {other}");
        }
        for (one, other) in told(vec![]).into_iter().zip(together(1.0)) {
            assert!((one - other).abs() < 1e-12, "{one} and {other}");
        }
        assert_eq!(Observation::all_unreported(vec![], 0.1), None);
    }

    #[test]
    fn chances_add_up() {
        let chances = GradeChances::new(0.8, [0.25, 0.4, 0.25, 0.1]);
        assert!((chances.at_most[0] - 0.2).abs() < 1e-15);
        assert!((chances.at_most[3] - 0.92).abs() < 1e-15);
        assert_eq!((chances.at_most[4], chances.below(0)), (1.0, 0.0));
    }
}
