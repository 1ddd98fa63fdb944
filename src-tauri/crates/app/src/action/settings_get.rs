//! The shop's settings.

use crate::{Error, Settings, Wearbook};

/// Nothing to be told.
pub type Arguments = super::Nothing;
/// The settings.
pub type Reply = Settings;

/// Answers the settings; what has not been set is empty.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, _: Arguments) -> Result<Reply, Error> {
    book.store.read(Settings::load)
}
