//! What speaks for and against each cause: what would be believed of it had a piece of evidence not been seen.

use rayon::prelude::*;

use super::catalogue::{Along, Cause, Mirror, Symptom};
use super::explained::{ALONE_FROM, Explained, OTHERS_BELOW, Reason, SMALLEST_WEIGHT, weight};
use super::gather::Gathered;
use super::local::Local;
use super::model::Model;
use super::network::{Belief, Solution};
use super::report::Unexplained;
use super::topic::{Note, Noted, Topic, parts, words};
use super::unexplained::unexplained;
use crate::engine::{Engine, Part};
use crate::job::Job;

/// What was seen of one topic, and what it weighs for each shared cause.
struct Weighed {
    topic: Topic,
    words: String,
    parts: Vec<Part>,
    weights: Vec<f64>,
}

/// Every cause with its probability and its reasons, in the order of the catalogue; and what fits none of them.
pub(super) fn explain(
    model: &Model<'_>,
    gathered: &Gathered,
    solution: &Solution<'_>,
    job: &Job,
) -> (Vec<Explained>, Vec<Unexplained>) {
    let engine = model.engine();
    let beliefs = solution.shared();
    let topics = gathered.topics();
    let (weighed, (of_places, odd)) = rayon::join(
        || topics.par_iter().map(|topic| weigh(topic, solution, &beliefs, engine)).collect::<Vec<Weighed>>(),
        || {
            let local = Local::of(model, solution);
            rayon::join(
                || local.explained(model, gathered, solution, job),
                || unexplained(model, gathered, solution, &topics, &local),
            )
        },
    );
    let mut all = Vec::new();
    for (number, (cause, belief)) in model.shared.iter().zip(&beliefs).enumerate() {
        let mut explained = Explained::new(cause, belief.probability());
        for Weighed { topic, words, parts, weights } in &weighed {
            let own = weights.get(number).copied().unwrap_or(0.0);
            if own.abs() < SMALLEST_WEIGHT {
                continue;
            }
            // Where another cause explains it better it says little of this one; it does not speak against what makes it.
            if own < 0.0 && topics.get(topic).is_some_and(|noted| is_own_sign(cause, noted)) {
                continue;
            }
            let others = weights.iter().enumerate().filter(|(n, _)| *n != number).map(|(_, weight)| *weight);
            let alone = own >= ALONE_FROM && others.fold(0.0, f64::max) < OTHERS_BELOW;
            let (words, parts) = (words.clone(), parts.clone());
            explained.weigh(Reason { topic: Some(*topic), words, parts, weight: own, alone });
        }
        explained.past(job);
        all.push(explained.sorted());
    }
    all.extend(of_places);
    keep_what_is_explained_alone(&mut all);
    (all, odd)
}

/// What a topic weighs for each of the shared causes.
fn weigh(
    (topic, Noted { pieces, notes }): (&Topic, &Noted),
    solution: &Solution<'_>,
    beliefs: &[Belief],
    engine: &Engine,
) -> Weighed {
    let without = solution.shared_without(pieces);
    let weights = beliefs.iter().zip(&without).map(|(all, without)| weight(*all, *without)).collect();
    Weighed { topic: *topic, words: words(*topic, notes, engine), parts: parts(notes), weights }
}

/// Whether a cause makes just this, there: all that was found of it, where it lies.
fn is_own_sign(cause: &Cause, noted: &Noted) -> bool {
    let makes = |note: &Note| {
        let Some(symptom @ Symptom::Seen(_)) = note.symptom.filter(|_| note.grade.is_some()) else { return false };
        let along = || Along { centrality: 1.0, remoteness: 1.0 };
        let signs = cause.signs.iter().filter_map(|sign| sign.on(note.part, symptom, &along, Mirror::None));
        signs.into_iter().any(|made| note.pattern.is_none_or(|pattern| made.shows(pattern)))
    };
    noted.notes.iter().all(makes)
}

/// What speaks for another cause too is not explained by one alone.
fn keep_what_is_explained_alone(all: &mut [Explained]) {
    let for_causes: Vec<(&str, Topic, Vec<Part>)> = all
        .iter()
        .flat_map(|explained| explained.speaks_for.iter().map(|reason| (explained.cause.id, reason)))
        .filter(|(_, reason)| reason.weight >= OTHERS_BELOW)
        .filter_map(|(id, reason)| Some((id, reason.topic?, reason.parts.clone())))
        .collect();
    for Explained { cause, speaks_for, .. } in all {
        for own in speaks_for.iter_mut().filter(|own| own.alone) {
            let is_same = |(id, topic, parts): &(&str, Topic, Vec<Part>)| {
                *id != cause.id
                    && own.topic.is_some_and(|own| own.is_alike(*topic))
                    && own.parts.iter().any(|part| parts.contains(part))
            };
            own.alone = !for_causes.iter().any(is_same);
        }
    }
}
