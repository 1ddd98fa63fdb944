//! What a network is made of.

use serde::Serialize;

use super::observation::Observation;
use super::site::Site;

/// The most shared causes over which the sum is taken: 2¹³ subsets are still quick and small.
pub const MAX_SHARED: usize = 13;

/// Causes, places and what was seen.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Network {
    /// The prior probability of each cause of the whole engine, 0 to 1.
    pub priors: Vec<f64>,
    /// The places.
    pub sites: Vec<Site>,
}

/// A network that can't be solved: more than [`MAX_SHARED`] shared causes, an observation that the leak can't
/// make, a maker that is certain, a prior outside 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("Nothing in the model may be certain or impossible beforehand, and it bears no more than {MAX_SHARED} causes.")]
pub struct Unsound;

impl Network {
    pub(super) fn check(&self) -> Result<(), Unsound> {
        let chance = |p: &f64| *p >= 0.0 && *p <= 1.0;
        let states = |states: &[f64]| states.first().is_some_and(|nothing| *nothing > 0.0) && states.iter().all(chance);
        let sound = self.priors.len() <= MAX_SHARED
            && self.priors.iter().all(chance)
            && self.sites.iter().all(|site| {
                states(&site.states)
                    && site.branches.iter().all(|branch| {
                        branch.states.len() == site.states.len()
                            && branch.states.iter().all(|given| states(given) && given.len() == branch.len())
                    })
                    && site.all_observations().all(Observation::is_open)
                    && site
                        .all_observations()
                        .all(|observation| observation.shared.iter().all(|(by, _)| *by < self.priors.len()))
            });
        if sound { Ok(()) } else { Err(Unsound) }
    }
}
