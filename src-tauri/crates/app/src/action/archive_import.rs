//! Takes in a job from a file.

use serde::{Deserialize, Serialize};
use wearbook_store::JobId;

use crate::{Error, Wearbook, picture};

/// Which file, and how it is begun.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The file.
    pub arrival: u32,
    /// A number by which to ask how far it is.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub way: Option<u32>,
    /// Whether a job that was put away here is to come back.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<bool>"))]
    pub back: bool,
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(rename = "Imported"))]
pub struct Reply {
    /// The job.
    pub job: JobId,
    /// Entries that were refused, for no entry is so: each reason with how many.
    pub refused: Vec<RefusedEntries>,
}

/// Entries that were refused for the same reason.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct RefusedEntries {
    /// In a sentence.
    pub reason: String,
    /// How many.
    pub count: usize,
}

/// Takes in a `.wearbook` archive, or a bare `job.json`. A job that is here already gets what it lacks. The file is
/// forgotten whatever comes of it, unless it is to be asked whether the job comes back.
///
/// # Errors
/// `no-such-arrival`; `archive-refused`, `edit-conflict`, `job-put-away` or `stopped` with a sentence, and nothing is taken
/// in; what the store says.
pub fn act(book: &Wearbook, Arguments { arrival, way, back }: Arguments) -> Result<Reply, Error> {
    let way = book.ways.begin(way);
    let now = book.clock.now_millis();
    let imported = book
        .open_arrival(arrival)
        .and_then(|file| Ok(book.store.import_back(file, now, back, &picture::check, &way)?));
    if !imported.as_ref().is_err_and(|error| error.code == "job-put-away") {
        book.forget_arrival(arrival);
    }
    let imported = imported?;
    let refused = imported.refused.into_iter().map(|(reason, count)| RefusedEntries { reason, count });
    Ok(Reply { job: imported.job, refused: refused.collect() })
}
