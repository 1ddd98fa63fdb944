//! Takes a spec sheet off the shelf. Jobs in which it is used keep it.

use serde::Deserialize;
use wearbook_store::ShelfKind;

use crate::{Error, Shelf, Wearbook};

/// Which.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The sheet's name.
    pub name: String,
}

/// The shelf as it now is.
pub type Reply = Shelf;

/// Drops a sheet.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, Arguments { name }: Arguments) -> Result<Reply, Error> {
    book.store.write(|ledger| {
        ledger.take_off_shelf(ShelfKind::Sheet, name.trim())?;
        Shelf::load(ledger)
    })
}
