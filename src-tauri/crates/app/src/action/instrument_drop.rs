//! Takes an instrument off the shelf. Jobs in which it was used keep it.

use serde::Deserialize;
use wearbook_core::measure::InstrumentId;
use wearbook_store::ShelfKind;

use crate::{Error, Shelf, Wearbook};

/// Which.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The instrument.
    pub id: InstrumentId,
}

/// The shelf as it now is.
pub type Reply = Shelf;

/// Drops an instrument.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, Arguments { id }: Arguments) -> Result<Reply, Error> {
    book.store.write(|ledger| {
        ledger.take_off_shelf(ShelfKind::Instrument, id.as_str())?;
        Shelf::load(ledger)
    })
}
