//! The look at a job's engine that would settle most.

use serde::Deserialize;
use wearbook_core::cause::NextLook;
use wearbook_store::JobId;

use crate::{Error, Wearbook};

/// Which job.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The job.
    pub job: JobId,
}

/// None where no look would help.
pub type Reply = Option<NextLook>;

/// Tells where to look next, and why.
///
/// # Errors
/// `no-such-job`, and what the store says.
pub fn act(book: &Wearbook, Arguments { job }: Arguments) -> Result<Reply, Error> {
    book.look(job, |open| open.next_look())
}
