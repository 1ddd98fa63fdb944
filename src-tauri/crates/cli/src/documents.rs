//! `documents`: a job's papers into a folder.

use std::fs;
use std::path::Path;

use serde_json::{Value, json};
use wearbook_app::Answer;

use crate::failure::Failure;
use crate::file;
use crate::visit::Visit;

/// Each paper that every job has with what it is asked for besides, and the name of its file.
fn papers() -> [(&'static str, Value, &'static str); 13] {
    let none = || json!({});
    [
        ("customers-pdf", none(), "customers-page.pdf"),
        ("customers-png", none(), "customers-page.png"),
        ("customers-html", none(), "customers-page.html"),
        ("customers-text", none(), "customers-page.txt"),
        ("report-pdf", json!({ "extent": "short" }), "short-report.pdf"),
        ("report-pdf", json!({ "extent": "full" }), "full-report.pdf"),
        ("report-text", json!({ "extent": "full" }), "full-report.txt"),
        ("machine-shop-pdf", none(), "machine-shop.pdf"),
        ("parts-counter-pdf", none(), "parts-counter.pdf"),
        ("sizes-pdf", none(), "sizes.pdf"),
        ("sizes-csv", none(), "sizes.csv"),
        ("closing-pdf", none(), "closing.pdf"),
        ("evidence-pdf", none(), "evidence.pdf"),
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
    let lists = view.pointer("/assessment/lists").and_then(Value::as_array);
    for list in lists.into_iter().flatten() {
        let holds = |what: &str| list.get(what).and_then(Value::as_array).is_some_and(|all| !all.is_empty());
        let kind = list.get("kind").and_then(Value::as_str).unwrap_or_default();
        if LISTS.contains(&kind) && (holds("items") || holds("not_wanted")) {
            write("list-pdf", &json!({ "list": kind }), &format!("list-{kind}.pdf"))?;
        }
    }
    Ok(())
}
