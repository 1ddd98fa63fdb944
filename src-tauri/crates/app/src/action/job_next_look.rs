//! The look at a job's engine that would settle most.

use wearbook_core::cause::NextLook;

use crate::{Error, Wearbook};

/// Which job.
pub type Arguments = super::OfJob;

/// None where no look would help.
pub type Reply = Option<NextLook>;

/// Tells where to look next, and why.
///
/// # Errors
/// `no-such-job`, and what the store says.
pub fn act(book: &Wearbook, Arguments { job }: Arguments) -> Result<Reply, Error> {
    book.look(job, |open| open.next_look())
}
