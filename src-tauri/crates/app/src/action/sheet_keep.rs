//! Puts a spec sheet on the shelf.

use serde::Deserialize;
use wearbook_core::sheet::Sheet;

use crate::{Error, Shelf, Wearbook, sheet_file};

/// The sheet; one of the same name is replaced.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The sheet.
    pub sheet: Sheet,
}

/// The shelf as it now is.
pub type Reply = Shelf;

/// Keeps a sheet.
///
/// # Errors
/// `change-refused` with a sentence if it can't be; `shelf-full`; what the store says.
pub fn act(book: &Wearbook, Arguments { sheet }: Arguments) -> Result<Reply, Error> {
    sheet_file::keep(book, &sheet)
}
