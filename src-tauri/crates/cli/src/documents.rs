//! `documents`: a job's papers into a folder.

use std::fs;
use std::path::Path;

use serde_json::json;

use crate::failure::Failure;
use crate::file;
use crate::visit::Visit;

/// Each paper and the name of its file.
const PAPERS: [(&str, &str); 4] = [
    ("report-pdf", "condition-report.pdf"),
    ("report-text", "condition-report.txt"),
    ("sizes-pdf", "sizes.pdf"),
    ("sizes-csv", "sizes.csv"),
];

pub(crate) fn run(from: &Path, out: &Path) -> Result<(), Failure> {
    let (visit, job) = Visit::with_file(from)?;
    fs::create_dir_all(out).map_err(|error| Failure::of_file("made", out, &error))?;
    for (document, name) in PAPERS {
        let bytes = visit.fetch("document_get", json!({ "job": job, "document": document }))?;
        file::write(&out.join(name), &bytes)?;
    }
    Ok(())
}
