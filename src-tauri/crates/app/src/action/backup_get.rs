//! Where backups go, and how the last one went.

use crate::backup::Backup;
use crate::{Error, Wearbook};

/// Nothing to be told.
pub type Arguments = super::Nothing;
/// Where and how.
pub type Reply = Backup;

/// Tells.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, _: Arguments) -> Result<Reply, Error> {
    book.backup()
}
