//! The look that would settle most: for every part that nobody has looked at, the back of every shell whose face alone
//! was looked at, and every mark whose zones nobody has noted, the expected drop of entropy over the causes. Once no look
//! would help, what measuring would.
//!
//! Exact for the answers that are told apart: of a part, the first tag that would be reported (in the order of its table)
//! or that none would be; of a mark, the pattern of its zones. Grades, and tags beside the first, are left out, so a real
//! look tells somewhat more. The entropy is that of each cause of the whole engine and of what is wrong at the place.

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;
use serde::Serialize;

use super::catalogue::{self, Fault, Symptom};
use super::faults::shown_by;
use super::gather::{Gathered, gather, is_of_back};
use super::memo::Memo;
use super::missed::{MISSED_BY_MEASURING, MISSED_ON_CLEAN};
use super::model::{Model, PlaceStates, SiteStates, State};
use super::network::{CauseSeat, Joint, Observed, Query, Solution};
use super::pattern::Pattern;
use super::scaled::binary_log;
use crate::engine::{Engine, Part};
use crate::figure::Figure;
use crate::job::Job;
use crate::measure::Quantity;
use crate::sheet::Proportions;
use crate::wear::{Tag, Zone};

/// What to look at next, and why.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct NextLook {
    /// The part.
    pub part: Part,
    /// The zone of its drawing that matters most, if one does.
    pub zone: Option<Zone>,
    /// The tag whose zones are to be marked; none if the part has not been looked at at all.
    pub tag: Option<Tag>,
    /// Whether it is to be measured rather than looked at.
    pub measure: bool,
    /// The instruction with its reason.
    pub sentence: String,
    /// By how much the look is expected to reduce what is not known, in bits.
    pub gain: f64,
}

/// Looks that are expected to tell less than this are not worth asking for (our judgement).
const LEAST_GAIN: f64 = 0.02;

/// A look that could be taken.
struct Candidate {
    part: Part,
    seat: CauseSeat,
    query: Query,
    asks: Asks,
}

/// What the answers to a look are.
enum Asks {
    /// The tag that is seen, or nothing.
    Tags(Vec<Tag>),
    /// In which of the patterns a tag lies.
    Where(Tag, Vec<Pattern>),
    /// The fault that measuring shows, or none.
    Faults(Vec<Fault>),
}

/// The best look; once no look is left that would help, the best part to measure; none if nothing more would help. With
/// places worked out earlier it is quicker, and never different.
pub fn next_look(
    engine: &Engine,
    job: &Job,
    figures: &BTreeMap<Part, Vec<Figure>>,
    memo: &mut Memo,
) -> Option<NextLook> {
    // On the pool's threads from the start, so that nothing waits to be handed over to them.
    rayon::scope(|_| {
        let model = Model::new(engine, job);
        let gathered = gather(&model, job, figures, &mut memo.looks);
        let solution = gathered.network.solve_with(std::mem::take(&mut memo.sites)).ok()?;
        let look = best_of_all(&model, &gathered, &solution, job);
        memo.sites = solution.into_known();
        look
    })
}

fn best_of_all(model: &Model<'_>, gathered: &Gathered, solution: &Solution<'_>, job: &Job) -> Option<NextLook> {
    let looked = best(model, solution, looks(model, gathered, job));
    let sizes = sizes(model, gathered, job);
    // What dust and fuel leave looks alike: only grooves and gaps tell them apart, whatever is still to be looked at.
    let is_alone = |candidate: &Candidate| candidate.is_of(Fault::WideGroove) || candidate.is_of(Fault::ThinRing);
    let (telling, other): (Vec<Candidate>, Vec<Candidate>) = sizes.into_iter().partition(is_alone);
    let told = best(model, solution, telling);
    if let (Some(look), Some(size)) = (&looked, &told)
        && size.gain >= TIMES_A_LOOK * look.gain
    {
        return told;
    }
    looked.or_else(|| told.into_iter().chain(best(model, solution, other)).max_by(|a, b| a.gain.total_cmp(&b.gain)))
}

/// Measuring takes longer than looking: it must tell so much more (our judgement).
const TIMES_A_LOOK: f64 = 2.0;

fn best(model: &Model<'_>, solution: &Solution<'_>, candidates: Vec<Candidate>) -> Option<NextLook> {
    // Parts that are known to be alike are asked about once.
    let mut distinct: Vec<Candidate> = Vec::new();
    for candidate in candidates {
        let same = |other: &Candidate| other.query == candidate.query && solution.alike(other.seat, candidate.seat);
        if !distinct.iter().any(same) {
            distinct.push(candidate);
        }
    }
    let weighed = distinct.par_iter().map(|candidate| {
        let answers = solution.ask(candidate.seat, &candidate.query);
        (gain(model, candidate.seat, &answers), candidate, answers)
    });
    let weighed: Vec<(f64, &Candidate, Vec<Joint>)> = weighed.collect();
    let best = weighed.into_iter().reduce(|best, next| if next.0 > best.0 { next } else { best });
    let (gain, candidate, answers) = best.filter(|(gain, ..)| *gain >= LEAST_GAIN)?;
    Some(candidate.told(model, &answers, (gain * 1000.0).round() / 1000.0))
}

fn looks(model: &Model<'_>, gathered: &Gathered, job: &Job) -> Vec<Candidate> {
    let mut all = Vec::new();
    for part in model.engine().parts() {
        let Some(seat) = model.seat(*part) else { continue };
        let record = job.parts.get(part).filter(|record| record.looked_at());
        // Of a shell whose face was looked at the back may be left.
        let is_left = |tag: Tag| record.is_none_or(|record| is_of_back(part.kind, tag) && !record.back_looked_at());
        let observed = Observed::Unreported { missed: MISSED_ON_CLEAN };
        let asked = part
            .kind
            .row()
            .tags
            .iter()
            .filter(|tag| tag.is_damage() && is_left(**tag))
            .filter_map(|tag| Some((*tag, model.observation(*part, Symptom::Seen(*tag), None, observed)?)));
        let (tags, observations): (Vec<Tag>, Vec<_>) = asked.unzip();
        if !tags.is_empty() {
            all.push(Candidate { part: *part, seat, query: Query::What(observations), asks: Asks::Tags(tags) });
        }
    }
    for (site, notes) in gathered.notes.iter().enumerate() {
        for note in notes {
            let (Some(symptom @ Symptom::Seen(tag)), Some(grade), None) = (note.symptom, note.grade, note.pattern)
            else {
                continue;
            };
            let (patterns, _) = Model::patterns(note.part);
            let Some(seat) = model.seat(note.part).filter(|seat| seat.site == site) else { continue };
            let observed = Observed::Located(grade.number());
            let observations: Vec<_> = patterns
                .iter()
                .filter_map(|pattern| model.observation(note.part, symptom, Some(*pattern), observed))
                .collect();
            if tag.is_damage() && observations.len() == patterns.len() && !observations.is_empty() {
                let asks = Asks::Where(tag, patterns.to_vec());
                all.push(Candidate { part: note.part, seat, query: Query::Where(observations), asks });
            }
        }
    }
    all
}

/// What could be measured and has not been, as far as there is a limit to hold it against.
fn sizes(model: &Model<'_>, gathered: &Gathered, job: &Job) -> Vec<Candidate> {
    let observed = Observed::Unreported { missed: MISSED_BY_MEASURING };
    let mut all = Vec::new();
    for part in model.engine().parts() {
        let Some(seat) = model.seat(*part) else { continue };
        let notes = gathered.notes.get(seat.site).map(Vec::as_slice).unwrap_or_default();
        let known = |fault: Fault| notes.iter().any(|n| n.part == *part && n.symptom == Some(Symptom::Measured(fault)));
        let has_limit = |quantity| job.sheet.limits(*part, quantity, "", None, Proportions::default()).is_some();
        let quantities = part.kind.quantities().iter().map(|has| has.quantity).filter(|quantity| has_limit(*quantity));
        let is_measured = |quantity| {
            job.readings.iter().any(|taken| taken.reading.part == *part && taken.reading.quantity == quantity)
        };
        let shown = |quantity: Quantity| match quantity {
            // With its bore's wear it tells how much of a gap is the ring's own loss.
            Quantity::RingGap if !is_measured(quantity) => &[Fault::ThinRing],
            _ => shown_by(quantity),
        };
        let faults: BTreeSet<Fault> = quantities.flat_map(shown).copied().filter(|fault| !known(*fault)).collect();
        let asked = faults
            .into_iter()
            .filter_map(|fault| Some((fault, model.observation(*part, Symptom::Measured(fault), None, observed)?)));
        let (faults, observations): (Vec<Fault>, Vec<_>) = asked.unzip();
        if !faults.is_empty() {
            all.push(Candidate { part: *part, seat, query: Query::What(observations), asks: Asks::Faults(faults) });
        }
    }
    all
}

/// The expected drop of entropy, in bits.
fn gain(model: &Model<'_>, seat: CauseSeat, answers: &[Joint]) -> f64 {
    let total: f64 = answers.iter().map(|answer| answer.weight).sum();
    let sum = |of: fn(&Joint) -> &[f64]| -> Vec<f64> {
        let mut sums = vec![0.0; answers.first().map_or(0, |answer| of(answer).len())];
        for answer in answers {
            sums.iter_mut().zip(of(answer)).for_each(|(sum, weight)| *sum += weight);
        }
        sums
    };
    let whole = Joint {
        weight: total,
        shared: sum(|answer| &answer.shared),
        root: sum(|answer| &answer.root),
        branch: sum(|answer| &answer.branch),
    };
    let after: f64 = answers.iter().map(|answer| answer.weight / total * entropy(model, seat, answer)).sum();
    entropy(model, seat, &whole) - after
}

/// What is not known once this is answered, in bits.
fn entropy(model: &Model<'_>, CauseSeat { site, branch }: CauseSeat, answer: &Joint) -> f64 {
    if answer.weight <= 0.0 {
        return 0.0;
    }
    let share = |weight: f64| (weight / answer.weight).clamp(0.0, 1.0);
    let shared: f64 = answer.shared.iter().map(|weight| bits(share(*weight)) + bits(1.0 - share(*weight))).sum();
    let Some(SiteStates { root, branches }) = model.sites.get(site) else { return shared };
    let of = |place: &PlaceStates, weights: &[f64]| -> f64 {
        by_cause(place, weights).iter().map(|(_, weight)| bits(share(*weight))).sum()
    };
    let own = branch.and_then(|branch| branches.get(branch)).map_or(0.0, |place| of(place, &answer.branch));
    shared + of(root, &answer.root) + own
}

/// The weights of a place's states, forms of one cause taken together.
fn by_cause(place: &PlaceStates, weights: &[f64]) -> Vec<(Option<&'static str>, f64)> {
    let mut sums: Vec<(Option<&'static str>, f64)> = Vec::new();
    for (state, weight) in place.states.iter().zip(weights) {
        let id = state.cause.map(|cause| cause.id);
        match sums.iter_mut().find(|(known, _)| *known == id) {
            Some((_, sum)) => *sum += weight,
            None => sums.push((id, *weight)),
        }
    }
    sums
}

fn bits(p: f64) -> f64 {
    if p <= 0.0 { 0.0 } else { -p * binary_log(p) }
}

impl Candidate {
    /// Whether it would show this fault.
    fn is_of(&self, fault: Fault) -> bool {
        matches!(&self.asks, Asks::Faults(faults) if faults.contains(&fault))
    }

    /// The look in words: what is to be looked at, which answer would tell most, and of which cause.
    fn told(&self, model: &Model<'_>, answers: &[Joint], gain: f64) -> NextLook {
        let label = model.engine().label(self.part).to_lowercase();
        let map = self.part.kind.row().zones;
        let measure = matches!(self.asks, Asks::Faults(_));
        let blank = NextLook { part: self.part, zone: None, tag: None, measure, sentence: String::new(), gain };
        let count = match &self.asks {
            Asks::Where(..) => answers.len(),
            Asks::Tags(_) | Asks::Faults(_) => answers.len().saturating_sub(1),
        };
        let telling = (0..count)
            .filter_map(|n| Some((n, self.raised(model, answers, n)?)))
            .max_by(|a, b| a.1.2.total_cmp(&b.1.2).then_with(|| b.0.cmp(&a.0)));
        let Some((n, (cause, form, _))) = telling else {
            let verb = if measure { "Measure" } else { "Look at" };
            return NextLook { sentence: format!("{verb} {label}."), ..blank };
        };
        let speaks = format!(
            "would speak for {}{}",
            cause.name(model.engine().terms()),
            if cause.is_shared() { "" } else { " there" }
        );
        match &self.asks {
            Asks::Where(tag, patterns) => {
                let pattern = patterns.get(n).copied();
                let place = pattern.and_then(Pattern::words).unwrap_or("a single field or all over");
                let sentence = format!("Mark where the {} on {label} lies: {place} {speaks}.", tag.row().name);
                NextLook { zone: pattern.and_then(|p| p.zone(map)), tag: Some(*tag), sentence, ..blank }
            }
            Asks::Faults(faults) => {
                let shown = faults.get(n).map_or("a size beyond its limit", |fault| fault.words());
                // Each by itself is half of the answer.
                let beside = match faults.get(n) {
                    Some(Fault::WideGroove) => " With the gap of its rings it tells dust from fuel.",
                    Some(Fault::ThinRing) => " With the grooves of its piston it tells dust from fuel.",
                    _ => "",
                };
                let sentence = format!("Measure {label}: a reading that shows it {shown} {speaks}.{beside}");
                NextLook { sentence, ..blank }
            }
            Asks::Tags(tags) => {
                let Some(tag) = tags.get(n).copied() else {
                    return NextLook { sentence: format!("Look at {label}."), ..blank };
                };
                let presence = model.presence(cause, form, self.part, Symptom::Seen(tag));
                // One of two mirrored forms is as likely as the other: then no single edge is where to look.
                let pattern = presence.and_then(|presence| presence.usual_pattern(map));
                let pattern = pattern.filter(|p| cause.forms().len() == 1 || p.is_symmetrical());
                let place = pattern.and_then(Pattern::words).map_or_else(String::new, |words| format!("{words} of "));
                let sentence = format!("Look at {place}{label}: {} {speaks}, none against it.", tag.row().name);
                NextLook { zone: pattern.and_then(|p| p.zone(map)), sentence, ..blank }
            }
        }
    }

    /// The cause that an answer would raise most, and by how much it would move the beliefs, weighed by how likely the
    /// answer is.
    fn raised(
        &self,
        model: &Model<'_>,
        answers: &[Joint],
        n: usize,
    ) -> Option<(&'static catalogue::Cause, catalogue::Mirror, f64)> {
        let answer = answers.get(n)?;
        let total: f64 = answers.iter().map(|answer| answer.weight).sum();
        let before = |of: &dyn Fn(&Joint) -> f64| answers.iter().map(of).sum::<f64>() / total;
        let after = |weight: f64| weight / answer.weight;
        let SiteStates { root, branches } = model.sites.get(self.seat.site)?;
        // What is worn anyway is no reason to look.
        let telling = model.shared.iter().enumerate().filter(|(_, cause)| cause.id != catalogue::ORDINARY);
        let shared = telling.map(|(c, cause)| {
            let of = |answer: &Joint| answer.shared.get(c).copied().unwrap_or(0.0);
            (*cause, catalogue::Mirror::None, after(of(answer)) - before(&of))
        });
        let states = |place: &'_ PlaceStates, of: fn(&Joint) -> &[f64]| {
            let each = |(s, state): (usize, &State)| {
                let weight = |answer: &Joint| of(answer).get(s).copied().unwrap_or(0.0);
                Some((state.cause?, state.form, after(weight(answer)) - before(&weight)))
            };
            place.states.iter().enumerate().filter_map(each).collect::<Vec<_>>()
        };
        let own = self.seat.branch.and_then(|branch| branches.get(branch));
        let local = states(root, |answer| &answer.root)
            .into_iter()
            .chain(own.map(|place| states(place, |answer| &answer.branch)).unwrap_or_default());
        let most = shared.chain(local).max_by(|a, b| a.2.total_cmp(&b.2))?;
        (most.2 > 0.0).then_some((most.0, most.1, most.2 * answer.weight / total))
    }
}

#[cfg(test)]
mod tests {
    use crate::assess;
    use crate::cause::{Memo, NextLook};
    use crate::engine::{Arrangement, Engine};
    use crate::job::testing::{arrange, job_of};
    use serde_json::{Value, json};

    /// Marks on one side of every skirt and wall, which dust and fuel both leave, in an engine that is clean otherwise.
    fn asked(more: &[Value]) -> Option<NextLook> {
        let line = |kind: &str, quantity: &str, limit: &str| json!({ "of": { "kind": kind, "quantity": quantity }, "min": "0.05 mm", "max": "0.30 mm", "limit": limit });
        let sheet = json!({ "do": "use-sheet", "sheet": { "head": { "name": "Any", "source": "", "unit": "millimetre" },
            "lines": [line("piston", "groove-clearance", "0.40 mm"), line("rings", "ring-gap", "0.80 mm")] } });
        let arrangement = Arrangement::inline(4);
        let engine = Engine::new(arrangement.clone()).unwrap();
        let looks = engine.parts().iter().map(|part| match part.kind.row().id {
            "bore" => json!({ "do": "tag", "part": part, "tag": "scoring", "grade": 2,
                "zones": ["top-thrust", "middle-thrust"] }),
            "piston" => json!({ "do": "tag", "part": part, "tag": "scuffing", "grade": 2, "zones": ["thrust-skirt"] }),
            _ => json!({ "do": "clean", "part": part }),
        });
        let changes: Vec<Value> =
            [arrange(&arrangement), sheet].into_iter().chain(looks).chain(more.to_vec()).collect();
        assess::next_look(&job_of(&changes), &mut Memo::default())
    }

    /// Dust takes the height of rings and grooves, fuel their radial thickness (common practice): neither says it alone.
    #[test]
    fn grooves_and_gaps_are_asked_for_both() {
        let first = asked(&[]).unwrap();
        assert!(first.measure && first.part.to_string().starts_with("rings."), "{first:?}");
        assert!(
            first.sentence.ends_with("With the grooves of its piston it tells dust from fuel."),
            "{}",
            first.sentence
        );
        let gap = |n: u8| {
            let reading = json!({ "part": format!("rings.{n}"), "quantity": "ring-gap", "value": "0.20 mm",
                "spot": { "station": "top-ring" } });
            json!({ "do": "measure", "reading": reading })
        };
        let then = asked(&[1, 2, 3, 4].map(gap));
        assert!(then.is_none_or(|then| !then.part.to_string().starts_with("rings.")), "it was measured");
    }
}
