//! Saves what changed into the folder for backups.

use crate::backup::BackedUp;
use crate::{Error, Wearbook};

/// Nothing else to be told.
pub type Arguments = super::Awaited;
/// What came of it.
pub type Reply = BackedUp;

/// Into the folder that was chosen: a page names no path. It is read back before it counts.
///
/// # Errors
/// `backup-refused` if no folder was chosen; `not-saved`; `stopped`; what the store says.
pub fn act(book: &Wearbook, super::Awaited { way }: Arguments) -> Result<Reply, Error> {
    book.back_up(way)
}
