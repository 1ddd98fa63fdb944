//! What speaks for and against each cause: what would be believed of it had a piece of evidence not been seen.

use std::collections::BTreeMap;

use rayon::prelude::*;

use super::catalogue::{self, Cause};
use super::evidence::{Evidence as Gathered, Note, Noted, Topic, words};
use super::model::{Model, Seat, history_factors};
use super::network::{Belief, Finding, Maker, Observed, Solution};
use super::place::Place;
use super::scaled::binary_log;
use super::told::PLACE_NAMED_FROM;
use super::{CauseView, Evidence, PlaceView, Unexplained, view};
use crate::engine::{Arrangement, Part};
use crate::job::Job;
use crate::wear::Grade;

/// What is told of one cause.
#[derive(Debug, Default)]
pub(super) struct Explained {
    pub(super) places: Vec<PlaceView>,
    pub(super) speaks_for: Vec<Evidence>,
    pub(super) speaks_against: Vec<Evidence>,
    pub(super) alone: Vec<Evidence>,
}

/// Weights smaller than this (half a doubling of the odds) are not worth a line.
const SMALLEST_WEIGHT: f64 = 0.5;
/// A cause explains alone what makes it at least eight times likelier, and no other cause twice.
const ALONE_FROM: f64 = 3.0;
const OTHERS_BELOW: f64 = 1.0;
/// A place is listed with its cause from this probability on.
const PLACE_LISTED_FROM: f64 = 0.05;
/// Causes of one place are explained from this probability on, and no more of them than this.
const EXPLAINED_FROM: f64 = 0.10;
const PLACES_EXPLAINED: usize = 6;
/// A finding fits no cause if it is likelier than not that none made it.
const UNEXPLAINED_FROM: f64 = 0.5;

/// What was seen of one topic, and what it weighs for each shared cause.
struct Weighed {
    words: String,
    parts: Vec<Part>,
    weights: Vec<f64>,
}

/// Every cause with its probability and its reasons, in the order of the catalogue; and what fits none of them.
pub(super) fn explain(
    model: &Model<'_>,
    evidence: &Gathered,
    solution: &Solution<'_>,
    job: &Job,
) -> (Vec<CauseView>, Vec<Unexplained>) {
    let arrangement = model.engine().arrangement();
    let beliefs = solution.shared();
    let topics = evidence.topics();
    let (weighed, (of_places, odd)) = rayon::join(
        || topics.par_iter().map(|topic| weigh(topic, solution, &beliefs, arrangement)).collect::<Vec<Weighed>>(),
        || {
            let local = Local::of(model, solution);
            rayon::join(
                || local.views(model, evidence, solution, job),
                || unexplained(model, evidence, solution, &topics, &local),
            )
        },
    );
    let mut views = Vec::new();
    for (number, (cause, belief)) in model.shared.iter().zip(&beliefs).enumerate() {
        let mut explained = Explained::default();
        for Weighed { words, parts, weights } in &weighed {
            let own = weights.get(number).copied().unwrap_or(0.0);
            if own.abs() < SMALLEST_WEIGHT {
                continue;
            }
            let told = Evidence::new(words.clone(), parts.clone(), own);
            let others = weights.iter().enumerate().filter(|(n, _)| *n != number).map(|(_, weight)| *weight);
            if own >= ALONE_FROM && others.fold(0.0, f64::max) < OTHERS_BELOW {
                explained.alone.push(told.clone());
            }
            explained.weigh(told);
        }
        explained.past(cause, job);
        views.push(view(cause, belief.probability(), explained.sorted()));
    }
    views.extend(of_places);
    keep_what_is_explained_alone(&mut views);
    (views, odd)
}

/// What a topic weighs for each of the shared causes.
fn weigh(
    (topic, (places, notes)): (&Topic, &Noted),
    solution: &Solution<'_>,
    beliefs: &[Belief],
    arrangement: &Arrangement,
) -> Weighed {
    let without = solution.shared_without(places);
    let weights = beliefs.iter().zip(&without).map(|(all, without)| weight(*all, *without)).collect();
    Weighed { words: words(*topic, notes, arrangement), parts: parts(notes), weights }
}

/// Drops from what a cause explains alone all that speaks for another cause too.
fn keep_what_is_explained_alone(views: &mut [CauseView]) {
    let about = |evidence: &Evidence| {
        let what = evidence.words.split(',').next().unwrap_or_default().to_owned();
        (what, evidence.parts.clone())
    };
    let for_causes: Vec<(String, (String, Vec<Part>))> = views
        .iter()
        .flat_map(|view| view.evidence_for.iter().map(|evidence| (view.id.clone(), evidence)))
        .filter(|(_, evidence)| evidence.weight >= OTHERS_BELOW)
        .map(|(id, evidence)| (id, about(evidence)))
        .collect();
    for view in views {
        let id = view.id.clone();
        view.explains_alone.retain(|own| {
            let (what, parts) = about(own);
            let same = |(other, (others_what, others_parts)): &(String, (String, Vec<Part>))| {
                *other != id && what == *others_what && parts.iter().any(|part| others_parts.contains(part))
            };
            !for_causes.iter().any(same)
        });
    }
}

/// A cause of one place: its probability at any place, and at each.
type Kind = (&'static Cause, f64, Vec<(Seat, f64)>);

/// What is believed of every place.
struct Local {
    /// The weight of each state, by place.
    states: BTreeMap<Seat, Vec<f64>>,
}

impl Local {
    fn of(model: &Model<'_>, solution: &Solution<'_>) -> Self {
        let seats: Vec<Seat> = model.seats().map(|(seat, _)| seat).collect();
        Self { states: seats.into_par_iter().map(|seat| (seat, solution.states(seat.0, seat.1))).collect() }
    }

    fn views(&self, model: &Model<'_>, evidence: &Gathered, solution: &Solution<'_>, job: &Job) -> Vec<CauseView> {
        let causes: Vec<&'static Cause> = model.local_causes().collect();
        let mut kinds: Vec<Kind> = causes
            .into_par_iter()
            .map(|cause| {
                let mut places: Vec<(Seat, f64)> = model
                    .seats()
                    .filter(|(_, spot)| cause.reach.contains(&spot.place.kind()))
                    .map(|(seat, _)| (seat, self.belief(model, cause, seat).probability()))
                    .collect();
                places.sort_by(|a, b| b.1.total_cmp(&a.1).then_with(|| a.0.cmp(&b.0)));
                let found = |site, branch, state| model.is(cause, (site, branch), state);
                (cause, solution.anywhere(&found), places)
            })
            .collect();
        kinds.sort_by(|a, b| b.1.total_cmp(&a.1).then_with(|| a.0.id.cmp(b.0.id)));
        kinds
            .into_par_iter()
            .enumerate()
            .map(|(rank, (cause, probability, places))| {
                let mut explained = Explained::default();
                if rank < PLACES_EXPLAINED
                    && probability >= EXPLAINED_FROM
                    && let Some((seat, _)) = places.first()
                {
                    self.reasons(&mut explained, cause, *seat, model, evidence, solution);
                }
                explained.past(cause, job);
                let listed = places.iter().filter(|(_, probability)| *probability >= PLACE_LISTED_FROM);
                explained.places = listed.filter_map(|(seat, p)| place_view(model, evidence, *seat, *p)).collect();
                view(cause, probability, explained.sorted())
            })
            .collect()
    }

    fn probability(&self, seat: Seat, state: usize) -> f64 {
        let Some(weights) = self.states.get(&seat) else { return 0.0 };
        weights.get(state).map_or(0.0, |weight| weight / weights.iter().sum::<f64>())
    }

    fn belief(&self, model: &Model<'_>, cause: &Cause, seat: Seat) -> Belief {
        let is = |state: usize| model.is(cause, seat, state);
        self.states.get(&seat).map_or(Belief::of(0.0), |weights| Belief::of_states(weights, &is))
    }

    /// What speaks for and against a cause at one place: each thing that it makes and that was seen or missed there, all
    /// else that was found there, and all that was seen at other places like it.
    fn reasons(
        &self,
        explained: &mut Explained,
        cause: &'static Cause,
        seat: Seat,
        model: &Model<'_>,
        evidence: &Gathered,
        solution: &Solution<'_>,
    ) {
        let is = |state: usize| model.is(cause, seat, state);
        let (Some(spot), Some(place)) = (model.spot(seat), solution.at(seat, &is, &[])) else { return };
        let all = place.belief();
        let without = |notes: &[(usize, Note)]| {
            place.without(&|finding: &Finding| notes.iter().any(|(piece, _)| *piece == finding.piece))
        };
        let notes = evidence.notes.get(seat.0).map(Vec::as_slice).unwrap_or_default();
        let (own, other): (Vec<_>, Vec<_>) = notes.iter().copied().enumerate().partition(|(_, note)| {
            cause.forms().iter().any(|form| model.presence(cause, *form, note.part, note.symptom).is_some())
        });
        let mut groups: BTreeMap<(Part, Topic), Vec<(usize, Note)>> = BTreeMap::new();
        for (piece, note) in own {
            // What was not seen on a part is told together.
            let topic = match note.topic {
                Topic::NotAmong(_) => Topic::Sound(note.part.kind, note.part.at.half()),
                topic => topic,
            };
            groups.entry((note.part, topic)).or_default().push((piece, note));
        }
        for ((part, topic), notes) in &groups {
            let weight = weight(all, without(notes));
            let notes: Vec<Note> = notes.iter().map(|(_, note)| *note).collect();
            let mut told = words(*topic, &notes, model.engine().arrangement());
            if notes.iter().any(|note| matches!(note.topic, Topic::NotAmong(_))) {
                told = format!(
                    "nothing else of its kind noted on {}",
                    part.label(model.engine().arrangement()).to_lowercase()
                );
            }
            let told = Evidence::new(told, vec![*part], weight);
            if weight >= ALONE_FROM && matches!(topic, Topic::Seen(..) | Topic::Beyond(..)) {
                explained.alone.push(told.clone());
            }
            explained.weigh(told);
        }
        // What hangs on a crankpin is there too; what hangs beside a rod is elsewhere.
        let there = |note: &Note| seat.1.is_none() || Place::of(note.part) == spot.place;
        let found = |note: &Note| there(note) && matches!(note.topic, Topic::Seen(..) | Topic::Beyond(..));
        let other: Vec<_> = other.into_iter().filter(|(_, note)| found(note)).collect();
        if !other.is_empty() {
            let weight = weight(all, without(&other));
            let other: Vec<Note> = other.iter().map(|(_, note)| *note).collect();
            let words = "what else was found there, of which this cause makes nothing".into();
            explained.weigh(Evidence::new(words, parts(&other), weight));
        }
        let kind = spot.place.kind();
        let elsewhere: Vec<usize> = model
            .seats()
            .filter(|(other, spot)| other.0 != seat.0 && spot.place.kind() == kind)
            .map(|((site, _), _)| site)
            .filter(|site| evidence.notes.get(*site).is_some_and(|notes| !notes.is_empty()))
            .collect();
        if !elsewhere.is_empty()
            && let Some(forgetting) = solution.at(seat, &is, &elsewhere)
        {
            let weight = weight(all, forgetting.belief());
            let seen = elsewhere.iter().flat_map(|site| evidence.notes.get(*site)).flatten();
            let told: Vec<Note> = seen.copied().collect();
            let words = "what was seen at the other places like it".into();
            explained.weigh(Evidence::new(words, parts(&told), weight));
        }
    }
}

/// What the leak is likelier than not to have made, of what is worth a word: grade 2 or more.
fn unexplained(
    model: &Model<'_>,
    evidence: &Gathered,
    solution: &Solution<'_>,
    topics: &BTreeMap<Topic, Noted>,
    local: &Local,
) -> Vec<Unexplained> {
    let beliefs = solution.shared();
    let mut odd: BTreeMap<Topic, Vec<(Note, f64)>> = BTreeMap::new();
    for note in evidence.unspoken.iter().filter(|note| note.symptom != catalogue::EVEN) {
        odd.entry(note.topic).or_default().push((*note, 1.0));
    }
    for (topic, (_, notes)) in topics {
        if !matches!(topic, Topic::Seen(..)) {
            continue;
        }
        let worth = |note: &&Note| note.symptom != catalogue::EVEN && note.grade >= Some(Grade::TWO);
        for note in notes.iter().filter(worth) {
            let chance = by_leak(model, solution, note, &beliefs, local).unwrap_or(0.0);
            if chance >= UNEXPLAINED_FROM {
                odd.entry(*topic).or_default().push((*note, chance));
            }
        }
    }
    let mut all: Vec<(Option<Grade>, Unexplained)> = odd
        .into_iter()
        .map(|(topic, odd)| {
            let notes: Vec<Note> = odd.iter().map(|(note, _)| *note).collect();
            let told = Unexplained {
                words: words(topic, &notes, model.engine().arrangement()),
                parts: parts(&notes),
                probability: odd.iter().map(|(_, chance)| chance).sum::<f64>() / odd.len() as f64,
            };
            (notes.iter().filter_map(|note| note.grade).max(), told)
        })
        .collect();
    all.sort_by_key(|(grade, _)| std::cmp::Reverse(*grade));
    all.into_iter().map(|(_, odd)| odd).collect()
}

/// The probability that the leak made a finding: that it lies, so to speak, in the leak's own pattern. None if it is
/// plain that something else is likelier to have.
fn by_leak(model: &Model<'_>, solution: &Solution<'_>, note: &Note, beliefs: &[Belief], local: &Local) -> Option<f64> {
    let (site, branch) = model.seat(note.part)?;
    let grade = note.grade?.number();
    let mut finding = model.finding(note.part, note.symptom, None, Observed::Located(grade))?;
    let made = |maker: &Maker| maker.grades.at_most(grade) - maker.grades.below(grade);
    let leak = made(&finding.leak);
    let share = |maker: &Maker, probability: f64| probability * made(maker) / (made(maker) + leak);
    let shared = finding.shared.iter().filter_map(|(n, maker)| Some(share(maker, beliefs.get(*n)?.probability())));
    let root = finding.root.iter().map(|(n, maker)| share(maker, local.probability((site, None), *n)));
    let own = finding.own.iter().map(|(n, maker)| share(maker, local.probability((site, branch), *n)));
    if shared.chain(root).chain(own).any(|share| share > 1.0 - UNEXPLAINED_FROM) {
        return None;
    }
    let makers = finding.shared.iter_mut().chain(&mut finding.root).chain(&mut finding.own);
    makers.for_each(|(_, maker): &mut (usize, Maker)| maker.share = 0.0);
    Some(solution.in_pattern((site, branch), &finding))
}

fn place_view(model: &Model<'_>, evidence: &Gathered, seat: Seat, probability: f64) -> Option<PlaceView> {
    let place = model.spot(seat)?.place;
    let notes: Vec<Note> =
        evidence.notes.get(seat.0)?.iter().filter(|note| Place::of(note.part) == place).copied().collect();
    Some(PlaceView {
        label: place.label(model.engine().arrangement()),
        probability,
        named: probability >= PLACE_NAMED_FROM,
        parts: parts(&notes),
    })
}

fn parts(notes: &[Note]) -> Vec<Part> {
    let set: std::collections::BTreeSet<Part> = notes.iter().map(|note| note.part).collect();
    set.into_iter().collect()
}

/// How much a piece of evidence changes the odds, in doublings.
fn weight(all: Belief, without: Belief) -> f64 {
    rounded(binary_log(all.odds()) - binary_log(without.odds()))
}

/// To a tenth; a weight beyond all measure (nothing else could explain the finding) is kept finite for the border.
fn rounded(weight: f64) -> f64 {
    let tenths = (weight.clamp(-99.0, 99.0) * 10.0).round();
    // Not a number only where a cause was out of the question before and after.
    if tenths.is_nan() { 0.0 } else { tenths / 10.0 }
}

impl Explained {
    fn weigh(&mut self, evidence: Evidence) {
        if evidence.weight >= SMALLEST_WEIGHT {
            self.speaks_for.push(evidence);
        } else if evidence.weight <= -SMALLEST_WEIGHT {
            self.speaks_against.push(evidence);
        }
    }

    /// What is known of the engine's past.
    fn past(&mut self, cause: &Cause, job: &Job) {
        for (fact, factor) in history_factors(cause, job) {
            let answered = if factor > 1.0 {
                fact.statement().to_owned()
            } else {
                format!("it is not so that {}", fact.statement())
            };
            let words = format!("from its past: {answered}");
            self.weigh(Evidence::new(words, vec![], rounded(binary_log(factor))));
        }
    }

    fn sorted(mut self) -> Self {
        self.speaks_for.sort_by(|a, b| b.weight.total_cmp(&a.weight));
        self.speaks_against.sort_by(|a, b| a.weight.total_cmp(&b.weight));
        self.alone.sort_by(|a, b| b.weight.total_cmp(&a.weight));
        self
    }
}
