//! `documents`: a job's papers into a folder.

use std::fs;
use std::path::Path;

use serde_json::{Value, json};
use wearbook_app::Answer;

use crate::failure::Failure;
use crate::file;
use crate::visit::Visit;

/// Each paper that every job has with what it is asked for besides, and the name of its file.
fn papers() -> [(&'static str, Value, &'static str); 9] {
    let none = || json!({});
    [
        ("customers-pdf", none(), "customers-page.pdf"),
        ("customers-png", none(), "customers-page.png"),
        ("customers-html", none(), "customers-page.html"),
        ("customers-text", none(), "customers-page.txt"),
        ("report-pdf", json!({ "extent": "short" }), "short-report.pdf"),
        ("report-pdf", json!({ "extent": "full" }), "full-report.pdf"),
        ("report-text", json!({ "extent": "full" }), "full-report.txt"),
        ("sizes-pdf", none(), "sizes.pdf"),
        ("sizes-csv", none(), "sizes.csv"),
    ]
}

/// The other lists, written where they hold anything.
const LISTS: [&str; 4] = ["look-again", "rebuild-here", "clean", "put-right"];

pub(crate) fn run(from: &Path, out: &Path) -> Result<(), Failure> {
    let (visit, job) = Visit::with_file(from)?;
    fs::create_dir_all(out).map_err(|error| Failure::of_file("made", out, &error))?;
    let write = |document: &str, more: &Value, name: &str| {
        let mut arguments = json!({ "job": job, "document": document });
        if let (Some(all), Some(more)) = (arguments.as_object_mut(), more.as_object()) {
            all.extend(more.clone());
        }
        let bytes = visit.fetch("document_get", arguments)?;
        file::write(&out.join(name), &bytes)
    };
    for (document, more, name) in papers() {
        write(document, &more, name)?;
    }
    match visit.book.act("document_get", json!({ "job": job, "document": "labels-pdf" }), None) {
        Ok(Answer::Bytes { bytes, .. }) => file::write(&out.join("labels.pdf"), &bytes)?,
        // Before it is known how the engine is laid out there is nothing to stick them on.
        Err(error) if error.code != "nothing-to-print" => return Err(error.into()),
        _ => {}
    }
    let view = visit.ask("job_open", json!({ "job": job }), None)?;
    let has = |path: &str| view.pointer(path).is_some_and(|value| !value.is_null());
    if has("/strip_down/ordered") || has("/prices/strip_down") {
        write("strip-down-order-pdf", &json!({}), "strip-down-order.pdf")?;
    }
    if has("/refusal") {
        write("goes-back-pdf", &json!({}), "what-goes-back.pdf")?;
    }
    let all = |path: &str| view.pointer(path).and_then(Value::as_array).into_iter().flatten();
    let list_holds =
        |kind: &str| all("/assessment/lists").any(|list| list.get("kind") == Some(&kind.into()) && holds(list));
    let is_machined = list_holds("machine-shop");
    let is_told = |cause: &Value| cause.get("told") == Some(&true.into());
    let is_done = |list: &Value| list.get("done").and_then(Value::as_u64).is_some_and(|done| done > 0);
    let others = [
        ("machine-shop", is_machined),
        ("parts-counter", list_holds("order")),
        ("evidence", is_machined || all("/assessment/causes/causes").any(is_told)),
        ("closing", has("/refusal") || all("/assessment/lists").any(is_done)),
    ];
    for (name, _) in others.into_iter().filter(|(_, says_something)| *says_something) {
        write(&format!("{name}-pdf"), &json!({}), &format!("{name}.pdf"))?;
    }
    for list in all("/assessment/lists") {
        let kind = list.get("kind").and_then(Value::as_str).unwrap_or_default();
        if LISTS.contains(&kind) && holds(list) {
            write("list-pdf", &json!({ "list": kind }), &format!("list-{kind}.pdf"))?;
        }
    }
    Ok(())
}

/// Whether a list has anything on it.
fn holds(list: &Value) -> bool {
    let has = |what: &str| list.get(what).and_then(Value::as_array).is_some_and(|all| !all.is_empty());
    has("items") || has("not_wanted")
}
