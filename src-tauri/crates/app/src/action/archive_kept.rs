//! Notes that an archive of a job was saved.

use serde::Deserialize;
use wearbook_store::JobId;

use super::Nothing;
use crate::{Error, Wearbook};

/// Which job.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The job.
    pub job: JobId,
}

/// Nothing to be told.
pub type Reply = Nothing;

/// Notes that the archive that was made last was saved: from then on the job may be put away, until it is changed.
///
/// # Errors
/// `no-such-job`; what the store says.
pub fn act(book: &Wearbook, Arguments { job }: Arguments) -> Result<Reply, Error> {
    let now = book.clock.now_millis();
    book.store.write::<_, Error>(|ledger| Ok(ledger.note_archived(job, now)?))?;
    Ok(Nothing {})
}
