//! Says that the camera has closed, for when the phone could not tell it.

use serde::Deserialize;
use wearbook_store::ShotId;

use crate::view::Shot;
use crate::{Error, Wearbook};

/// Which shot.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The shot.
    pub shot: ShotId,
}

/// Those that are there then.
pub type Reply = Vec<Shot>;

/// With a whole picture in its file the shot is taken, otherwise it is forgotten.
///
/// # Errors
/// `shot-broken` if what the camera wrote can't be kept; what the store says.
pub fn act(book: &Wearbook, Arguments { shot }: Arguments) -> Result<Reply, Error> {
    book.end_shot(&shot)?;
    Shot::all(book)
}
