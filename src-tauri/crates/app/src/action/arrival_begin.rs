//! Begins a file that the page hands over piece by piece.

use serde::{Deserialize, Serialize};

use crate::{Error, Wearbook};

/// Of which file.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// What it is called where it comes from.
    pub name: String,
}

/// The number by which it goes until it is taken in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(rename = "ArrivalBegun"))]
pub struct Reply {
    /// The number.
    pub arrival: u32,
}

/// It is gone at the next start, if it was not taken in.
///
/// # Errors
/// `arguments-refused` if too many wait already.
pub fn act(book: &Wearbook, Arguments { name }: Arguments) -> Result<Reply, Error> {
    Ok(Reply { arrival: book.begin_arrival(&name)? })
}
