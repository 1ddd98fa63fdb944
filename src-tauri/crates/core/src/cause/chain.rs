//! From the way in over the damage to the complaint: how it came about, read off what is believed of each.

use std::collections::BTreeMap;

use super::answers::{Answered, ComplaintAnswer};
use super::catalogue::Cause;
use super::explained::Explained;
use super::report::{Chain, WayInView};
use super::topic::Topic;
use super::way_in::{Likely, WayIn, ways_in};
use crate::engine::{Engine, Part, PartKind};
use crate::job::Job;

/// A way in is named from this probability on (our judgement).
const NAMED_FROM: f64 = 0.5;
/// Ways in less likely than this are not told.
const TOLD_FROM: f64 = 0.1;
/// A cause less likely than this shows little.
const UNLIKELY: f64 = 0.25;
/// Ways in told in a chain: those of which something was found first.
const WAYS_NAMED: usize = 4;
/// Findings told as the damage.
const DAMAGE_TOLD: usize = 2;

/// The ways in that are told of a cause, likeliest first.
pub(super) fn told(explained: &Explained, job: &Job) -> Vec<WayInView> {
    let view = |own: Likely| WayInView {
        id: own.way.id.into(),
        words: own.way.words.into(),
        probability: own.probability,
        named: is_named(&own, job),
    };
    ways_in(explained.cause, job).into_iter().filter(|own| own.probability >= TOLD_FROM).map(view).collect()
}

/// Whether a way in is named: it is likely, and something tells of it. What is only likely is asked for.
fn is_named(own: &Likely, job: &Job) -> bool {
    own.probability >= NAMED_FROM && own.way.is_known(job)
}

/// A way in, with what the parts it came through say against it.
fn told_of(way: &WayIn, cause: &Cause, beliefs: &BTreeMap<&str, f64>, job: &Job) -> String {
    let is_cylinder = |part: &Part| matches!(part.kind, PartKind::Bore | PartKind::Piston);
    let looked = || job.parts.iter().any(|(part, record)| is_cylinder(part) && record.looked_at());
    match way.through {
        Some((by, otherwise)) if by != cause.id && looked() && beliefs.get(by).is_some_and(|p| *p < UNLIKELY) => {
            format!("{} ({otherwise})", way.words)
        }
        _ => way.words.into(),
    }
}

/// The chain of a cause; `beliefs` are those in all causes.
pub(super) fn chain(
    explained: &Explained,
    beliefs: &BTreeMap<&str, f64>,
    answers: &[ComplaintAnswer],
    engine: Option<&Engine>,
    job: &Job,
) -> Chain {
    let ways = ways_in(explained.cause, job);
    let told = |own: &Likely| told_of(own.way, explained.cause, beliefs, job);
    let mut named: Vec<&Likely> = ways.iter().filter(|own| is_named(own, job)).collect();
    // First what was found and stands open, then what else was found; of each last that whose own cause shows little.
    named.sort_by_key(|own| (own.way.found(job).is_empty(), !own.way.is_open_door(), told(own) != own.way.words));
    let named: Vec<String> = named.into_iter().take(WAYS_NAMED).map(told).collect();
    let mut ask: Vec<String> = Vec::new();
    if named.is_empty() {
        let questions = ways.iter().flat_map(|own| own.way.unasked(job)).map(|fact| fact.question().to_owned());
        questions.for_each(|question| {
            if !ask.contains(&question) {
                ask.push(question);
            }
        });
    }
    let mut look: Vec<Part> = Vec::new();
    if let (true, Some(engine)) = (named.is_empty(), engine) {
        for own in &ways {
            look.extend(own.way.open(engine, job).filter(|part| !look.contains(part)).collect::<Vec<Part>>());
        }
    }
    let seen = || explained.speaks_for.iter().filter(|reason| reason.topic.is_some_and(Topic::is_found));
    let parts: Vec<Part> = seen().flat_map(|reason| reason.parts.iter().copied()).collect();
    let is_of_it = |answer: &&ComplaintAnswer| {
        matches!(answer.answered, Answered::Explained | Answered::Partly)
            && answer.parts.iter().any(|part| parts.contains(part))
    };
    Chain {
        ways: named,
        ask,
        has_way_in: !ways.is_empty(),
        cause: explained.cause.name(job.terms).into(),
        damage: seen().take(DAMAGE_TOLD).map(|reason| reason.words.clone()).collect(),
        complaints: answers.iter().filter(is_of_it).map(|answer| answer.told.clone()).collect(),
        look_labels: engine.map_or_else(Vec::new, |engine| look.iter().map(|part| engine.label(*part)).collect()),
        look,
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::{Assessment, assess};
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use serde_json::{Value, json};

    /// Dust in every cylinder, and what else is told.
    fn dusty(changes: &[Value]) -> Assessment {
        let scored = (1..=4).flat_map(|n| [format!("bore.{n}"), format!("piston.{n}")]);
        let scored = scored.map(|part| json!({ "do": "tag", "part": part, "tag": "scoring", "grade": 2 }));
        let all: Vec<Value> =
            std::iter::once(arrange(&Arrangement::inline(4))).chain(scored).chain(changes.to_vec()).collect();
        assess(&job_of(&all))
    }

    /// What is only likely is asked for; what was found, or told of the past, is named.
    #[test]
    fn a_way_is_named_only_where_something_tells_of_it() {
        let of = |came: &Assessment, id: &str| came.causes.causes.iter().find(|cause| cause.id == id).unwrap().clone();
        let dust = of(&dusty(&[]), "dusty-air");
        assert!(dust.named && dust.chain.ways.is_empty() && !dust.ways_in[0].named, "{:?}", dust.chain);
        assert_eq!(dust.chain.look_labels, ["Air cleaner and duct"]);
        let torn = json!({ "do": "tag", "part": "air-cleaner", "tag": "torn", "grade": 3 });
        let dust = of(&dusty(&[torn]), "dusty-air");
        assert_eq!(dust.chain.ways, ["an air cleaner that leaks, is torn or missing"]);
        let thinned =
            (1..=5).map(|n| format!("main-shell.{n}.lower")).chain((1..=4).map(|n| format!("rod-shell.{n}.upper")));
        let thinned = thinned.map(|part| json!({ "do": "tag", "part": part, "tag": "copper-showing", "grade": 2 }));
        let rough: Vec<Value> = std::iter::once(arrange(&Arrangement::inline(4))).chain(thinned).collect();
        let with = |answer: Option<&str>| {
            let told = answer.map(|answer| json!({ "do": "recall", "fact": "recent-rebuild", "answer": answer }));
            of(&assess(&job_of(&rough.iter().cloned().chain(told).collect::<Vec<_>>())), "poor-journal-finish").chain
        };
        assert_eq!(with(Some("yes")).ways, ["a mistake at an earlier assembly"]);
        assert_eq!((with(Some("no")).ways.len(), with(Some("no")).ask.len()), (0, 0));
        let asked = with(None);
        assert_eq!(asked.ways, [""; 0]);
        assert_eq!(asked.ask, ["Was it rebuilt within the last few hundred hours?"]);
    }

    /// A torn cleaner lets dust into the cylinders first: where they show none, it is said beside it.
    #[test]
    fn the_way_in_and_its_own_cause_do_not_contradict() {
        let tag = |part: String, tag: &str| json!({ "do": "tag", "part": part, "tag": tag, "grade": 3 });
        let mut edits: Vec<Value> = vec![arrange(&Arrangement::inline(4))];
        edits.extend((1..=4).map(|n| tag(format!("rod-shell.{n}.upper"), "embedded-debris")));
        edits.push(tag("air-cleaner".into(), "torn"));
        let way = |edits: &[Value]| {
            let causes = assess(&job_of(edits)).causes.causes;
            causes.into_iter().find(|cause| cause.id == "dirt-in-oil").unwrap().chain.ways[0].clone()
        };
        assert!(!way(&edits).contains("little dust"), "nobody looked at the cylinders");
        edits.extend(
            (1..=4)
                .flat_map(|n| [format!("bore.{n}"), format!("piston.{n}")])
                .map(|part| json!({ "do": "clean", "part": part })),
        );
        assert!(way(&edits).ends_with("(the cylinders show little dust)"), "{}", way(&edits));
    }

    /// Grit in every shell, taken in by a torn air cleaner beside oil that was kept too long.
    #[test]
    fn the_damage_is_what_was_found_and_the_way_that_was_found_stands_first() {
        let tag = |part: String, tag: &str| json!({ "do": "tag", "part": part, "tag": tag, "grade": 3 });
        let shells = (1..=4).flat_map(|n| ["upper", "lower"].map(|half| format!("rod-shell.{n}.{half}")));
        let mut edits: Vec<Value> = vec![arrange(&Arrangement::inline(4))];
        edits.extend(shells.map(|shell| tag(shell, "embedded-debris")));
        edits.push(tag("air-cleaner".into(), "torn"));
        edits.push(json!({ "do": "recall", "fact": "neglected-oil", "answer": "yes" }));
        let causes = assess(&job_of(&edits)).causes.causes;
        let dirt = causes.into_iter().find(|cause| cause.id == "dirt-in-oil").unwrap();
        assert!(dirt.named && dirt.chain.ways[0].starts_with("an air cleaner"), "{:?}", dirt.chain);
        let found = dirt.chain.damage.iter().filter(|words| words.contains("grade 3"));
        assert_eq!(found.count(), dirt.chain.damage.len(), "{:?}", dirt.chain.damage);
        assert!(!dirt.chain.damage.is_empty());
    }
}
