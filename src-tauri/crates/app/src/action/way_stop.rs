//! Ends something that takes a while and is no longer wanted.

use super::way_get::Arguments as Which;
use crate::{Error, Wearbook};

/// Which.
pub type Arguments = Which;

/// Nothing: what was stopped answers `stopped` itself.
pub type Reply = ();

/// Stops it at its next step; nothing happens if it is over already.
///
/// # Errors
/// None.
pub fn act(book: &Wearbook, Arguments { way }: Arguments) -> Result<Reply, Error> {
    if let Some(way) = book.ways.find(way) {
        way.stop();
    }
    Ok(())
}
