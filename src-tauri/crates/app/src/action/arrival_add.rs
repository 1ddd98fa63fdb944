//! Adds a piece to a file that the page hands over.

use serde::Deserialize;

use super::Nothing;
use crate::{Error, Wearbook};

/// Which file, and which piece of it.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The file.
    pub arrival: u32,
    /// How many bytes stand before it.
    #[cfg_attr(feature = "schema", ts(type = "number"))]
    pub at: u64,
}

/// Nothing.
pub type Reply = Nothing;

/// Pieces come in order; one that comes twice is there once.
///
/// # Errors
/// `no-such-arrival`; `archive-refused` if a piece is missing or the file is too large, and it is forgotten; what the disk
/// says.
pub fn act(book: &Wearbook, Arguments { arrival, at }: Arguments, bytes: Vec<u8>) -> Result<Reply, Error> {
    book.add_to_arrival(arrival, at, &bytes)?;
    Ok(Nothing {})
}
