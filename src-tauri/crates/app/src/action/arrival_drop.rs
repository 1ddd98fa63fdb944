//! Forgets a file that is not to be taken in.

use serde::Deserialize;

use super::Nothing;
use crate::{Error, Wearbook};

/// Which file.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The file.
    pub arrival: u32,
}

/// Nothing.
pub type Reply = Nothing;

/// A file of somebody else's stays where it lies. One that is gone already is no fault.
///
/// # Errors
/// None.
pub fn act(book: &Wearbook, Arguments { arrival }: Arguments) -> Result<Reply, Error> {
    book.forget_arrival(arrival);
    Ok(Nothing {})
}
