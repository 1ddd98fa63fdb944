//! The catalogue laid over one engine: which states each place can have, and who makes which finding.

use super::catalogue::{self, Along, Cause, Mirror, Sign, Symptom};
use super::made::Made;
use super::naming::Naming;
use super::network::{CauseSeat, Maker, Observation, Observed};
use super::past::shifted_prior;
use super::pattern::Pattern;
use super::place::{Place, places};
use crate::engine::{Engine, Part};
use crate::job::Job;
use crate::wear::ZoneMap;

/// The model of one engine.
#[derive(Debug)]
pub struct Model<'a> {
    engine: &'a Engine,
    naming: &'a Naming,
    /// The causes of the whole engine, in the order of the catalogue.
    pub shared: Vec<&'static Cause>,
    /// The prior probability of each.
    pub priors: Vec<f64>,
    /// The places, each with what hangs on it.
    pub sites: Vec<SiteStates>,
}

/// A place with those that hang on it, as a site of the network has them.
#[derive(Debug, Clone, PartialEq)]
pub struct SiteStates {
    /// The place itself.
    pub root: PlaceStates,
    /// What hangs on it.
    pub branches: Vec<PlaceStates>,
}

/// A place with the states that it can have.
#[derive(Debug, Clone, PartialEq)]
pub struct PlaceStates {
    /// The place.
    pub place: Place,
    /// Its states. The first is *nothing wrong*.
    pub states: Vec<State>,
}

/// A state of a place.
#[derive(Debug, Clone, Copy)]
pub struct State {
    /// What is wrong; nothing in the first state.
    pub cause: Option<&'static Cause>,
    /// In which of its forms.
    pub form: Mirror,
    /// How likely beforehand.
    pub prior: f64,
}

impl PartialEq for State {
    fn eq(&self, other: &Self) -> bool {
        let id = |state: &Self| state.cause.map(|cause| cause.id);
        id(self) == id(other) && self.form == other.form && self.prior == other.prior
    }
}

impl PlaceStates {
    /// The priors of the states for each state of the place on which this one hangs. A bearing has one thing wrong with
    /// it at most: where its crankpin is at fault, nothing else is wrong with the bearing, though something may be with
    /// the cylinder above.
    pub fn given(&self, root: &Self) -> Vec<Vec<f64>> {
        let alone: Vec<f64> = self.states.iter().map(|state| state.prior).collect();
        let beside = |state: &State| state.cause.is_none_or(|cause| !cause.is_of_bearing());
        let mut kept: Vec<f64> =
            self.states.iter().map(|state| if beside(state) { state.prior } else { 0.0 }).collect();
        let left: f64 = kept.iter().skip(1).sum();
        if let Some(nothing) = kept.first_mut() {
            *nothing = 1.0 - left;
        }
        root.states.iter().map(|state| if state.cause.is_some() { kept.clone() } else { alone.clone() }).collect()
    }
}

/// All states of a place together are never likelier than this.
const MOST_WRONG: f64 = 0.9;

impl<'a> Model<'a> {
    /// Of an engine, with the priors shifted by what is known of its past.
    pub fn new(engine: &'a Engine, job: &Job) -> Self {
        Self::named(engine, job, Naming::ours())
    }

    /// The same where damage is noticed and named in a way of its own.
    pub fn named(engine: &'a Engine, job: &Job, naming: &'a Naming) -> Self {
        let shared: Vec<&Cause> = catalogue::ALL.into_iter().filter(|cause| cause.is_shared()).collect();
        let priors = shared.iter().map(|cause| shifted_prior(cause, job)).collect();
        let layout = places(engine);
        let everywhere = || layout.iter().flat_map(|(root, hanging)| std::iter::once(root).chain(hanging));
        let states_of = |place: Place| {
            let mut states = vec![State { cause: None, form: Mirror::None, prior: 1.0 }];
            let here = |cause: &&&Cause| cause.reach.contains(&place.kind()) && (cause.fits)(engine.arrangement());
            for cause in catalogue::ALL.iter().filter(here) {
                let chances = everywhere().filter(|place| cause.reach.contains(&place.kind())).count().max(1);
                let forms = cause.forms();
                let prior = shifted_prior(cause, job) / (chances * forms.len()) as f64;
                states.extend(forms.iter().map(|form| State { cause: Some(cause), form: *form, prior }));
            }
            let wrong: f64 = states.iter().skip(1).map(|state| state.prior).sum();
            let scale = if wrong > MOST_WRONG { MOST_WRONG / wrong } else { 1.0 };
            states.iter_mut().skip(1).for_each(|state| state.prior *= scale);
            if let Some(nothing) = states.first_mut() {
                nothing.prior = 1.0 - wrong * scale;
            }
            PlaceStates { place, states }
        };
        let sites = layout.iter().map(|(root, hanging)| SiteStates {
            root: states_of(*root),
            branches: hanging.iter().map(|place| states_of(*place)).collect(),
        });
        Self { engine, naming, shared, priors, sites: sites.collect() }
    }

    /// The engine.
    pub fn engine(&self) -> &'a Engine {
        self.engine
    }

    /// Where the place of a part stands.
    pub fn seat(&self, part: Part) -> Option<CauseSeat> {
        let place = Place::of(part);
        self.sites.iter().enumerate().find_map(|(site, SiteStates { root, branches })| {
            if root.place == place {
                return Some(CauseSeat { site, branch: None });
            }
            let branch = branches.iter().position(|branch| branch.place == place)?;
            Some(CauseSeat { site, branch: Some(branch) })
        })
    }

    /// Where every place stands.
    pub fn seats(&self) -> impl Iterator<Item = (CauseSeat, &PlaceStates)> {
        self.sites.iter().enumerate().flat_map(|(site, SiteStates { root, branches })| {
            let at = move |(n, branch)| (CauseSeat { site, branch: Some(n) }, branch);
            std::iter::once((CauseSeat { site, branch: None }, root)).chain(branches.iter().enumerate().map(at))
        })
    }

    /// The causes of one place that this engine can have.
    pub fn local_causes(&self) -> impl Iterator<Item = &'static Cause> {
        let arrangement = self.engine.arrangement();
        catalogue::ALL.into_iter().filter(move |cause| !cause.is_shared() && (cause.fits)(arrangement))
    }

    /// Whether a state of a place is this cause, in whatever form.
    pub fn is(&self, cause: &Cause, seat: CauseSeat, state: usize) -> bool {
        let state = self.at(seat).and_then(|place| place.states.get(state));
        state.and_then(|state| state.cause).is_some_and(|other| other.id == cause.id)
    }

    /// The place that stands at a seat.
    pub fn at(&self, CauseSeat { site, branch }: CauseSeat) -> Option<&PlaceStates> {
        let SiteStates { root, branches } = self.sites.get(site)?;
        branch.map_or(Some(root), |branch| branches.get(branch))
    }

    /// An observation with all that can make it, as far as a pattern of zones is concerned; none if no cause has a word
    /// about it.
    pub fn observation(
        &self,
        part: Part,
        symptom: Symptom,
        pattern: Option<Pattern>,
        observed: Observed,
    ) -> Option<Observation> {
        let map = part.kind.row().zones;
        let maker = |made: Made<'_>| Maker {
            grades: made.grades(),
            share: pattern.map_or(1.0, |pattern| made.share(map, pattern)),
        };
        let leak = Maker {
            grades: catalogue::leak(part.kind, symptom),
            share: pattern.map_or(1.0, |pattern| catalogue::leak_share(map, pattern)),
        };
        let shared: Vec<(usize, Maker)> = self
            .shared
            .iter()
            .enumerate()
            .filter_map(|(n, cause)| Some((n, maker(self.presence(cause, Mirror::None, part, symptom)?))))
            .collect();
        let CauseSeat { site, branch } = self.seat(part)?;
        let SiteStates { root, branches } = self.sites.get(site)?;
        let of = |place: &PlaceStates| -> Vec<(usize, Maker)> {
            let link =
                |(n, state): (usize, &State)| Some((n, maker(self.presence(state.cause?, state.form, part, symptom)?)));
            place.states.iter().enumerate().filter_map(link).collect()
        };
        let (root, own) = match branch {
            None => (vec![], of(root)),
            Some(branch) => (of(root), of(branches.get(branch)?)),
        };
        if shared.is_empty() && root.is_empty() && own.is_empty() {
            return None;
        }
        Some(Observation { piece: 0, observed, leak, shared, root, own })
    }

    /// What a cause, in one of its forms, makes of a symptom on a part: of a tag, by all damage that is called so.
    pub fn presence(&self, cause: &'static Cause, form: Mirror, part: Part, symptom: Symptom) -> Option<Made<'_>> {
        let arrangement = self.engine.arrangement();
        let along = || Along {
            centrality: part.at.main().map_or(0.0, |main| arrangement.centrality(main)),
            remoteness: arrangement.remoteness(part.at),
        };
        let on = |sign: &'static Sign| sign.on(part, sign.symptom, &along, form);
        let Symptom::Seen(name) = symptom else {
            // Most signs are of something else.
            let of_symptom = cause.signs.iter().filter(|sign| sign.symptom == symptom);
            return of_symptom.filter_map(on).next().map(Made::measured);
        };
        let mut made: Option<Made<'_>> = None;
        for (sign, called) in self.naming.signs(part.kind, name, cause) {
            let Some(presence) = on(sign) else { continue };
            let of_sign = self.naming.graded(presence.grades().map(|chance| chance * called));
            made = Some(match made {
                None => Made::seen(presence, of_sign),
                Some(made) => made.or(presence, of_sign),
            });
        }
        made
    }

    /// The patterns that can be marked on a part.
    pub fn patterns(part: Part) -> (&'static [Pattern], ZoneMap) {
        let map = part.kind.row().zones;
        (Pattern::all(map), map)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Arrangement;

    #[test]
    fn states_of_a_place_sum_to_one_and_causes_to_their_prior() {
        for arrangement in [Arrangement::vee(8), Arrangement::inline(4), Arrangement::inline(1)] {
            let engine = Engine::new(arrangement).unwrap();
            let model = Model::new(&engine, &Job::default());
            for (_, place) in model.seats() {
                let sum: f64 = place.states.iter().map(|state| state.prior).sum();
                assert!((sum - 1.0).abs() < 1e-12, "{:?}", place.place);
            }
            for cause in catalogue::ALL.iter().filter(|cause| !cause.is_shared()) {
                let states = model.seats().flat_map(|(_, place)| &place.states);
                let own = states.filter(|state| state.cause.is_some_and(|other| other.id == cause.id));
                let sum: f64 = own.map(|state| state.prior).sum();
                let expected = if (cause.fits)(engine.arrangement()) { cause.prior } else { 0.0 };
                assert!((sum - expected).abs() < 1e-12, "{}", cause.id);
            }
        }
    }
}
