//! The files that another program has opened with this one and that are not taken in yet.

use serde::Serialize;

use super::Nothing;
use crate::{Error, Wearbook};

/// Nothing.
pub type Arguments = Nothing;
/// The first that came first.
pub type Reply = Vec<Arrival>;

/// One of them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Arrival {
    /// The number by which it goes.
    pub arrival: u32,
    /// What it is called where it comes from.
    pub name: String,
}

/// Lists them.
///
/// # Errors
/// None.
pub fn act(book: &Wearbook, Nothing {}: Arguments) -> Result<Reply, Error> {
    Ok(book.opened().into_iter().map(|(arrival, name)| Arrival { arrival, name }).collect())
}
