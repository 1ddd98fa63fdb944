//! Takes in a job from a file.

use serde::{Deserialize, Serialize};
use wearbook_store::JobId;

use crate::{Error, Wearbook, picture};

/// How it is begun.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// A number by which to ask how far it is.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub way: Option<u32>,
}

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
/// `archive-refused` or `edit-conflict` or `stopped` with a sentence, and nothing is taken in; what the store says.
pub fn act(book: &Wearbook, Arguments { way }: Arguments, bytes: Vec<u8>) -> Result<Reply, Error> {
    let way = book.ways.begin(way);
    let job = book.store.import(&bytes, book.clock.now_millis(), &picture::check, &way)?;
    Ok(Reply { job })
}
