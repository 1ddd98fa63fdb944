//! Takes in a picture of a part, or of something that came with the engine.

use serde::Deserialize;
use wearbook_core::assess;
use wearbook_core::engine::Part;
use wearbook_core::job::{Change, EditId, Log, OnIntake, OnPart, PhotoId};
use wearbook_store::{JobId, Ledger, NewPhoto, photo_id};

use super::edits_append::entered;
use crate::open_job::New;
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
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub part: Option<Part>,
    /// Or what it shows that came with the engine: the edit that noted it.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub ancillary: Option<EditId>,
}

/// The job with the photo.
pub type Reply = JobView;

/// Checks the picture, keeps its bytes as they came, makes what is shown of it, and adds it to what it shows.
///
/// # Errors
/// The codes of the picture's refusal, such as `photo-heic`; `change-refused`; what the store says.
pub fn act(book: &Wearbook, Arguments { job, part, ancillary }: Arguments, bytes: Vec<u8>) -> Result<Reply, Error> {
    add(book, job, (part, ancillary), &bytes, &|_| Ok(()))
}

/// Adds a picture to what it shows, and does besides whatever must happen together with it.
pub(super) fn add(
    book: &Wearbook,
    job: JobId,
    (part, ancillary): (Option<Part>, Option<EditId>),
    bytes: &[u8],
    besides: &dyn Fn(&Ledger<'_>) -> Result<(), Error>,
) -> Result<Reply, Error> {
    let shows = |sharpness| shown(part, ancillary, photo_id(bytes), sharpness);
    let unseen = shows(None)?;
    // Asked before the picture is decoded, so that what can't have it is said at once.
    book.look(job, |open| assess::check(open.log.job(), &unseen))??;
    let developed = wearbook_photo::develop(bytes)?;
    let change = shows(Some(developed.sharpness))?;
    let new = NewPhoto {
        original: bytes,
        facts: facts(&developed.facts)?,
        screen: &developed.screen,
        thumb: &developed.thumb,
    };
    let now = book.clock.now_millis();
    let edits = |log: &mut Log, device| entered(log, vec![change.clone()], now, device);
    let before = |ledger: &Ledger<'_>| {
        ledger.add_photo(job, new, now)?;
        besides(ledger)
    };
    book.open_job.append(&book.store, job, &New { now, edits: &edits, before: &before }, |open| JobView::new(job, open))
}

/// What is done with the picture.
pub(super) fn shown(
    part: Option<Part>,
    ancillary: Option<EditId>,
    photo: PhotoId,
    sharpness: Option<u16>,
) -> Result<Change, Error> {
    match (part, ancillary) {
        (Some(part), None) => Ok(Change::OnPart(OnPart::AddPhoto { part, photo, sharpness })),
        (None, Some(item)) => Ok(Change::OnIntake(OnIntake::PhotographAncillary { item, photo: Some(photo) })),
        _ => Err(Error::change(OF_WHAT)),
    }
}

pub(super) const OF_WHAT: &str = "Say of what the picture is: of a part, or of what came with the engine.";
