//! Takes in a job from a file.

use serde::Serialize;
use wearbook_store::JobId;

use crate::{Error, Wearbook, picture};

/// Nothing to be told.
pub type Arguments = super::Nothing;

/// The job that came.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(rename = "Imported"))]
pub struct Reply {
    /// The job.
    pub job: JobId,
}

/// Takes in a `.wearbook` archive, or a bare `job.json`. A job that is here already gets what it lacks.
///
/// # Errors
/// `archive-refused` or `edit-conflict` with a sentence, and nothing is taken in; what the store says.
pub fn act(book: &Wearbook, _: Arguments, bytes: Vec<u8>) -> Result<Reply, Error> {
    let job = book.store.import(&bytes, book.clock.now_millis(), &picture::check)?;
    Ok(Reply { job })
}
