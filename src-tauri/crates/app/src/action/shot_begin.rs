//! Notes of what the camera is about to take a photo, before it opens.

use wearbook_core::assess;
use wearbook_store::{ShotOf, photo_id};

use super::photo_add;
use crate::view::Shot;
use crate::{Error, Wearbook};

/// Of what.
pub type Arguments = photo_add::Arguments;

/// The shot that waits for its photo.
pub type Reply = Shot;

/// Notes it. What comes of it is told by the phone (`phone/take_photo.rs`), or found at the next start.
///
/// # Errors
/// `shot-waiting` while a camera is open; `change-refused`; what the store says.
pub fn act(book: &Wearbook, Arguments { job, part, ancillary }: Arguments) -> Result<Reply, Error> {
    // Asked before the camera opens, so that what can't have a photo is said at once.
    let unseen = photo_add::shown(part, ancillary, photo_id(&[]), None)?;
    book.look(job, |open| assess::check(open.log.job(), &unseen))??;
    let of = match (part, ancillary) {
        (Some(part), _) => ShotOf::Part(part),
        (None, Some(item)) => ShotOf::Ancillary(item),
        (None, None) => return Err(Error::change(photo_add::OF_WHAT)),
    };
    let now = book.clock.now_millis();
    let row = book.store.write(|ledger| ledger.begin_shot(job, of, now))?;
    Shot::of(book, row)
}
