//! A job with its photos in one file.

use std::io::Cursor;

use serde::Deserialize;
use serde_json::Value;
use wearbook_store::JobId;

use crate::archive::ARCHIVE_MIME;
use crate::{Error, File, Wearbook};

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
    /// Whether cleaned pictures stand in for the photos, which say neither where they were taken nor with which camera.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<bool>"))]
    pub give_away: bool,
}

impl Arguments {
    /// Reads them, for whoever saves an archive without this action.
    ///
    /// # Errors
    /// `arguments-refused`.
    pub fn read(arguments: Value) -> Result<Self, Error> {
        crate::dispatch::read(arguments)
    }
}

/// The archive.
pub type Reply = File;

/// Exports a job, whole in memory: for whoever can be given no file.
///
/// # Errors
/// `no-such-job`; `stopped`; and what the store says.
pub fn act(book: &Wearbook, asked: Arguments) -> Result<Reply, Error> {
    let file_name = book.archive_name(&asked)?;
    let bytes = book.write_archive(asked, Cursor::new(Vec::new()))?.into_inner();
    Ok(File { bytes, mime: ARCHIVE_MIME, file_name: Some(file_name) })
}
