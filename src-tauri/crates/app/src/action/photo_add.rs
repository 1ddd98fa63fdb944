//! Takes in a picture of a part.

use serde::Deserialize;
use wearbook_core::assess;
use wearbook_core::engine::Part;
use wearbook_core::job::{Change, Log, OnPart};
use wearbook_store::{JobId, Ledger, NewPhoto, photo_id};

use super::edits_append::append;
use crate::picture::facts;
use crate::{Error, JobView, Wearbook};

/// Of what.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The job.
    pub job: JobId,
    /// The part that the picture shows.
    pub part: Part,
}

/// The job with the photo.
pub type Reply = JobView;

/// Checks the picture, keeps its bytes as they came, makes what is shown of it, and adds it to the part.
///
/// # Errors
/// The codes of the picture's refusal, such as `photo-heic`; `change-refused`; what the store says.
pub fn act(book: &Wearbook, Arguments { job, part }: Arguments, bytes: Vec<u8>) -> Result<Reply, Error> {
    let change = Change::OnPart(OnPart::AddPhoto { part, photo: photo_id(&bytes) });
    // Asked before the picture is decoded, so that a part which can't have it is said at once.
    book.open_job.look(&book.store, job, |open| assess::check(open.log.job(), &change))??;
    let developed = wearbook_photo::develop(&bytes)?;
    let new = NewPhoto {
        original: &bytes,
        facts: facts(&developed.facts)?,
        screen: &developed.screen,
        thumb: &developed.thumb,
    };
    let now = book.clock.now_millis();
    let add = |ledger: &Ledger<'_>, log: &mut Log| {
        ledger.add_photo(job, new, now)?;
        append(ledger, job, log, vec![change], now)
    };
    book.open_job.append(&book.store, job, add, |open| JobView::new(job, open))
}
