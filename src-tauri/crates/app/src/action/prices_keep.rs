//! Keeps the shop's prices.

use serde::Deserialize;
use wearbook_core::money::PriceList;
use wearbook_store::ShelfKind;

use crate::shelf::{Shelf, json};
use crate::{Error, Settings, Wearbook};

/// The whole list, in place of the one before.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The prices.
    pub prices: PriceList,
}

/// The shelf as it now is.
pub type Reply = Shelf;

/// Keeps the prices.
///
/// # Errors
/// `change-refused` with a sentence if a price can't be; what the store says.
pub fn act(book: &Wearbook, Arguments { prices }: Arguments) -> Result<Reply, Error> {
    book.store.write(|ledger| {
        prices.check(Settings::load(ledger)?.terms).map_err(Error::change)?;
        ledger.keep_on_shelf(ShelfKind::Prices, "", &json(&prices)?, book.clock.now_millis())?;
        Shelf::load(ledger)
    })
}
