//! Puts a job away: out of the lists, and gone after 30 days.

use super::Nothing;
use crate::{Error, Wearbook};

/// Which job.
pub type Arguments = super::OfJob;

/// Nothing to be told.
pub type Reply = Nothing;

/// Puts a job away of which an archive was made as it stands.
///
/// # Errors
/// `not-archived`; `no-such-job`; what the store says.
pub fn act(book: &Wearbook, Arguments { job }: Arguments) -> Result<Reply, Error> {
    let now = book.clock.now_millis();
    book.store.write::<_, Error>(|ledger| {
        ledger.entered_at(now)?;
        Ok(ledger.put_away(job, now)?)
    })?;
    Ok(Nothing {})
}
