//! What the shop keeps from job to job: its instruments, its spec sheets, its prices.

use serde::Serialize;
use serde::de::DeserializeOwned;
use wearbook_core::measure::Instrument;
use wearbook_core::money::PriceList;
use wearbook_core::sheet::Sheet;
use wearbook_store::{Ledger, ShelfKind};

use crate::Error;

/// The shelf.
#[derive(Debug, Clone, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Shelf {
    /// The shop's instruments, by id.
    pub instruments: Vec<Instrument>,
    /// The shop's spec sheets, by name.
    pub sheets: Vec<Sheet>,
    /// The shop's prices, once entered.
    pub prices: Option<PriceList>,
}

/// The most of one kind that a shelf holds.
const MOST: usize = 1_000;

impl Shelf {
    pub(crate) fn load(ledger: &Ledger<'_>) -> Result<Self, Error> {
        Ok(Self {
            instruments: all(ledger, ShelfKind::Instrument)?,
            sheets: all(ledger, ShelfKind::Sheet)?,
            // Beside it may stand another that came with the archive of another device.
            prices: all(ledger, ShelfKind::Prices)?.into_iter().next(),
        })
    }

    /// Refuses one more where the shelf is full.
    pub(crate) fn room(count: usize) -> Result<(), Error> {
        if count < MOST {
            return Ok(());
        }
        Err(Error::new("shelf-full", format!("The shop keeps {MOST} of these already: remove one first.")))
    }
}

/// A thing that a newer version put there in a form that this one does not know stays where it is, and is passed over.
fn all<T: DeserializeOwned>(ledger: &Ledger<'_>, kind: ShelfKind) -> Result<Vec<T>, Error> {
    let texts = ledger.shelf(kind)?;
    Ok(texts.iter().filter_map(|text| serde_json::from_str(text).ok()).collect())
}

/// As kept: JSON.
pub(crate) fn json<T: Serialize>(thing: &T) -> Result<String, Error> {
    serde_json::to_string(thing).map_err(|error| Error::new("answer", error.to_string()))
}
