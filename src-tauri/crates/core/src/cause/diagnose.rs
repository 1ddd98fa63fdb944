//! From all that was recorded of an engine to its ranked causes.

use std::collections::BTreeMap;

use super::answers::answers;
use super::catalogue;
use super::explain::explain;
use super::explained::Explained;
use super::gather::gather;
use super::memo::{Looks, Memo};
use super::model::Model;
use super::naming::Naming;
use super::network::Network;
use super::past::shifted_prior;
use super::report::CauseReport;
use super::told::{WorkedOut, report};
use super::verdict::Looked;
use crate::engine::{Engine, Part};
use crate::figure::Figure;
use crate::job::Job;

/// Ranks the causes of the catalogue for an engine. Without an engine, or before anything has been looked at, the
/// probabilities are the priors, shifted by what is known of the engine's past.
pub fn diagnose(engine: Option<&Engine>, job: &Job, figures: &BTreeMap<Part, Vec<Figure>>) -> CauseReport {
    diagnose_with(engine, job, figures, &mut Memo::default())
}

/// The same, with places worked out earlier: quicker when little has changed, and never different.
pub fn diagnose_with(
    engine: Option<&Engine>,
    job: &Job,
    figures: &BTreeMap<Part, Vec<Figure>>,
    memo: &mut Memo,
) -> CauseReport {
    let Some(engine) = engine else {
        let blank = catalogue::ALL.map(|cause| Explained::new(cause, shifted_prior(cause, job)));
        return report(WorkedOut { causes: blank.into(), ..WorkedOut::default() }, None, job);
    };
    // On the pool's threads from the start, so that nothing waits to be handed over to them.
    rayon::scope(|_| ranked(engine, job, figures, memo))
}

fn ranked(engine: &Engine, job: &Job, figures: &BTreeMap<Part, Vec<Figure>>, memo: &mut Memo) -> CauseReport {
    let model = Model::new(engine, job);
    let gathered = gather(&model, job, figures, &mut memo.looks);
    // Every finding has a leak and no chance is certain, so the network is sound; a test holds it for every part.
    let Ok(solution) = gathered.network.solve_with(std::mem::take(&mut memo.sites)) else {
        return report(WorkedOut::default(), Some(engine), job);
    };
    let (explained, unexplained) = explain(&model, &gathered, &solution, job);
    memo.sites = solution.into_known();
    let looked = Looked::at(engine, job, figures);
    let answers = answers(engine, job, figures);
    report(WorkedOut { causes: explained, looked, answers, unexplained }, Some(engine), job)
}

/// The probability of every cause that an engine can have, by its written form, without reasons.
pub fn probabilities(engine: &Engine, job: &Job, figures: &BTreeMap<Part, Vec<Figure>>) -> BTreeMap<&'static str, f64> {
    probabilities_named(engine, job, figures, Naming::ours())
}

/// The same where those who looked notice and name damage in a way of their own.
pub fn probabilities_named(
    engine: &Engine,
    job: &Job,
    figures: &BTreeMap<Part, Vec<Figure>>,
    naming: &Naming,
) -> BTreeMap<&'static str, f64> {
    let model = Model::named(engine, job, naming);
    let gathered = gather(&model, job, figures, &mut Looks::default());
    let Ok(solution) = gathered.network.solve() else { return BTreeMap::new() };
    let beliefs = solution.shared();
    let shared = model.shared.iter().zip(beliefs).map(|(cause, belief)| (cause.id, belief.probability()));
    let local =
        model.local_causes().map(|cause| (cause.id, solution.anywhere(&|seat, state| model.is(cause, seat, state))));
    shared.chain(local).collect()
}

/// What was recorded of an engine as the network that is worked out.
pub fn network_of(engine: &Engine, job: &Job, figures: &BTreeMap<Part, Vec<Figure>>) -> Network {
    gather(&Model::new(engine, job), job, figures, &mut Looks::default()).network
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cause::{CauseView, NextLook, next_look};
    use crate::engine::Arrangement;
    use crate::job::{Answer, Change, HistoryFact, OnPart, TagRecord};
    use crate::wear::{Grade, Tag, Zone};

    type Entry<'a> = (&'a str, Option<(Tag, Grade, &'a [Zone])>);

    /// A job on an engine in which each entry tags (or, with no tag, calls clean) a part.
    fn job(arrangement: Arrangement, entries: &[Entry<'_>]) -> (Engine, Job) {
        let engine = Engine::new(arrangement).unwrap();
        let mut job = Job { arrangement: Some(engine.arrangement().clone()), ..Job::default() };
        for (part, finding) in entries {
            let part: Part = part.parse().unwrap();
            match *finding {
                Some((tag, grade, zones)) => {
                    let zones: std::collections::BTreeSet<Zone> = zones.iter().copied().collect();
                    job.check(&Change::OnPart(OnPart::Tag { part, tag, grade, zones: zones.clone() })).unwrap();
                    job.parts.entry(part).or_default().tags.insert(tag, TagRecord { grade, zones });
                }
                None => job.parts.entry(part).or_default().clean = true,
            }
        }
        (engine, job)
    }

    fn told(entries: &[Entry<'_>]) -> CauseReport {
        let (engine, job) = job(Arrangement::inline(4), entries);
        diagnose(Some(&engine), &job, &BTreeMap::new())
    }

    fn next(entries: &[Entry<'_>]) -> Option<NextLook> {
        let (engine, job) = job(Arrangement::inline(4), entries);
        next_look(&engine, &job, &BTreeMap::new(), &mut Memo::default())
    }

    fn of<'a>(report: &'a CauseReport, id: &str) -> &'a CauseView {
        report.causes.iter().find(|view| view.id == id).unwrap()
    }

    const fn seen<'a>(part: &'a str, tag: Tag, grade: Grade) -> Entry<'a> {
        (part, Some((tag, grade, &[])))
    }

    const SCORED: [Entry<'_>; 3] = [
        seen("main-shell.1.lower", Tag::Scoring, Grade::TWO),
        seen("main-shell.2.lower", Tag::Scoring, Grade::TWO),
        seen("main-shell.3.lower", Tag::Scoring, Grade::THREE),
    ];
    const DEBRIS: [Entry<'_>; 2] = [
        seen("rod-shell.1.upper", Tag::EmbeddedDebris, Grade::THREE),
        seen("rod-shell.2.upper", Tag::EmbeddedDebris, Grade::TWO),
    ];
    const FRONT: &[Zone] = &[Zone::FrontLeft, Zone::FrontCrown, Zone::FrontRight];
    const REAR: &[Zone] = &[Zone::RearLeft, Zone::RearCrown, Zone::RearRight];
    const ASKEW: [Entry<'_>; 4] = [
        ("rod-shell.2.upper", Some((Tag::CopperShowing, Grade::THREE, FRONT))),
        ("rod-shell.2.lower", Some((Tag::CopperShowing, Grade::TWO, REAR))),
        ("rod-shell.1.upper", None),
        ("rod-shell.3.upper", None),
    ];

    #[test]
    fn an_empty_job_returns_the_priors() {
        let report = told(&[]);
        assert!(!report.enough_seen && report.unexplained.is_empty());
        assert_eq!(report.summary, "Nothing has been examined yet.");
        for cause in catalogue::ALL.iter().filter(|cause| cause.is_shared()) {
            assert!((of(&report, cause.id).probability - cause.prior).abs() < 1e-12, "{}", cause.id);
        }
        // Four rods, each bent as likely as the other: at some place or other is a little less than four times one.
        let bent = of(&report, "bent-rod").probability;
        let straight = 1.0 - 0.02_f64 / 4.0;
        assert!((bent - (1.0 - straight * straight * straight * straight)).abs() < 2e-3, "{bent}");
        let without_engine = diagnose(None, &Job::default(), &BTreeMap::new());
        assert_eq!(without_engine.causes.len(), catalogue::ALL.len());
    }

    #[test]
    fn clean_speaks_against_and_not_looked_at_says_nothing() {
        let before = of(&told(&SCORED), "dirt-in-oil").probability;
        let clean = [("rod-shell.3.upper", None), ("rod-shell.4.upper", None)];
        let after = of(&told(&[&SCORED[..], &clean[..]].concat()), "dirt-in-oil").probability;
        assert!(after < before, "{after} with clean rod shells, {before} without");
    }

    #[test]
    fn evidence_is_told_in_words_strongest_first() {
        let report = told(&[&SCORED[..], &DEBRIS[..], &[("thrust-face.front", None)]].concat());
        let top = &report.causes[0];
        let words: Vec<&str> = top.evidence_for.iter().map(|evidence| evidence.words.as_str()).collect();
        assert_eq!(words[0], "embedded debris, grade 2 to 3, on 2 upper rod bearing shells");
        assert!(words.contains(&"scoring, grade 2 to 3, on 3 lower main bearing shells"), "{words:?}");
        assert!(top.evidence_for.windows(2).all(|pair| pair[0].weight >= pair[1].weight));
        assert!(top.evidence_for[0].alone);
    }

    #[test]
    fn a_cause_of_one_place_is_told_with_its_place() {
        let report = told(&ASKEW);
        let top = &report.causes[0];
        assert_eq!((top.id.as_str(), top.name.as_str()), ("bent-rod", "bent or twisted rod, cylinder 2"));
        assert!(report.summary.ends_with("Where: cylinder 2."), "{}", report.summary);
        assert_eq!(top.evidence_for[0].parts.len(), 1);
        assert!(top.evidence_for[0].words.contains("at the "), "{}", top.evidence_for[0].words);
    }

    /// The zones alone tell these apart: the same tag and grade on the same two shells.
    #[test]
    fn zones_tell_causes_apart() {
        let with = |upper: &[Zone], lower: &[Zone]| {
            let entries = [
                ("rod-shell.2.upper", Some((Tag::CopperShowing, Grade::TWO, upper))),
                ("rod-shell.2.lower", Some((Tag::CopperShowing, Grade::TWO, lower))),
                ("rod-shell.1.upper", None),
                ("rod-shell.1.lower", None),
                ("rod-shell.3.upper", None),
                ("rod-shell.3.lower", None),
            ];
            told(&entries).causes[0].id.clone()
        };
        use Zone::{MiddleCrown, MiddleLeft, MiddleRight};
        assert_eq!(with(FRONT, REAR), "bent-rod");
        assert_eq!(with(REAR, FRONT), "bent-rod");
        assert_eq!(with(FRONT, FRONT), "tapered-journal");
        assert_eq!(with(&[FRONT, REAR].concat(), &[FRONT, REAR].concat()), "hourglass-journal");
        let band = &[MiddleLeft, MiddleCrown, MiddleRight];
        assert_eq!(with(band, band), "barrel-journal");
        assert_eq!(with(&[MiddleLeft], &[MiddleRight]), "shifted-cap");
        assert_eq!(with(&[MiddleLeft, MiddleRight], &[MiddleLeft, MiddleRight]), "excessive-crush");
    }

    #[test]
    fn more_of_the_same_never_lowers_a_cause_and_a_second_cause_explains_the_first_away() {
        let mut before = 0.0;
        for n in 1..=4 {
            let parts: Vec<String> = (1..=n).map(|n| format!("rod-shell.{n}.upper")).collect();
            let entries: Vec<Entry<'_>> =
                parts.iter().map(|part| seen(part, Tag::EmbeddedDebris, Grade::TWO)).collect();
            let dirt = of(&told(&entries), "dirt-in-oil").probability;
            assert!(dirt >= before, "{dirt} with {n} shells, {before} with fewer");
            before = dirt;
        }
        // Wiping with heat speaks for starvation; corrosion on the same shells takes nothing from it, heat that is
        // explained by a known overheating does.
        let hot =
            [seen("main-shell.2.lower", Tag::HotSpot, Grade::TWO), seen("rod-shell.2.upper", Tag::HotSpot, Grade::TWO)];
        let (engine, mut job) = job(Arrangement::inline(4), &hot);
        let starved = |job: &Job| {
            let report = diagnose(Some(&engine), job, &BTreeMap::new());
            of(&report, "oil-starvation").probability
        };
        let alone = starved(&job);
        job.history.insert(HistoryFact::Overheated, Answer::Yes);
        assert!(starved(&job) < alone, "a known overheating explains the heat");
    }

    #[test]
    fn exchanging_front_and_rear_changes_nothing_but_the_names() {
        let entries = [
            ("main-shell.2.lower", Some((Tag::CopperShowing, Grade::THREE, FRONT))),
            ("main-shell.4.upper", Some((Tag::Wiping, Grade::TWO, REAR))),
            ("rod-shell.1.upper", Some((Tag::FatigueCracks, Grade::TWO, FRONT))),
            ("crankpin.1", Some((Tag::Scoring, Grade::TWO, &[Zone::JournalRear]))),
            ("thrust-face.front", Some((Tag::Scoring, Grade::TWO, &[]))),
            ("main-shell.1.lower", None),
        ];
        let swapped = [
            ("main-shell.4.lower", Some((Tag::CopperShowing, Grade::THREE, REAR))),
            ("main-shell.2.upper", Some((Tag::Wiping, Grade::TWO, FRONT))),
            ("rod-shell.4.upper", Some((Tag::FatigueCracks, Grade::TWO, REAR))),
            ("crankpin.4", Some((Tag::Scoring, Grade::TWO, &[Zone::JournalFront]))),
            ("thrust-face.rear", Some((Tag::Scoring, Grade::TWO, &[]))),
            ("main-shell.5.lower", None),
        ];
        let (one, other) = (told(&entries), told(&swapped));
        for view in &one.causes {
            let id = match view.id.as_str() {
                "thrust-overload-front" => "thrust-overload-rear",
                "thrust-overload-rear" => "thrust-overload-front",
                id => id,
            };
            let mirrored = of(&other, id).probability;
            assert!((view.probability - mirrored).abs() < 1e-12, "{id}: {} and {mirrored}", view.probability);
        }
        let gains = [&entries, &swapped].map(|entries| next(entries).unwrap().gain);
        assert!((gains[0] - gains[1]).abs() < 1e-9);
    }

    #[test]
    fn when_nothing_is_left_to_look_at_measuring_is_asked_for_and_it_stops() {
        let (engine, mut job) = job(Arrangement::inline(2), &[]);
        job.sheet.head.general_rules = true;
        for part in engine.parts() {
            job.parts.entry(*part).or_default().clean = true;
        }
        for shell in ["rod-shell.1.upper", "rod-shell.1.lower"] {
            let record = job.parts.entry(shell.parse().unwrap()).or_default();
            record.clean = false;
            let zones = FRONT.iter().copied().collect();
            record.tags.insert(Tag::CopperShowing, TagRecord { grade: Grade::THREE, zones });
        }
        let ask = |job: &Job| next_look(&engine, job, &BTreeMap::new(), &mut Memo::default());
        let look = ask(&job).unwrap();
        assert!(look.measure && look.part.to_string() == "crankpin.1", "{look:?}");
        assert_eq!(
            look.sentence,
            "Measure crankpin 1: a reading that shows it tapered would speak for tapered journal there."
        );
        job.sheet.head.general_rules = false;
        assert_eq!(ask(&job), None, "without a limit a size says nothing");
    }

    /// A hot, wiped shell among clean ones: dirt behind it or a shell that moved shows at its back, which a look at its face
    /// leaves open until somebody says what is there.
    #[test]
    fn the_back_of_a_shell_whose_face_was_seen_is_asked_for() {
        let (engine, mut job) = job(Arrangement::inline(4), &[]);
        for part in engine.parts() {
            job.parts.entry(*part).or_default().clean = true;
        }
        let shell: Part = "rod-shell.2.upper".parse().unwrap();
        let record = job.parts.entry(shell).or_default();
        record.clean = false;
        let spot = std::iter::once(Zone::MiddleCrown).collect();
        record.tags.insert(Tag::HotSpot, TagRecord { grade: Grade::THREE, zones: spot });
        let ask = |job: &Job| next_look(&engine, job, &BTreeMap::new(), &mut Memo::default());
        let look = ask(&job).unwrap();
        assert_eq!((look.part, look.zone, look.tag), (shell, Some(Zone::Back), None), "{look:?}");
        assert!(look.sentence.starts_with("Look at the back of rod 2, upper shell: bright back"), "{}", look.sentence);
        let moved = |job: &Job| {
            let report = diagnose(Some(&engine), job, &BTreeMap::new());
            of(&report, "insufficient-crush").probability
        };
        let before = moved(&job);
        job.parts.entry(shell).or_default().back_clean = true;
        assert!(moved(&job) < before, "a clean back speaks against a shell that moved");
        assert_ne!(ask(&job).map(|look| look.part), Some(shell), "it was answered");
    }

    #[test]
    fn the_past_shifts_the_odds() {
        let (engine, mut job) = job(Arrangement::inline(4), &[]);
        let corrosion = |job: &Job| {
            let report = diagnose(Some(&engine), job, &BTreeMap::new());
            of(&report, "corrosion").probability
        };
        let before = corrosion(&job);
        job.history.insert(HistoryFact::LongStorage, Answer::Yes);
        let stored = corrosion(&job);
        job.history.insert(HistoryFact::LongStorage, Answer::No);
        assert!(stored > before && corrosion(&job) < before);
    }

    #[test]
    fn what_was_worked_out_before_changes_nothing() {
        let mut memo = Memo::default();
        for n in 0..=ASKEW.len() {
            let (engine, job) = job(Arrangement::vee(8), &ASKEW[..n]);
            let anew = diagnose(Some(&engine), &job, &BTreeMap::new());
            assert_eq!(diagnose_with(Some(&engine), &job, &BTreeMap::new(), &mut memo), anew);
            let look = next_look(&engine, &job, &BTreeMap::new(), &mut Memo::default());
            assert_eq!(next_look(&engine, &job, &BTreeMap::new(), &mut memo), look);
        }
    }

    #[test]
    fn a_finding_without_a_cause_is_named() {
        let report = told(&[
            seen("timing-drive", Tag::Spalling, Grade::THREE),
            seen("rod.2", Tag::HotSpot, Grade::TWO),
            ("rod.1", None),
            ("rod.3", None),
            ("rod.4", None),
            ("rod-shell.2.upper", None),
            ("main-shell.1.lower", None),
        ]);
        let words: Vec<&str> = report.unexplained.iter().map(|odd| odd.words.as_str()).collect();
        assert_eq!(words, ["spalling, grade 3, on timing drive", "hot spot, grade 2, on rod 2"]);
    }

    #[test]
    fn the_next_look_is_a_part_not_looked_at_with_a_reason_and_it_stops() {
        let next = next(&ASKEW[..2]).unwrap();
        assert!(next.gain > 0.02 && next.sentence.ends_with('.'), "{next:?}");
        let (engine, mut all) = job(Arrangement::inline(4), &[]);
        let even = TagRecord { grade: Grade::TWO, zones: [].into() };
        for part in engine.parts() {
            if part.kind.row().tags.contains(&Tag::LooksEven) {
                all.parts.entry(*part).or_default().tags.insert(Tag::LooksEven, even.clone());
            } else {
                all.parts.entry(*part).or_default().clean = true;
            }
        }
        assert_eq!(next_look(&engine, &all, &BTreeMap::new(), &mut Memo::default()), None);
    }
}
