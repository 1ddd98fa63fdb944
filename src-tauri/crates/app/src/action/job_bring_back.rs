//! Brings a job back that was put away.

use super::Nothing;
use crate::{Error, Wearbook};

/// Which job.
pub type Arguments = super::OfJob;

/// Nothing to be told.
pub type Reply = Nothing;

/// Brings a job back within its 30 days.
///
/// # Errors
/// `no-such-job`, if it was not put away or is gone; what the store says.
pub fn act(book: &Wearbook, Arguments { job }: Arguments) -> Result<Reply, Error> {
    book.store.write::<_, Error>(|ledger| Ok(ledger.bring_back(job)?))?;
    Ok(Nothing {})
}
