//! Why it happened: hidden causes, seen wear, a probability model computed exactly, explained in words.

pub mod catalogue;
mod evidence;
pub mod network;
mod scaled;

use serde::Serialize;

use crate::engine::{Engine, Part};
use crate::job::{Answer, HistoryFact, Job};
use crate::words::capitalised;
use catalogue::Cause;
use network::{Belief, Contradiction, Network, Solution};
use scaled::binary_log;

/// The ranked causes of one engine's wear.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct CauseReport {
    /// Whether enough has been seen to name a cause.
    pub enough_seen: bool,
    /// One sentence that a customer understands: the cause, or that not enough has been seen.
    pub summary: String,
    /// Every cause of the catalogue, most likely first.
    pub causes: Vec<CauseView>,
}

/// One cause with what speaks for and against it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct CauseView {
    /// Its written form, such as `dirt-in-oil`.
    pub id: String,
    /// Its name, lower case.
    pub name: String,
    /// The computed probability, 0 to 1.
    pub probability: f64,
    /// The probability in words: "very likely", "likely", "possible", "unlikely", "very unlikely".
    pub likelihood: String,
    /// The probability in figures as coarse as the evidence is: "about 80 %", "more than 95 %".
    pub percent: String,
    /// The sentence for the customer.
    pub plainly: String,
    /// What speaks for it, strongest first.
    pub evidence_for: Vec<Evidence>,
    /// What speaks against it, strongest first.
    pub evidence_against: Vec<Evidence>,
    /// What to check before assembly.
    pub check: Vec<String>,
    /// Where its figures come from.
    pub source: String,
}

/// A group of like findings and its weight.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Evidence {
    /// In words: "scoring, grade 3, on 4 lower main shells".
    pub words: String,
    /// The parts it was seen on; empty for what is known of the engine's past.
    pub parts: Vec<Part>,
    /// How much it changes the odds of the cause: the factor, as its base-2 logarithm rounded to a tenth. Positive
    /// speaks for the cause.
    pub weight: f64,
}

/// A named cause needs a probability of at least this much.
const NAMED_FROM: f64 = 0.5;
/// Fewest parts of interest that must have been looked at before a cause is named (our judgement: one rod's bearing
/// with its crankpin is not yet an engine).
const PARTS_BEFORE_NAMING: usize = 4;
/// Weights smaller than this (half a doubling of the odds) are not worth a line.
const SMALLEST_WEIGHT: f64 = 0.5;

/// Ranks the causes of the catalogue for an engine. Without an engine, or before anything has been looked at, the
/// probabilities are the priors, shifted by what is known of the engine's past.
pub fn diagnose(engine: Option<&Engine>, job: &Job) -> CauseReport {
    let causes = catalogue::ALL;
    let pieces = engine.map(|engine| evidence::gather(engine, job, &causes)).unwrap_or_default();
    let network = Network {
        priors: causes.iter().map(|cause| shifted_prior(cause, job)).collect(),
        evidence: pieces.values().map(|piece| piece.findings.clone()).collect(),
    };
    // Every finding has a leak, so nothing that can be recorded is impossible; should it be, the priors stand.
    let solution = network.solve().unwrap_or_else(|Contradiction| Solution {
        posterior: network.priors.iter().map(|prior| Belief::of(*prior)).collect(),
        without: vec![],
    });
    let mut views: Vec<CauseView> = causes
        .iter()
        .zip(&solution.posterior)
        .enumerate()
        .map(|(index, (cause, belief))| {
            let mut view = blank_view(cause, belief.probability());
            if let Some(engine) = engine {
                for ((topic, piece), without) in pieces.iter().zip(&solution.without) {
                    let before = without.get(index).unwrap_or(belief);
                    view.weigh(Evidence {
                        words: piece.words(*topic, engine.arrangement()),
                        parts: piece.parts.iter().copied().collect(),
                        weight: rounded(binary_log(belief.odds()) - binary_log(before.odds())),
                    });
                }
            }
            for (fact, factor) in history_factors(cause, job) {
                let answered = if factor > 1.0 {
                    fact.statement().to_owned()
                } else {
                    format!("it is not so that {}", fact.statement())
                };
                view.weigh(Evidence {
                    words: format!("from its past: {answered}"),
                    parts: vec![],
                    weight: rounded(binary_log(factor)),
                });
            }
            view.sort();
            view
        })
        .collect();
    views.sort_by(|a, b| b.probability.total_cmp(&a.probability).then_with(|| a.id.cmp(&b.id)));
    let looked = engine.map_or(0, |engine| {
        let seen = |part: &&Part| job.parts.get(part).is_some_and(|record| record.looked_at());
        engine.parts().iter().filter(seen).filter(|part| evidence::speaks_of(&causes, **part)).count()
    });
    let enough_seen = looked >= PARTS_BEFORE_NAMING && views.first().is_some_and(|top| top.probability >= NAMED_FROM);
    CauseReport { enough_seen, summary: summary(&views, looked, enough_seen), causes: views }
}

fn summary(views: &[CauseView], looked: usize, enough_seen: bool) -> String {
    if looked < PARTS_BEFORE_NAMING {
        return "Not enough has been seen yet to say why the engine suffered.".into();
    }
    if !enough_seen {
        return "No single cause stands out yet: look at more parts.".into();
    }
    let named: Vec<&CauseView> = views.iter().filter(|view| view.probability >= NAMED_FROM).collect();
    named
        .iter()
        .map(|view| format!("{}: {}", capitalised(&view.likelihood), view.plainly))
        .collect::<Vec<_>>()
        .join(" ")
}

/// The factors by which what is known of the past changes a cause's odds. A *no* weighs half as much as a *yes*, in
/// the other direction (our judgement); *not known* weighs nothing.
fn history_factors(cause: &Cause, job: &Job) -> Vec<(HistoryFact, f64)> {
    let factor = |(fact, yes): &(HistoryFact, f64)| match job.history.get(fact)? {
        Answer::Yes => Some((*fact, *yes)),
        Answer::No => Some((*fact, 1.0 / yes.sqrt())),
        Answer::Unknown => None,
    };
    cause.shifts.iter().filter_map(factor).collect()
}

fn shifted_prior(cause: &Cause, job: &Job) -> f64 {
    let odds =
        history_factors(cause, job).iter().fold(Belief::of(cause.prior).odds(), |odds, (_, factor)| odds * factor);
    odds / (1.0 + odds)
}

/// To a tenth; a weight beyond all measure (nothing else could explain the finding) is kept finite for the border.
fn rounded(weight: f64) -> f64 {
    (weight.clamp(-99.0, 99.0) * 10.0).round() / 10.0
}

fn likelihood(probability: f64) -> &'static str {
    match probability {
        p if p >= 0.9 => "very likely",
        p if p >= 0.6 => "likely",
        p if p >= 0.25 => "possible",
        p if p >= 0.05 => "unlikely",
        _ => "very unlikely",
    }
}

/// Never more digits than the evidence bears: to the nearest ten, and no nearer to certainty than 95 %.
fn percent(probability: f64) -> String {
    match probability {
        p if p > 0.95 => "more than 95 %".into(),
        p if p < 0.05 => "less than 5 %".into(),
        p => format!("about {} %", (p * 10.0).round() * 10.0),
    }
}

fn blank_view(cause: &Cause, probability: f64) -> CauseView {
    CauseView {
        id: cause.id.into(),
        name: cause.name.into(),
        probability,
        likelihood: likelihood(probability).into(),
        percent: percent(probability),
        plainly: cause.plainly.into(),
        evidence_for: vec![],
        evidence_against: vec![],
        check: cause.check.iter().map(|check| (*check).to_owned()).collect(),
        source: cause.source.into(),
    }
}

impl CauseView {
    fn weigh(&mut self, evidence: Evidence) {
        if evidence.weight >= SMALLEST_WEIGHT {
            self.evidence_for.push(evidence);
        } else if evidence.weight <= -SMALLEST_WEIGHT {
            self.evidence_against.push(evidence);
        }
    }

    fn sort(&mut self) {
        self.evidence_for.sort_by(|a, b| b.weight.total_cmp(&a.weight));
        self.evidence_against.sort_by(|a, b| a.weight.total_cmp(&b.weight));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Arrangement;
    use crate::job::{Change, TagRecord};
    use crate::wear::{Grade, Tag};

    type Entry = (&'static str, Option<(Tag, Grade)>);

    /// A job in which each entry tags (or, with no tag, calls clean) a part.
    fn job(entries: &[Entry]) -> (Engine, Job) {
        let engine = Engine::new(Arrangement::inline(4)).unwrap();
        let mut job = Job { arrangement: Some(engine.arrangement().clone()), ..Job::default() };
        for (part, finding) in entries {
            let part: Part = part.parse().unwrap();
            let change = match finding {
                Some((tag, grade)) => Change::Tag { part, tag: *tag, grade: *grade, zones: Default::default() },
                None => Change::Clean { part },
            };
            job.check(&change).unwrap();
            let record = job.parts.entry(part).or_default();
            match finding {
                Some((tag, grade)) => {
                    record.tags.insert(*tag, TagRecord { grade: *grade, zones: Default::default() });
                }
                None => record.clean = true,
            }
        }
        (engine, job)
    }

    #[track_caller]
    fn first(entries: &[Entry], cause: &str) {
        let (engine, job) = job(entries);
        let report = diagnose(Some(&engine), &job);
        let ranks: Vec<String> =
            report.causes.iter().map(|view| format!("{} {:.3}", view.id, view.probability)).collect();
        assert_eq!(report.causes[0].id, cause, "{ranks:#?}");
        assert!(report.enough_seen, "{ranks:#?}");
    }

    fn every(parts: &[&'static str], tag: Tag, grade: Grade) -> Vec<Entry> {
        parts.iter().map(|part| (*part, Some((tag, grade)))).collect()
    }

    const LOWER_MAINS: [&str; 5] =
        ["main-shell.1.lower", "main-shell.2.lower", "main-shell.3.lower", "main-shell.4.lower", "main-shell.5.lower"];
    const UPPER_RODS: [&str; 4] = ["rod-shell.1.upper", "rod-shell.2.upper", "rod-shell.3.upper", "rod-shell.4.upper"];
    const UPPER_MAINS: [&str; 5] =
        ["main-shell.1.upper", "main-shell.2.upper", "main-shell.3.upper", "main-shell.4.upper", "main-shell.5.upper"];
    const LOWER_RODS: [&str; 4] = ["rod-shell.1.lower", "rod-shell.2.lower", "rod-shell.3.lower", "rod-shell.4.lower"];

    fn clean(parts: &[&'static str]) -> Vec<Entry> {
        parts.iter().map(|part| (*part, None)).collect()
    }

    /// Patterns of the handbooks: Neale, The Tribology Handbook, plain bearing failures; TM 55-1905-221-14-3 and the
    /// marine-engineer examination item for overload; the others common practice.
    #[test]
    fn published_patterns_rank_their_cause_first() {
        let many = |groups: &[Vec<Entry>]| groups.concat();
        first(
            &many(&[
                every(&LOWER_MAINS, Tag::Scoring, Grade::TWO),
                every(&UPPER_RODS, Tag::EmbeddedDebris, Grade::TWO),
                every(&UPPER_MAINS, Tag::Scoring, Grade::ONE),
            ]),
            "dirt-in-oil",
        );
        first(
            &many(&[
                every(&LOWER_MAINS, Tag::Wiping, Grade::THREE),
                every(&UPPER_RODS, Tag::HotSpot, Grade::TWO),
                every(&["crankpin.1", "crankpin.2"], Tag::HotSpot, Grade::TWO),
            ]),
            "oil-starvation",
        );
        first(
            &many(&[
                every(&LOWER_MAINS, Tag::FatigueCracks, Grade::TWO),
                every(&UPPER_RODS, Tag::FatigueCracks, Grade::THREE),
                clean(&UPPER_MAINS),
                clean(&LOWER_RODS),
            ]),
            "overload",
        );
        first(
            &many(&[
                every(&LOWER_MAINS, Tag::Corrosion, Grade::TWO),
                every(&UPPER_MAINS, Tag::Corrosion, Grade::TWO),
                every(&LOWER_RODS, Tag::Corrosion, Grade::THREE),
            ]),
            "corrosion",
        );
        first(
            &many(&[
                every(&LOWER_MAINS, Tag::HotSpot, Grade::THREE),
                every(&UPPER_MAINS, Tag::HotSpot, Grade::THREE),
                every(&LOWER_RODS, Tag::HotSpot, Grade::THREE),
                every(&["piston.2"], Tag::Seizure, Grade::THREE),
            ]),
            "overheating",
        );
        first(
            &many(&[
                every(&LOWER_MAINS[1..4], Tag::CopperShowing, Grade::THREE),
                clean(&["main-shell.1.lower", "main-shell.5.lower"]),
                clean(&UPPER_RODS),
                clean(&LOWER_RODS),
            ]),
            "misaligned-main-bores",
        );
        first(
            &many(&[
                every(&["thrust-face.rear"], Tag::Wiping, Grade::THREE),
                clean(&["thrust-face.front"]),
                clean(&LOWER_MAINS),
                clean(&UPPER_RODS),
            ]),
            "thrust-overload-rear",
        );
        first(
            &many(&[
                every(&LOWER_MAINS, Tag::LooksEven, Grade::TWO),
                every(&UPPER_RODS, Tag::LooksEven, Grade::TWO),
                every(&["crankpin.1", "main-journal.1"], Tag::LooksEven, Grade::TWO),
            ]),
            "normal-wear",
        );
    }

    #[test]
    fn an_empty_job_says_that_not_enough_was_seen() {
        let (engine, job) = job(&[]);
        let report = diagnose(Some(&engine), &job);
        assert!(!report.enough_seen);
        assert_eq!(report.summary, "Not enough has been seen yet to say why the engine suffered.");
        for view in &report.causes {
            let prior = catalogue::ALL.iter().find(|cause| cause.id == view.id).unwrap().prior;
            assert!((view.probability - prior).abs() < 1e-12, "{}", view.id);
        }
    }

    #[test]
    fn clean_speaks_against_and_not_looked_at_says_nothing() {
        let scored = every(&LOWER_MAINS[..2], Tag::Scoring, Grade::TWO);
        let probability = |entries: &[Entry]| {
            let (engine, job) = job(entries);
            diagnose(Some(&engine), &job).causes.iter().find(|view| view.id == "dirt-in-oil").unwrap().probability
        };
        let seen_few = probability(&scored);
        let seen_many = probability(&[scored, clean(&UPPER_RODS)].concat());
        assert!(seen_many < seen_few, "{seen_many} with clean rod shells, {seen_few} without");
    }

    #[test]
    fn evidence_is_told_in_words_strongest_first() {
        let (engine, job) = job(&[
            every(&LOWER_MAINS, Tag::Scoring, Grade::TWO),
            every(&UPPER_RODS, Tag::EmbeddedDebris, Grade::THREE),
            clean(&["thrust-face.front"]),
        ]
        .concat());
        let report = diagnose(Some(&engine), &job);
        let words: Vec<&str> = report.causes[0].evidence_for.iter().map(|evidence| evidence.words.as_str()).collect();
        assert_eq!(words[0], "embedded debris, grade 3, on 4 upper rod bearing shells");
        assert!(words.contains(&"scoring, grade 2, on 5 lower main bearing shells"), "{words:?}");
    }

    #[test]
    fn near_certainty_keeps_its_evidence() {
        let shells = [
            every(&LOWER_MAINS, Tag::Scoring, Grade::THREE),
            every(&UPPER_RODS, Tag::EmbeddedDebris, Grade::THREE),
            every(&UPPER_MAINS, Tag::EmbeddedDebris, Grade::TWO),
        ]
        .concat();
        let (engine, job) = job(&shells);
        let top = &diagnose(Some(&engine), &job).causes[0];
        assert_eq!((top.id.as_str(), top.percent.as_str()), ("dirt-in-oil", "more than 95 %"));
        assert!(top.evidence_for.len() >= 2, "each group of findings speaks for it: {:?}", top.evidence_for);
    }

    #[test]
    fn the_past_shifts_the_odds() {
        let (engine, mut job) = job(&[]);
        let corrosion = |job: &Job| {
            diagnose(Some(&engine), job).causes.iter().find(|view| view.id == "corrosion").unwrap().probability
        };
        let before = corrosion(&job);
        job.history.insert(HistoryFact::LongStorage, Answer::Yes);
        let stored = corrosion(&job);
        job.history.insert(HistoryFact::LongStorage, Answer::No);
        assert!(stored > before && corrosion(&job) < before);
    }
}
