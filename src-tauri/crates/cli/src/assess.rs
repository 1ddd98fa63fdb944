//! `assess`: what follows from a job, as JSON or in a page of text.

use std::fmt::Write as _;
use std::io::Write as _;
use std::path::Path;

use serde_json::{Value, json};

use crate::failure::Failure;
use crate::visit::Visit;

pub(crate) fn run(file: &Path, as_json: bool) -> Result<(), Failure> {
    let (visit, job) = Visit::with_file(file)?;
    let text = if as_json {
        let view = visit.ask("job_open", json!({ "job": job }), None)?;
        let assessment = view.get("assessment").unwrap_or(&Value::Null);
        format!("{assessment:#}\n")
    } else {
        page(&visit, &job)?
    };
    std::io::stdout().write_all(text.as_bytes()).map_err(Failure::Output)
}

/// The report that the customer gets as text says all of it in words; ahead of it stands how likely each cause is.
fn page(visit: &Visit, job: &Value) -> Result<String, Failure> {
    let view = visit.ask("job_open", json!({ "job": job }), None)?;
    let mut page = String::from("Causes, most likely first:\n");
    let causes = view.pointer("/assessment/causes/causes").and_then(Value::as_array);
    // Ordinary wear is no cause: the report says it once.
    let is_ordinary = |cause: &&Value| cause.get("ordinary").and_then(Value::as_bool).unwrap_or_default();
    for cause in causes.into_iter().flatten().filter(|cause| !is_ordinary(cause)) {
        let word = |key: &str| cause.get(key).and_then(Value::as_str).unwrap_or_default();
        // Writing to a text can't fail.
        let _ = writeln!(page, "  {}: {}, {}", word("name"), word("likelihood"), word("percent"));
    }
    let report = visit.fetch("document_get", json!({ "job": job, "document": "report-text" }))?;
    page.push('\n');
    page.push_str(&String::from_utf8_lossy(&report));
    Ok(page)
}
