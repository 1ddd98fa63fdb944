//! How far something is that takes a while.

use serde::{Deserialize, Serialize};

use crate::{Error, Wearbook};

/// Which.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The number with which it was begun.
    pub way: u32,
}

/// How far it is; nothing once it is over.
pub type Reply = Option<Steps>;

/// Steps of something under way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Steps {
    /// How many are done.
    pub done: u32,
    /// How many there are, as far as is known; 0 while nothing is.
    pub steps: u32,
}

/// Says how far something is.
///
/// # Errors
/// None.
pub fn act(book: &Wearbook, Arguments { way }: Arguments) -> Result<Reply, Error> {
    Ok(book.ways.find(way).map(|way| {
        let (done, steps) = way.steps();
        Steps { done, steps }
    }))
}
