//! Runs the folder of published cases, `tests/published` of the checkout: what manuals print, measured and judged by the
//! core as a person would enter it. The folder's README says how a case is written.

mod case;
mod compare;
#[path = "../data/mod.rs"]
mod data;
mod run;

use case::Source;
use data::{files, folder};

/// All that goes wrong in one file, each as "file: case: what".
fn failures(file: &str, text: &str) -> Vec<String> {
    let source: Source = match serde_json::from_str(text) {
        Ok(source) => source,
        Err(error) => return vec![format!("{file}: {error}")],
    };
    let mut failures: Vec<String> = source.faults().into_iter().map(|fault| format!("{file}: {fault}")).collect();
    for case in &source.cases {
        let wrong = run::wrong(&source, case);
        failures.extend(wrong.into_iter().map(|wrong| format!("{file}: {}: {wrong}", case.name)));
    }
    failures
}

#[test]
fn every_published_case_comes_out_as_published() {
    let mut all = Vec::new();
    for path in files(&folder("published")) {
        let file = path.file_name().unwrap().to_string_lossy();
        let text = std::fs::read_to_string(&path).unwrap();
        let failed = failures(&file, &text);
        let cases = serde_json::from_str::<Source>(&text).map_or(0, |source| source.cases.len());
        println!("{file}: {cases} cases, {} failures", failed.len());
        all.extend(failed);
    }
    assert!(all.is_empty(), "\n{}\n", all.join("\n"));
}

/// A case about a journal of 2.9974 in, with what is expected of it and what the runner must say.
#[track_caller]
fn says(expect: serde_json::Value, said: &[&str]) {
    let source = serde_json::json!({
        "citation": "constructed", "status": ["own-arithmetic"],
        "sheets": { "main": {
            "head": { "name": "One journal" },
            "lines": [{ "of": { "kind": "main-journal", "quantity": "diameter" }, "min": "2.999 in", "max": "3.000 in" }],
        } },
        "cases": [{
            "name": "one",
            "readings": [{ "part": "main-journal.1", "quantity": "diameter", "value": "2.9974 in" }],
            "expect": expect,
        }],
    });
    let failures = failures("f.json", &source.to_string());
    assert_eq!(failures.len(), said.len(), "{failures:?}");
    for (failure, said) in failures.iter().zip(said) {
        assert!(failure.contains(said), "{failure}");
    }
}

/// The runner is a check of checks: it must fail where a case is wrong, and where it says nothing.
#[test]
fn a_wrong_case_fails() {
    let figure = |verdict: &str, value: &str| {
        serde_json::json!({ "figures": [
            { "part": "main-journal.1", "quantity": "diameter", "value": value, "verdict": verdict }
        ] })
    };
    says(figure("outside", "2.9974 in"), &[]);
    says(figure("within", "2.9974 in"), &["f.json: one: diameter of main-journal.1: the verdict is outside"]);
    says(figure("outside", "2.9975 in"), &["value"]);
    says(serde_json::json!({ "refused": "misprint" }), &["nothing was refused"]);
    says(serde_json::json!({}), &["expects nothing"]);
    says(serde_json::json!({ "figures": [] }), &["expects nothing"]);
    says(serde_json::json!({ "figure": [] }), &["unknown field"]);
    says(serde_json::json!({ "plans": [{ "group": "mains", "action": "keep" }] }), &["the action is machine"]);
    says(serde_json::json!({ "doubts": ["ten times"] }), &["doubts"]);
    says(serde_json::json!({ "clearances": [{ "part": "main-journal.2", "most": "1 in" }] }), &["no clearance"]);
    says(serde_json::json!({ "orders": [{ "kind": "main-shell", "state": "free" }] }), &["the state is held"]);
}
