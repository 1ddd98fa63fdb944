//! Opens a job: all that is known of it and all that follows.

use serde::Deserialize;
use wearbook_store::JobId;

use crate::{Error, JobView, Wearbook};

/// Which job.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The job.
    pub job: JobId,
}

/// The job.
pub type Reply = JobView;

/// Opens a job.
///
/// # Errors
/// `no-such-job`, and what the store says.
pub fn act(book: &Wearbook, Arguments { job }: Arguments) -> Result<Reply, Error> {
    book.look(job, |open| JobView::new(job, open))
}
