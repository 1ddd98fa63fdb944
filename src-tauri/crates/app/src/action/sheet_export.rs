//! A spec sheet as a file, for another shop or another device.

use serde::Deserialize;

use crate::{Error, File, Shelf, Wearbook, sheet_file};

/// Which.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The sheet's name.
    pub name: String,
}

/// The file.
pub type Reply = File;

/// Exports a sheet of the shelf.
///
/// # Errors
/// `no-such-sheet`, and what the store says.
pub fn act(book: &Wearbook, Arguments { name }: Arguments) -> Result<Reply, Error> {
    let shelf = book.store.read(Shelf::load)?;
    let Some(sheet) = shelf.sheets.into_iter().find(|sheet| sheet.head.name.trim() == name.trim()) else {
        return Err(Error::new("no-such-sheet", "There is no spec sheet of this name on the shelf."));
    };
    sheet_file::write(sheet)
}
