//! Runs the folder of published rules, `tests/published-rules` of the checkout: what manuals say is to be done with a part,
//! entered as a person would enter it. The folder's README says how a case is written.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a test may stop at once"
)]

mod data;

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use data::{Status, is_like, published};
use serde::Deserialize;
use serde_json::{Map, Value, json};
use wearbook_core::assess::{Assessment, assess};
use wearbook_core::decide::rules;
use wearbook_core::engine::Arrangement;
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, RecordedChange};
use wearbook_core::work::Outcome;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    /// What the manual says, in short.
    rule: String,
    /// The manual with its page or paragraph.
    source: String,
    status: BTreeSet<Status>,
    /// The items of the collected criteria that it covers.
    #[serde(default)]
    criteria: Vec<String>,
    /// What differs from an ordinary in-line engine of four cylinders.
    #[serde(default)]
    engine: Map<String, Value>,
    /// Every part was looked at and found clean before the entries.
    #[serde(default)]
    looked_at: bool,
    /// Edits in their published form; `parts` with a `*` stands for each part whose name fits.
    entries: Vec<Map<String, Value>>,
    expect: Vec<Expected>,
}

/// What must hold of every part whose name fits.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Expected {
    parts: String,
    outcome: Outcome,
    /// A rule that gives this outcome as one of its reasons.
    rule: Option<String>,
    /// A rule that must not speak.
    silent: Option<String>,
    /// Words of the reason of that rule, or else of any reason.
    because: Option<String>,
}

/// Items of the collected criteria that decide nothing about a part.
const NO_DECISION: [(&str, &str); 2] =
    [("defect-definitions", "names of defects and their causes"), ("glossary", "names of defects")];

fn cases() -> Vec<(String, Case)> {
    published("published-rules")
}

#[test]
fn what_manuals_say_is_what_is_decided() {
    let cases = cases();
    let told = |(file, case): &(String, Case)| -> Vec<String> {
        wrong(case).iter().map(|wrong| format!("{file}: {}: {wrong}", case.rule)).collect()
    };
    let failures: Vec<String> = cases.iter().flat_map(told).collect();
    assert!(failures.is_empty(), "{} in {} cases:\n{}", failures.len(), cases.len(), failures.join("\n"));
}

/// A rule that names a manual must have a case; what is common practice has its test beside it.
#[test]
fn every_rule_with_a_published_source_has_a_case() {
    let expected: BTreeSet<String> =
        cases().into_iter().flat_map(|(_, case)| case.expect).filter_map(|expected| expected.rule).collect();
    let without: Vec<&str> = rules::ALL
        .iter()
        .filter(|rule| !rule.source.starts_with("Common practice") && !expected.contains(rule.id.as_str()))
        .map(|rule| rule.id.as_str())
        .collect();
    assert!(without.is_empty(), "no published case for {without:?}");
}

#[test]
fn every_collected_criterion_has_a_case() {
    let path =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../../shared/data/criteria/public_manual_criteria.json");
    let Ok(text) = std::fs::read_to_string(&path) else {
        println!("skipped: no collected criteria at ../shared/data/criteria");
        return;
    };
    let collected: Value = serde_json::from_str(&text).unwrap();
    let ids: BTreeSet<&str> =
        collected["items"].as_array().unwrap().iter().map(|item| item["id"].as_str().unwrap()).collect();
    let cases = cases();
    let covered: BTreeSet<&str> = cases
        .iter()
        .flat_map(|(_, case)| case.criteria.iter().map(String::as_str))
        .chain(NO_DECISION.iter().map(|(id, _)| *id))
        .collect();
    assert_eq!(covered, ids);
}

/// All that comes out otherwise than the case says.
fn wrong(case: &Case) -> Vec<String> {
    if case.source.trim().is_empty() || case.status.is_empty() || case.expect.is_empty() {
        return vec!["a case names its source, what that is worth, and expects something".into()];
    }
    let assessment = match entered(case) {
        Ok(job) => assess(&job),
        Err(wrong) => return vec![wrong],
    };
    case.expect.iter().flat_map(|expected| unmet(expected, &assessment)).collect()
}

fn unmet(expected: &Expected, assessment: &Assessment) -> Vec<String> {
    let fitting: Vec<_> =
        assessment.parts.iter().filter(|view| is_like(&view.part.to_string(), &expected.parts)).collect();
    if fitting.is_empty() {
        return vec![format!("{} names no part", expected.parts)];
    }
    if let Some(unknown) = expected
        .rule
        .iter()
        .chain(&expected.silent)
        .find(|id| rules::ALL.iter().all(|rule| rule.id.as_str() != id.as_str()))
    {
        return vec![format!("there is no rule “{unknown}”")];
    }
    let mut all = vec![];
    for view in fitting {
        let (part, decision) = (view.part, &view.decision);
        if decision.outcome != expected.outcome {
            all.push(format!("{part}: the outcome is {:?}: {:#?}", decision.outcome, decision.reasons));
        }
        let decides = |id: &String| {
            decision
                .reasons
                .iter()
                .any(|reason| reason.rule.as_str() == id.as_str() && reason.outcome == expected.outcome)
        };
        if !expected.rule.as_ref().is_none_or(decides) {
            all.push(format!("{part}: {:?} does not decide it: {:#?}", expected.rule, decision.reasons));
        }
        let speaks = |id: &String| decision.reasons.iter().any(|reason| reason.rule.as_str() == id.as_str());
        if expected.silent.as_ref().is_some_and(speaks) {
            all.push(format!("{part}: {:?} speaks", expected.silent));
        }
        let says = |words: &String| {
            let meant = |rule: &str| expected.rule.as_ref().is_none_or(|id| rule == id);
            decision.reasons.iter().any(|reason| meant(reason.rule.as_str()) && reason.because.contains(words))
        };
        if !expected.because.as_ref().is_none_or(says) {
            all.push(format!("{part}: no reason says {:?}: {:#?}", expected.because, decision.reasons));
        }
    }
    all
}

/// The job, each entry held against it as at its border.
fn entered(case: &Case) -> Result<Job, String> {
    let mut arrangement = serde_json::to_value(Arrangement::inline(4)).unwrap();
    arrangement.as_object_mut().unwrap().extend(case.engine.clone());
    let mut edits: Vec<Edit> = vec![];
    let mut job = Job::default();
    let mut append = |entry: Value| -> Result<(), String> {
        let change: Change = serde_json::from_value(entry.clone()).map_err(|error| format!("{entry}: {error}"))?;
        job.check(&change).map_err(|refused| format!("{entry}: {refused}"))?;
        let id = EditId::next(edits.last().map(|edit| edit.id), 1, DeviceId(1));
        edits.push(Edit { id, change: RecordedChange::Known(change) });
        job = Job::fold(&edits);
        Ok(())
    };
    append(json!({ "do": "arrange", "arrangement": arrangement }))?;
    let engine = wearbook_core::engine::Engine::new(serde_json::from_value(arrangement).unwrap()).unwrap();
    let names: BTreeMap<String, _> = engine.parts().iter().map(|part| (part.to_string(), part)).collect();
    if case.looked_at {
        names.keys().try_for_each(|part| append(json!({ "do": "clean", "part": part })))?;
    }
    for entry in &case.entries {
        let Some(mask) = entry.get("parts") else {
            append(entry.clone().into())?;
            continue;
        };
        let mask = mask.as_str().unwrap_or_default();
        let fitting: Vec<&String> = names.keys().filter(|name| is_like(name, mask)).collect();
        if fitting.is_empty() {
            return Err(format!("{mask} names no part"));
        }
        for part in fitting {
            let mut one = entry.clone();
            one.remove("parts");
            one.insert("part".into(), part.as_str().into());
            append(one.into())?;
        }
    }
    Ok(job)
}

/// Whether a name fits, `*` standing for anything.
/// The runner is a check of checks: it must fail where a case is wrong.
#[test]
fn a_wrong_case_fails() {
    let says = |expect: Value, said: &str| {
        let case = json!({
            "rule": "constructed", "source": "constructed", "status": ["from-memory"],
            "entries": [{ "do": "tag", "parts": "rod-shell.*.upper", "tag": "bright-back", "grade": 1 }],
            "expect": [expect],
        });
        let wrong = wrong(&serde_json::from_value(case).unwrap()).join("\n");
        assert!(if said.is_empty() { wrong.is_empty() } else { wrong.contains(said) }, "{wrong}");
    };
    let all = "rod-shell.*.upper";
    says(json!({ "parts": all, "outcome": "replace", "rule": "shell-moved", "because": "shiny spot" }), "");
    says(json!({ "parts": all, "outcome": "put-back" }), "the outcome is Replace");
    says(json!({ "parts": all, "outcome": "replace", "rule": "shell-debris" }), "does not decide it");
    says(json!({ "parts": all, "outcome": "replace", "rule": "shell-debri" }), "there is no rule");
    says(json!({ "parts": all, "outcome": "replace", "silent": "shell-moved" }), "speaks");
    says(json!({ "parts": all, "outcome": "replace", "because": "blue moon" }), "no reason says");
    says(json!({ "parts": "rod-shell.9.upper", "outcome": "replace" }), "names no part");
}
