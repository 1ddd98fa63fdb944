//! Runs the folder of published complaints, `tests/published-complaints` of the checkout: what a customer complains of, what
//! was found, and what must be said of it. The folder's README tells how a case is written.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

mod data;
mod entered;

use std::collections::{BTreeMap, BTreeSet};

use data::{Status, is_like, published};
use entered::{Entered, Step};
use serde::Deserialize;
use serde_json::{Map, Value, json};
use wearbook_core::assess::{Assessment, assess};
use wearbook_core::cause::{CauseView, ComplaintAnswer};
use wearbook_core::engine::{Part, PartKind};
use wearbook_core::job::Complaint;
use wearbook_core::wear::Tag;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    id: String,
    /// In our own words.
    about: String,
    source: String,
    status: BTreeSet<Status>,
    #[serde(default)]
    runs: Vec<Run>,
    /// Why it can't be entered yet, or not all of it.
    not_yet: Option<String>,
}

/// One engine: every part that is not named is clean and within.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Run {
    /// An engine of `tests/whole-engines/bases`.
    #[serde(default = "in_line_four")]
    base: String,
    /// Nothing else was looked at or measured.
    #[serde(default)]
    untouched: bool,
    /// What nobody looked at.
    #[serde(default)]
    unseen: Vec<String>,
    #[serde(default)]
    complaints: Vec<Complaint>,
    #[serde(default)]
    then: Vec<Step>,
    expect: Expect,
}

fn in_line_four() -> String {
    "sound-inline-4".into()
}

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
struct Expect {
    /// Of every complaint that was told.
    answers: Vec<Answer>,
    verdict: Option<Value>,
    /// The cause that ranks first beside ordinary wear, and is named.
    first: Option<String>,
    /// Where it is likeliest.
    place: Option<String>,
    /// Causes that are called unlikely at most, and very unlikely.
    low: Vec<String>,
    never: Vec<String>,
    /// Of a cause, the way in that is likeliest.
    ways_in: BTreeMap<String, String>,
    /// Of a part, a rule that speaks.
    rules: BTreeMap<Part, String>,
    /// Words by which a tag says what is not to be called so.
    told_apart: BTreeMap<Tag, String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Answer {
    complaint: Complaint,
    answered: Value,
    /// What explains it, each of them.
    #[serde(default)]
    by: Vec<String>,
    /// What must not be blamed for it.
    #[serde(default)]
    spared: Vec<String>,
    /// Words that must stand in the answer, and words that must not.
    #[serde(default)]
    says: Vec<String>,
    #[serde(default)]
    silent: Vec<String>,
    /// What is still to be looked at, among it this; and this before that.
    #[serde(default)]
    look: Vec<PartKind>,
    #[serde(default)]
    before: Vec<[PartKind; 2]>,
}

/// Below these probabilities a cause is called unlikely, and very unlikely.
const UNLIKELY: f64 = 0.25;
const VERY_UNLIKELY: f64 = 0.05;

fn cases() -> Vec<Case> {
    published("published-complaints").into_iter().map(|(_, case)| case).collect()
}

#[test]
fn complaints_are_answered_as_published() {
    let mut wrong = vec![];
    for case in cases() {
        let many = case.runs.len() > 1;
        for (n, run) in case.runs.iter().enumerate() {
            let which = if many { format!(", run {}", n + 1) } else { String::new() };
            let unmet = unmet(run);
            if !unmet.is_empty() {
                wrong.push(format!("{}{which}: {}\n  {}", case.id, case.about, unmet.join("\n  ")));
            }
        }
    }
    assert!(wrong.is_empty(), "{} fail:\n{}", wrong.len(), wrong.join("\n"));
}

/// The forty worked cases, each once: it runs, or says why it can't yet.
#[test]
fn every_worked_case_stands_there() {
    let cases = cases();
    let told: Vec<&str> = cases.iter().map(|case| case.id.as_str()).collect();
    let all: BTreeSet<String> = (1..=40).map(|n| format!("WY{n}")).collect();
    assert_eq!(told.len(), all.len());
    assert_eq!(told.iter().map(ToString::to_string).collect::<BTreeSet<_>>(), all);
    for case in &cases {
        let is_sourced = !case.about.is_empty() && !case.source.is_empty() && !case.status.is_empty();
        assert!(is_sourced, "{} has no source", case.id);
        let says_why = case.not_yet.as_ref().map(|reason| reason.len() > 20);
        let runs = case.runs.iter().all(|run| run.expect.is_any());
        assert!(runs && says_why.unwrap_or(!case.runs.is_empty()), "{} runs, or says why not", case.id);
    }
}

impl Expect {
    fn is_any(&self) -> bool {
        self.verdict.is_some() || self.first.is_some() || !self.answers.is_empty()
    }
}

fn assessed(run: &Run) -> (Entered, Assessment) {
    let mut entered = Entered::untouched(&run.base, &Map::new());
    if !run.untouched {
        let all = entered.engine.parts().iter().chain(entered.engine.outside());
        let is_unseen = |part: &&Part| run.unseen.iter().any(|mask| is_like(&part.to_string(), mask));
        let looked: Vec<Part> = all.filter(|part| !is_unseen(part)).copied().collect();
        entered.clean(&looked);
        entered.measured();
    }
    let complain = |complaint: &Complaint| json!({ "do": "complain", "complaint": complaint, "told": true });
    let complain: Vec<Step> =
        run.complaints.iter().map(|told| serde_json::from_value(complain(told)).unwrap()).collect();
    entered.then(&complain);
    entered.then(&run.then);
    let assessment = assess(&entered.job());
    (entered, assessment)
}

/// All that comes out otherwise than it should.
fn unmet(run: &Run) -> Vec<String> {
    let (entered, assessment) = assessed(run);
    let (Run { complaints, expect, .. }, causes) = (run, &assessment.causes);
    let mut wrong = vec![];
    if let Some(verdict) = expect.verdict.as_ref().filter(|verdict| **verdict != json!(causes.verdict)) {
        wrong.push(format!("{verdict} expected, it is {}: {}", json!(causes.verdict), ranks(&assessment)));
    }
    let expected: BTreeSet<Complaint> = expect.answers.iter().map(|answer| answer.complaint).collect();
    if expected != complaints.iter().copied().collect() {
        wrong.push("not every complaint that is told has its answer".into());
    }
    for expected in &expect.answers {
        match causes.answers.iter().find(|answer| answer.complaints.contains(&expected.complaint)) {
            Some(answer) => wrong.extend(unanswered(expected, answer, &entered)),
            None => wrong.push(format!("{:?} is not answered", expected.complaint)),
        }
    }
    let ranked: Vec<&CauseView> = causes.causes.iter().filter(|cause| !cause.ordinary).collect();
    if let Some(first) = &expect.first {
        let cause = ranked[0];
        let is_there =
            expect.place.as_ref().is_none_or(|place| cause.places.first().is_some_and(|at| at.label == *place));
        if cause.id != *first || !cause.named || !is_there {
            wrong.push(format!("{first} {:?} must be first and named: {}", expect.place, ranks(&assessment)));
        }
    }
    for (bound, ids) in [(UNLIKELY, &expect.low), (VERY_UNLIKELY, &expect.never)] {
        for id in ids {
            let is = of(&assessment, id).probability;
            if is >= bound {
                wrong.push(format!("{id} must lie below {bound}, it is {is:.3}"));
            }
        }
    }
    for (id, way) in &expect.ways_in {
        let ways = &of(&assessment, id).ways_in;
        if ways.first().is_none_or(|first| first.id != *way) {
            wrong.push(format!("{id} must have come by {way}: {ways:?}"));
        }
    }
    for (part, rule) in &expect.rules {
        let reasons = &assessment.part(*part).unwrap().decision.reasons;
        if !reasons.iter().any(|reason| reason.rule.as_str() == rule) {
            wrong.push(format!("{part}: {rule} does not speak: {reasons:?}"));
        }
    }
    let is_told = |(tag, words): &(&Tag, &String)| !tag.row().meaning.contains(words.as_str());
    wrong
        .extend(expect.told_apart.iter().filter(is_told).map(|(tag, words)| format!("{tag:?} does not say “{words}”")));
    wrong
}

fn unanswered(expected: &Answer, answer: &ComplaintAnswer, entered: &Entered) -> Vec<String> {
    let mut wrong = vec![];
    if json!(answer.answered) != expected.answered {
        wrong.push(format!("{} expected", expected.answered));
    }
    let of = |masks: &[String]| masks.iter().flat_map(|mask| entered.parts(mask)).collect::<Vec<Part>>();
    wrong.extend(of(&expected.by).iter().filter(|part| !answer.parts.contains(part)).map(|part| format!("by {part}")));
    wrong.extend(
        of(&expected.spared).iter().filter(|part| answer.parts.contains(part)).map(|part| format!("not by {part}")),
    );
    let says = |words: &&String| answer.because().contains(words.as_str());
    wrong.extend(expected.says.iter().filter(|words| !says(words)).map(|words| format!("“{words}” is not said")));
    wrong.extend(expected.silent.iter().filter(says).map(|words| format!("“{words}” is said")));
    let nth = |kind: &PartKind| answer.look.iter().position(|other| other == kind);
    let asked = |kind: &&PartKind| nth(kind).is_none();
    wrong.extend(expected.look.iter().filter(asked).map(|kind| format!("{kind:?} is not to be looked at")));
    let order =
        |[one, other]: &&[PartKind; 2]| nth(one).is_none() || nth(other).is_some_and(|other| Some(other) < nth(one));
    wrong.extend(expected.before.iter().filter(order).map(|[one, other]| format!("{one:?} before {other:?}")));
    if !wrong.is_empty() {
        let answer = format!("{:?} {:.3}: {} {:?}", answer.answered, answer.probability, answer.because(), answer.look);
        wrong.push(format!("it says: {answer}"));
    }
    let of = |wrong: String| format!("{:?}: {wrong}", expected.complaint);
    wrong.into_iter().map(of).collect()
}

fn of<'a>(assessment: &'a Assessment, id: &str) -> &'a CauseView {
    let cause = assessment.causes.causes.iter().find(|cause| cause.id == id);
    cause.unwrap_or_else(|| panic!("there is no cause “{id}”"))
}

fn ranks(assessment: &Assessment) -> String {
    let told = |cause: &CauseView| format!("{} {:.3}", cause.name, cause.probability);
    assessment.causes.causes.iter().take(5).map(told).collect::<Vec<_>>().join("; ")
}

/// The runner is a check of checks: it must fail where a case is wrong.
#[test]
fn a_wrong_case_fails() {
    #[track_caller]
    fn says(expect: Value, said: &str) {
        let run = json!({
            "complaints": ["knock-without-load"],
            "then": [{ "do": "tag", "parts": "rod-shell.3.*", "tag": "copper-showing", "grade": 4 }],
            "expect": expect,
        });
        let wrong = unmet(&serde_json::from_value(run).unwrap()).join("\n");
        assert!(if said.is_empty() { wrong.is_empty() } else { wrong.contains(said) }, "{wrong}");
    }
    let answer = |more: Value| {
        let mut answer = json!({ "complaint": "knock-without-load", "answered": "explained" });
        answer.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        json!({ "answers": [answer] })
    };
    says(answer(json!({ "by": ["rod-shell.3.*"], "spared": ["piston.*"] })), "");
    says(answer(json!({ "answered": "partly" })), "\"partly\" expected");
    says(answer(json!({ "by": ["rod-shell.*"] })), "by rod-shell.1.upper");
    says(answer(json!({ "spared": ["rod-shell.3.lower"] })), "not by rod-shell.3.lower");
    says(answer(json!({ "says": ["blue moon"] })), "is not said");
    says(answer(json!({ "silent": ["rod bearing"] })), "is said");
    says(answer(json!({ "look": ["bore"] })), "Bore is not to be looked at");
    says(json!({}), "not every complaint");
    let with = |more: Value| {
        let mut expect = answer(json!({}));
        expect.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        expect
    };
    says(with(json!({ "verdict": "sound" })), "\"sound\" expected");
    says(with(json!({ "first": "fuel-wash" })), "must be first");
    says(with(json!({ "never": ["barrel-journal"] })), "must lie below");
    says(with(json!({ "ways_in": { "dirt-in-oil": "fuel" } })), "must have come by");
    says(with(json!({ "rules": { "rod-shell.3.upper": "blue-moon" } })), "does not speak");
    says(with(json!({ "told_apart": { "hot-spot": "blue moon" } })), "does not say");
}
