//! Backups go into no folder any longer.

use super::Nothing;
use crate::{Error, Wearbook};

/// Nothing to be told.
pub type Arguments = Nothing;
/// Nothing.
pub type Reply = Nothing;

/// What lies in it stays.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, Nothing {}: Arguments) -> Result<Reply, Error> {
    book.choose_backup(None)?;
    Ok(Nothing {})
}
