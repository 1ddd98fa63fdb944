//! A book for the length of one command: the same as the app's, in a folder that goes away again.

use std::path::Path;

use serde_json::{Value, json};
use tempfile::TempDir;
use wearbook_app::{Answer, Clock, SystemClock, Wearbook};

use crate::failure::Failure;

/// A book that holds one job.
pub(crate) struct Visit {
    pub(crate) book: Wearbook,
    // Held so that the folder lives as long as the book.
    _folder: TempDir,
}

impl Visit {
    /// An empty book whose clock is given.
    pub(crate) fn begin(clock: impl Clock + 'static) -> Result<Self, Failure> {
        let folder = tempfile::tempdir()
            .map_err(|error| Failure::Sentence(format!("No temporary folder could be made: {error}.")))?;
        let book = Wearbook::open_with_clock(folder.path(), clock)?;
        Ok(Self { book, _folder: folder })
    }

    /// A book into which a file was taken in; also its job.
    pub(crate) fn with_file(file: &Path) -> Result<(Self, Value), Failure> {
        let visit = Self::begin(SystemClock)?;
        let arrival = visit.book.arrive(file)?;
        let imported = visit.ask("archive_import", json!({ "arrival": arrival }), None)?;
        for refused in imported.get("refused").and_then(Value::as_array).into_iter().flatten() {
            let told = |field: &str| refused.get(field).cloned().unwrap_or_default();
            eprintln!("{} entries were left out: {}", told("count"), told("reason"));
        }
        match imported.get("jobs").and_then(Value::as_array).map(Vec::as_slice) {
            Some([job]) => Ok((visit, job.clone())),
            jobs => Err(Failure::Sentence(format!(
                "{} holds the {} jobs of a shop: name a file that holds one job.",
                file.display(),
                jobs.map_or(0, <[_]>::len)
            ))),
        }
    }

    /// Does an action that answers JSON.
    pub(crate) fn ask(&self, action: &str, arguments: Value, bytes: Option<Vec<u8>>) -> Result<Value, Failure> {
        match self.book.act(action, arguments, bytes)? {
            Answer::Json(json) => serde_json::from_str(&json).map_err(|error| {
                Failure::Sentence(format!("The action {action} answered what can’t be read: {error}."))
            }),
            Answer::Bytes { .. } => Err(Failure::Sentence(format!("The action {action} answered with a file."))),
        }
    }

    /// Does an action that answers bytes.
    pub(crate) fn fetch(&self, action: &str, arguments: Value) -> Result<Vec<u8>, Failure> {
        match self.book.act(action, arguments, None)? {
            Answer::Bytes { bytes, .. } => Ok(bytes),
            Answer::Json(_) => Err(Failure::Sentence(format!("The action {action} answered without a file."))),
        }
    }
}
