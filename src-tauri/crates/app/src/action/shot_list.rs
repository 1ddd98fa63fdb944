//! The photos that the camera was asked for and that are in no job yet.

use crate::view::Shot;
use crate::{Error, Wearbook};

/// Nothing to be told.
pub type Arguments = super::Nothing;
/// Those that were taken, and the one for which the camera is open; the earliest first.
pub type Reply = Vec<Shot>;

/// Answers them.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, _: Arguments) -> Result<Reply, Error> {
    Shot::all(book)
}
