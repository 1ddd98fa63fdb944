//! The causes of one place: what is believed of every place, and why.

use std::collections::BTreeMap;

use rayon::prelude::*;

use super::catalogue::{Cause, Symptom};
use super::explained::{ALONE_FROM, Explained, Reason, weight};
use super::gather::Gathered;
use super::model::Model;
use super::network::{Belief, CauseSeat, Observation, Solution};
use super::place::Place;
use super::report::PlaceView;
use super::topic::{Note, Topic, parts, words};
use crate::engine::Part;
use crate::job::Job;

/// A place is listed with its cause from this probability on, and named with it from that.
const PLACE_LISTED_FROM: f64 = 0.05;
const PLACE_NAMED_FROM: f64 = 0.25;
/// Causes of one place are explained from this probability on, and no more of them than this.
const EXPLAINED_FROM: f64 = 0.10;
const PLACES_EXPLAINED: usize = 6;

/// A cause of one place: its probability at any place, and at each.
type Kind = (&'static Cause, f64, Vec<(CauseSeat, f64)>);

/// What is believed of every place.
pub(super) struct Local {
    /// The weight of each state, by place.
    states: BTreeMap<CauseSeat, Vec<f64>>,
}

impl Local {
    pub(super) fn of(model: &Model<'_>, solution: &Solution<'_>) -> Self {
        let seats: Vec<CauseSeat> = model.seats().map(|(seat, _)| seat).collect();
        Self { states: seats.into_par_iter().map(|seat| (seat, solution.states(seat))).collect() }
    }

    /// Every cause of one place with its reasons, likeliest first.
    pub(super) fn explained(
        &self,
        model: &Model<'_>,
        gathered: &Gathered,
        solution: &Solution<'_>,
        job: &Job,
    ) -> Vec<Explained> {
        let causes: Vec<&'static Cause> = model.local_causes().collect();
        let mut kinds: Vec<Kind> = causes
            .into_par_iter()
            .map(|cause| {
                let mut places: Vec<(CauseSeat, f64)> = model
                    .seats()
                    .filter(|(_, at)| cause.reach.contains(&at.place.kind()))
                    .map(|(seat, _)| (seat, self.belief(model, cause, seat).probability()))
                    .collect();
                places.sort_by(|a, b| b.1.total_cmp(&a.1).then_with(|| a.0.cmp(&b.0)));
                let found = |seat, state| model.is(cause, seat, state);
                (cause, solution.anywhere(&found), places)
            })
            .collect();
        kinds.sort_by(|a, b| b.1.total_cmp(&a.1).then_with(|| a.0.id.cmp(b.0.id)));
        kinds
            .into_par_iter()
            .enumerate()
            .map(|(rank, (cause, probability, places))| {
                let mut explained = Explained::new(cause, probability);
                if rank < PLACES_EXPLAINED
                    && probability >= EXPLAINED_FROM
                    && let Some((seat, _)) = places.first()
                {
                    self.reasons(&mut explained, *seat, model, gathered, solution);
                }
                explained.past(job);
                let listed = places.iter().filter(|(_, probability)| *probability >= PLACE_LISTED_FROM);
                explained.places = listed.filter_map(|(seat, p)| place_view(model, gathered, *seat, *p)).collect();
                explained.sorted()
            })
            .collect()
    }

    /// The probability that a place is in a state.
    pub(super) fn probability(&self, seat: CauseSeat, state: usize) -> f64 {
        let Some(weights) = self.states.get(&seat) else { return 0.0 };
        weights.get(state).map_or(0.0, |weight| weight / weights.iter().sum::<f64>())
    }

    fn belief(&self, model: &Model<'_>, cause: &Cause, seat: CauseSeat) -> Belief {
        let is = |state: usize| model.is(cause, seat, state);
        self.states.get(&seat).map_or(Belief::of(0.0), |weights| Belief::of_states(weights, &is))
    }

    /// What speaks for and against a cause at one place: each thing that it makes and that was seen or missed there, all
    /// else that was found there, and all that was seen at other places like it.
    fn reasons(
        &self,
        explained: &mut Explained,
        seat: CauseSeat,
        model: &Model<'_>,
        gathered: &Gathered,
        solution: &Solution<'_>,
    ) {
        let cause = explained.cause;
        let is = |state: usize| model.is(cause, seat, state);
        let (Some(here), Some(hypothesis)) = (model.at(seat), solution.hypothesis(seat, &is, &[])) else { return };
        let all = hypothesis.belief();
        let without = |notes: &[(usize, Note)]| {
            hypothesis.without(&|seen: &Observation| notes.iter().any(|(piece, _)| *piece == seen.piece))
        };
        let notes = gathered.notes.get(seat.site).map(Vec::as_slice).unwrap_or_default();
        let (own, other): (Vec<_>, Vec<_>) = notes.iter().copied().enumerate().partition(|(_, note)| {
            let makes =
                |symptom| cause.forms().iter().any(|form| model.presence(cause, *form, note.part, symptom).is_some());
            match note.symptom {
                Some(symptom) => makes(symptom),
                None => note.part.kind.row().tags.iter().any(|tag| makes(Symptom::Seen(*tag))),
            }
        });
        let mut groups: BTreeMap<(Part, Topic), Vec<(usize, Note)>> = BTreeMap::new();
        for (piece, note) in own {
            // What was not seen on a part is told together.
            let topic = match note.topic {
                Topic::NotEven | Topic::NothingElse => Topic::Sound(note.part.kind, note.part.at.half()),
                topic => topic,
            };
            groups.entry((note.part, topic)).or_default().push((piece, note));
        }
        for ((part, topic), notes) in &groups {
            let weight = weight(all, without(notes));
            let notes: Vec<Note> = notes.iter().map(|(_, note)| *note).collect();
            let mut told = words(*topic, &notes, model.engine());
            if notes.iter().any(|note| matches!(note.topic, Topic::NotEven | Topic::NothingElse)) {
                told = format!("nothing else of its kind noted on {}", model.engine().label(*part).to_lowercase());
            }
            let alone = weight >= ALONE_FROM && topic.is_found();
            explained.weigh(Reason { topic: Some(*topic), words: told, parts: vec![*part], weight, alone });
        }
        // What hangs on a crankpin is there too; what hangs beside a rod is elsewhere.
        let there = |note: &Note| seat.branch.is_none() || Place::of(note.part) == here.place;
        let found = |note: &Note| there(note) && note.topic.is_found();
        let other: Vec<_> = other.into_iter().filter(|(_, note)| found(note)).collect();
        if !other.is_empty() {
            let weight = weight(all, without(&other));
            let other: Vec<Note> = other.iter().map(|(_, note)| *note).collect();
            let words = "what else was found there, of which this cause makes nothing".into();
            explained.weigh(Reason { topic: None, words, parts: parts(&other), weight, alone: false });
        }
        let kind = here.place.kind();
        let elsewhere: Vec<usize> = model
            .seats()
            .filter(|(other, at)| other.site != seat.site && at.place.kind() == kind)
            .map(|(other, _)| other.site)
            .filter(|site| gathered.notes.get(*site).is_some_and(|notes| !notes.is_empty()))
            .collect();
        if !elsewhere.is_empty()
            && let Some(forgetting) = solution.hypothesis(seat, &is, &elsewhere)
        {
            let weight = weight(all, forgetting.belief());
            let seen = elsewhere.iter().flat_map(|site| gathered.notes.get(*site)).flatten();
            let told: Vec<Note> = seen.copied().collect();
            let words = "what was seen at the other places like it".into();
            explained.weigh(Reason { topic: None, words, parts: parts(&told), weight, alone: false });
        }
    }
}

fn place_view(model: &Model<'_>, gathered: &Gathered, seat: CauseSeat, probability: f64) -> Option<PlaceView> {
    let place = model.at(seat)?.place;
    let notes: Vec<Note> =
        gathered.notes.get(seat.site)?.iter().filter(|note| Place::of(note.part) == place).copied().collect();
    Some(PlaceView {
        label: place.label(model.engine().arrangement()),
        probability,
        named: probability >= PLACE_NAMED_FROM,
        parts: parts(&notes),
    })
}
