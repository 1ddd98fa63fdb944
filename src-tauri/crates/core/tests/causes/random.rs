//! Small random networks of the full kind, and the numbers to draw them from.

use wearbook_core::cause::network::{Branch, GradeChances, Maker, Network, Observation, Observed, Site};

/// A small generator of our own (xorshift64*, from memory), so that a failure can be repeated from its seed.
pub(crate) struct Dice(u64);

impl Dice {
    pub(crate) fn new(seed: u64) -> Self {
        let mut dice = Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0xD1B5_4A32_D192_ED03);
        (0..8).for_each(|_| {
            dice.next();
        });
        dice
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D)
    }

    /// At least 0 and less than 1.
    pub(crate) fn chance(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }

    pub(crate) fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.chance()
    }

    /// One of 0, 1, …, n − 1.
    pub(crate) fn below(&mut self, n: usize) -> usize {
        (self.chance() * n as f64) as usize
    }

    pub(crate) fn happens(&mut self, chance: f64) -> bool {
        self.chance() < chance
    }

    /// A number drawn with these weights.
    pub(crate) fn pick(&mut self, weights: &[f64]) -> usize {
        let mut left = self.chance() * weights.iter().sum::<f64>();
        for (n, weight) in weights.iter().enumerate() {
            if left < *weight {
                return n;
            }
            left -= weight;
        }
        weights.len() - 1
    }

    fn shares(&mut self, n: usize) -> Vec<f64> {
        let raw: Vec<f64> = (0..n).map(|_| self.between(0.05, 1.0)).collect();
        let sum: f64 = raw.iter().sum();
        raw.into_iter().map(|share| share / sum).collect()
    }

    /// Shares of which some, but not the first, may be zero.
    fn given(&mut self, n: usize) -> Vec<f64> {
        let mut shares = self.shares(n);
        if n > 1 && self.happens(0.4) {
            let gone = 1 + self.below(n - 1);
            // The sum may come out a hair above 1.
            shares[0] = (shares[0] + std::mem::take(&mut shares[gone])).min(1.0);
        }
        shares
    }

    fn maker(&mut self) -> Maker {
        let chance = self.between(0.01, 0.95);
        let shares = self.shares(4);
        Maker {
            grades: GradeChances::new(chance, [shares[0], shares[1], shares[2], shares[3]]),
            share: self.between(0.02, 0.9),
        }
    }

    fn links(&mut self, numbers: std::ops::Range<usize>) -> Vec<(usize, Maker)> {
        let linked: Vec<usize> = numbers.filter(|_| self.happens(0.6)).collect();
        linked.into_iter().map(|by| (by, self.maker())).collect()
    }

    fn observation(&mut self, piece: usize, shared: usize, roots: usize, own: usize) -> Observation {
        let grade = 1 + self.below(4) as u8;
        let observed = match self.below(5) {
            0 => Observed::Grade(grade * self.below(2) as u8),
            1 => Observed::Located(grade),
            2 => Observed::Present,
            3 if self.happens(0.5) => Observed::Slight { missed: self.between(0.0, 0.5) },
            3 => Observed::Unreported { missed: self.between(0.0, 0.5) },
            _ => Observed::Grade(grade),
        };
        Observation {
            piece,
            observed,
            leak: self.maker(),
            shared: self.links(0..shared),
            root: self.links(1..roots),
            own: self.links(1..own),
        }
    }

    /// A network with at most these many shared causes, places and branches; small enough to be enumerated.
    pub(crate) fn network(&mut self, most_shared: usize, most_sites: usize, most_branches: usize) -> Network {
        let (shared, sites) = (1 + self.below(most_shared), 1 + self.below(most_sites));
        self.network_of(shared, sites, most_branches, 4)
    }

    /// A network with so many shared causes and places, and fewer than so many observations at each place or branch. They
    /// belong to three pieces of evidence.
    pub(crate) fn network_of(
        &mut self,
        shared: usize,
        sites: usize,
        most_branches: usize,
        observations: usize,
    ) -> Network {
        let mut piece = 0;
        let sites = (0..sites)
            .map(|_| {
                let states = 1 + self.below(3);
                let mut observations = |dice: &mut Self, roots: usize, own: usize| -> Vec<Observation> {
                    (0..dice.below(observations))
                        .map(|_| {
                            piece += 1;
                            dice.observation(piece % 3, shared, roots, own)
                        })
                        .collect()
                };
                Site {
                    observations: observations(self, 0, states),
                    branches: (0..self.below(most_branches + 1))
                        .map(|_| {
                            let own = 1 + self.below(3);
                            let given = (0..states).map(|_| self.given(own)).collect();
                            Branch { observations: observations(self, states, own), states: given }
                        })
                        .collect(),
                    states: self.shares(states),
                }
            })
            .collect();
        Network { priors: (0..shared).map(|_| self.between(0.01, 0.9)).collect(), sites }
    }
}
