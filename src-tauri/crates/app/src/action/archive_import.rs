//! Takes in a job from a file.

use crate::{Error, Wearbook, picture};

/// How it is begun.
pub type Arguments = super::Awaited;
/// The job.
pub type Reply = super::Added;

/// Takes in a `.wearbook` archive, or a bare `job.json`. A job that is here already gets what it lacks.
///
/// # Errors
/// `archive-refused` or `edit-conflict` or `stopped` with a sentence, and nothing is taken in; what the store says.
pub fn act(book: &Wearbook, Arguments { way }: Arguments, bytes: Vec<u8>) -> Result<Reply, Error> {
    let way = book.ways.begin(way);
    let job = book.store.import(&bytes, book.clock.now_millis(), &picture::check, &way)?;
    Ok(Reply { job })
}
