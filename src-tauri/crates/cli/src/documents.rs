//! `documents`: a job's papers into a folder.

use std::fs;
use std::path::Path;

use serde_json::json;

use crate::failure::Failure;
use crate::file;
use crate::visit::Visit;

/// Each paper and the name of its file.
const PAPERS: [(&str, &str); 6] = [
    ("report-pdf", "condition-report.pdf"),
    ("report-text", "condition-report.txt"),
    ("sizes-pdf", "sizes.pdf"),
    ("sizes-csv", "sizes.csv"),
    ("closing-pdf", "closing.pdf"),
    ("evidence-pdf", "evidence.pdf"),
];

pub(crate) fn run(from: &Path, out: &Path) -> Result<(), Failure> {
    let (visit, job) = Visit::with_file(from)?;
    fs::create_dir_all(out).map_err(|error| Failure::of_file("made", out, &error))?;
    for (document, name) in PAPERS {
        let bytes = visit.fetch("document_get", json!({ "job": job, "document": document }))?;
        file::write(&out.join(name), &bytes)?;
    }
    for list in ["look-again", "machine-shop", "order", "rebuild-here", "clean", "put-right"] {
        let bytes = visit.fetch("document_get", json!({ "job": job, "document": "list-pdf", "list": list }))?;
        file::write(&out.join(format!("list-{list}.pdf")), &bytes)?;
    }
    Ok(())
}
