//! Takes a photo from the camera into its job, by its file: its bytes never pass through the page.

use wearbook_store::{Ledger, ShotOf};

use super::photo_add::add;
use crate::{Error, JobView, Wearbook};

/// Which shot.
pub type Arguments = super::shot_end::Arguments;

/// The job with the photo.
pub type Reply = JobView;

/// As [`photo_add`](super::photo_add::act) does. The shot goes with the edit that takes its photo in, so it is offered no
/// more.
///
/// # Errors
/// `no-such-shot` if it was taken in or put away; else as [`photo_add`](super::photo_add::act), and the shot stays.
pub fn act(book: &Wearbook, Arguments { shot }: Arguments) -> Result<Reply, Error> {
    let row = book.store.read(|ledger| ledger.shot(&shot))?;
    let bytes = book.store.shot_bytes(&shot)?;
    let (part, ancillary) = match row.of {
        ShotOf::Part(part) => (Some(part), None),
        ShotOf::Ancillary(item) => (None, Some(item)),
    };
    let view = add(book, row.job, (part, ancillary), &bytes, &|ledger: &Ledger<'_>| Ok(ledger.forget_shot(&shot)?))?;
    // The photo is in its job: a file that stays is swept at the next start.
    if let Err(error) = book.store.clear_shot(&shot) {
        eprintln!("The camera’s file of {shot} stays for now: {error}");
    }
    Ok(view)
}
