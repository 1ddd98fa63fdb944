//! What was seen that fits no cause of the catalogue.

use std::collections::BTreeMap;

use super::catalogue;
use super::gather::Gathered;
use super::local::Local;
use super::model::Model;
use super::network::{Belief, CauseSeat, Maker, Observed, Solution};
use super::report::Unexplained;
use super::topic::{Note, Noted, Topic, parts, words};
use crate::wear::Grade;

/// What is seen fits no cause if it is likelier than not that none made it.
const UNEXPLAINED_FROM: f64 = 0.5;

/// What the leak is likelier than not to have made, of what is worth a word: grade 2 or more.
pub(super) fn unexplained(
    model: &Model<'_>,
    gathered: &Gathered,
    solution: &Solution<'_>,
    topics: &BTreeMap<Topic, Noted>,
    local: &Local,
) -> Vec<Unexplained> {
    let beliefs = solution.shared();
    let mut odd: BTreeMap<Topic, Vec<(Note, f64)>> = BTreeMap::new();
    for note in gathered.unspoken.iter().filter(|note| note.symptom != Some(catalogue::EVEN)) {
        odd.entry(note.topic).or_default().push((*note, 1.0));
    }
    for (topic, Noted { notes, .. }) in topics {
        if !matches!(topic, Topic::Seen(..)) {
            continue;
        }
        let worth = |note: &&Note| note.symptom != Some(catalogue::EVEN) && note.grade >= Some(Grade::TWO);
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
                words: words(topic, &notes, model.engine()),
                parts: parts(&notes),
                probability: odd.iter().map(|(_, chance)| chance).sum::<f64>() / odd.len() as f64,
            };
            (notes.iter().filter_map(|note| note.grade).max(), told)
        })
        .collect();
    all.sort_by_key(|(grade, _)| std::cmp::Reverse(*grade));
    all.into_iter().map(|(_, odd)| odd).collect()
}

/// The probability that the leak made what was found: that it lies, so to speak, in the leak's own pattern. None if it is
/// plain that something else is likelier to have.
fn by_leak(model: &Model<'_>, solution: &Solution<'_>, note: &Note, beliefs: &[Belief], local: &Local) -> Option<f64> {
    let seat = model.seat(note.part)?;
    let grade = note.grade?.number();
    let mut observation = model.observation(note.part, note.symptom?, None, Observed::Located(grade))?;
    let made = |maker: &Maker| maker.grades.at_most(grade) - maker.grades.below(grade);
    let leak = made(&observation.leak);
    let share = |maker: &Maker, probability: f64| probability * made(maker) / (made(maker) + leak);
    let shared = observation.shared.iter().filter_map(|(n, maker)| Some(share(maker, beliefs.get(*n)?.probability())));
    let root = observation
        .root
        .iter()
        .map(|(n, maker)| share(maker, local.probability(CauseSeat { branch: None, ..seat }, *n)));
    let own = observation.own.iter().map(|(n, maker)| share(maker, local.probability(seat, *n)));
    if shared.chain(root).chain(own).any(|share| share > 1.0 - UNEXPLAINED_FROM) {
        return None;
    }
    let makers = observation.shared.iter_mut().chain(&mut observation.root).chain(&mut observation.own);
    makers.for_each(|(_, maker): &mut (usize, Maker)| maker.share = 0.0);
    Some(solution.in_pattern(seat, &observation))
}
