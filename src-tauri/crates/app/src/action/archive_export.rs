//! A job with its photos in one file.

use std::io::Cursor;

use serde::Deserialize;
use wearbook_core::job::Job;
use wearbook_store::JobId;

use crate::{Error, File, Wearbook, view};

/// Which job.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The job.
    pub job: JobId,
    /// A number by which to ask how far it is.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub way: Option<u32>,
}

/// The archive.
pub type Reply = File;

/// Exports a job.
///
/// # Errors
/// `no-such-job`; `stopped`; and what the store says.
pub fn act(book: &Wearbook, Arguments { job, way }: Arguments) -> Result<Reply, Error> {
    let way = book.ways.begin(way);
    let bytes = book.store.export(job, Cursor::new(Vec::new()), &way)?.into_inner();
    let edits = book.store.read(|ledger| ledger.edits(job))?;
    let file_name = view::file_name(&Job::fold(&edits), book.clock.today(), "wearbook");
    Ok(File { bytes, mime: "application/zip", file_name: Some(file_name) })
}
