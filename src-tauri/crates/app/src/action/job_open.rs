//! Opens a job: all that is known of it and all that follows.

use crate::{Error, JobView, Wearbook};

/// Which job.
pub type Arguments = super::OfJob;

/// The job.
pub type Reply = JobView;

/// Opens a job.
///
/// # Errors
/// `no-such-job`, and what the store says.
pub fn act(book: &Wearbook, Arguments { job }: Arguments) -> Result<Reply, Error> {
    book.look(job, |open| JobView::new(job, open))
}
