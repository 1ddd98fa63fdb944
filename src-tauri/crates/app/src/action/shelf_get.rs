//! What the shop keeps from job to job.

use crate::{Error, Shelf, Wearbook};

/// Nothing to be told.
pub type Arguments = super::Nothing;
/// The shelf.
pub type Reply = Shelf;

/// Answers the shelf.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, _: Arguments) -> Result<Reply, Error> {
    book.store.read(Shelf::load)
}
