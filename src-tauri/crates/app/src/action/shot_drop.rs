//! Puts away a photo from the camera that is not wanted.

use crate::view::Shot;
use crate::{Error, Wearbook};

/// Which shot.
pub type Arguments = super::shot_end::Arguments;
/// Those that are left.
pub type Reply = Vec<Shot>;

/// Forgets it with its file.
///
/// # Errors
/// `no-such-shot` if it was taken in or put away; what the store says.
pub fn act(book: &Wearbook, Arguments { shot }: Arguments) -> Result<Reply, Error> {
    book.store.put_away_shot(&shot)?;
    Shot::all(book)
}
