//! What was done in a job, in words, latest first.

use crate::{Error, HistoryLine, Wearbook, view};

/// Which job.
pub type Arguments = super::OfJob;

/// A line for each edit.
pub type Reply = Vec<HistoryLine>;

/// Tells a job's history.
///
/// # Errors
/// `no-such-job`, and what the store says.
pub fn act(book: &Wearbook, Arguments { job }: Arguments) -> Result<Reply, Error> {
    book.look(job, |open| view::history(&open.log))
}
