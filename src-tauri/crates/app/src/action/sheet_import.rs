//! Takes in a spec sheet from a file and puts it on the shelf.

use crate::{Error, Shelf, Wearbook, sheet_file};

/// Nothing to be told.
pub type Arguments = super::Nothing;

/// The shelf as it now is.
pub type Reply = Shelf;

/// Imports a sheet; one of the same name is replaced.
///
/// # Errors
/// `sheet-refused` if the file holds none; `change-refused` with a sentence if the sheet can't be; what the store says.
pub fn act(book: &Wearbook, _: Arguments, bytes: Vec<u8>) -> Result<Reply, Error> {
    sheet_file::keep(book, &sheet_file::read(&bytes)?)
}
