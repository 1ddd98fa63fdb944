//! What was done in a job, in words, latest first.

use serde::Deserialize;
use wearbook_store::JobId;

use crate::{Error, HistoryLine, Wearbook, view};

/// Which job.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The job.
    pub job: JobId,
}

/// A line for each edit.
pub type Reply = Vec<HistoryLine>;

/// Tells a job's history.
///
/// # Errors
/// `no-such-job`, and what the store says.
pub fn act(book: &Wearbook, Arguments { job }: Arguments) -> Result<Reply, Error> {
    book.look(job, |open| view::history(&open.log))
}
