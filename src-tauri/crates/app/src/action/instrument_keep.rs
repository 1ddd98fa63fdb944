//! Puts an instrument on the shelf.

use serde::Deserialize;
use wearbook_core::job::{Change, Job, OnReading};
use wearbook_core::measure::Instrument;
use wearbook_store::ShelfKind;

use crate::shelf::{Shelf, json};
use crate::{Error, Wearbook};

/// The instrument; one of the same id is replaced.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The instrument.
    pub instrument: Instrument,
}

/// The shelf as it now is.
pub type Reply = Shelf;

/// Keeps an instrument.
///
/// # Errors
/// `change-refused` with a sentence if it can't be; `shelf-full`; what the store says.
pub fn act(book: &Wearbook, Arguments { instrument }: Arguments) -> Result<Reply, Error> {
    Job::default().check(&Change::OnReading(OnReading::NoteInstrument { instrument: Box::new(instrument.clone()) }))?;
    book.store.write(|ledger| {
        Shelf::room(Shelf::load(ledger)?.instruments.len())?;
        let now = book.clock.now_millis();
        ledger.keep_on_shelf(ShelfKind::Instrument, instrument.id.as_str(), &json(&instrument)?, now)?;
        Shelf::load(ledger)
    })
}
