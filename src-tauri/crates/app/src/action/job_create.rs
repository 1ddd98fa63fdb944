//! Begins a job.

use crate::{Error, JobView, Wearbook};

/// Nothing to be told.
pub type Arguments = super::Nothing;
/// The new, empty job.
pub type Reply = JobView;

/// Begins an empty job.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, _: Arguments) -> Result<Reply, Error> {
    let job = book.store.write(|ledger| ledger.create_job(book.clock.now_millis()).map_err(Error::from))?;
    book.look(job, |open| JobView::new(job, open))
}
