//! What the shop charged in its earlier jobs: suggestions, never made up.

use std::collections::BTreeMap;

use serde::Serialize;
use wearbook_core::job::{Change, Job, OnMoney, RecordedChange, TextField};
use wearbook_core::money::{Currency, Price, PriceKey};
use wearbook_store::StoreError;

use crate::{Error, Wearbook};

/// Nothing to be told.
pub type Arguments = super::Nothing;
/// The latest price of each kind of work.
pub type Reply = Vec<LearntPrice>;

/// A price as it was charged last.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct LearntPrice {
    /// The price.
    pub price: Price,
    /// Its currency.
    pub currency: Currency,
    /// When it was entered: milliseconds since 1970-01-01 UTC.
    pub at: u64,
    /// The job from which it comes: its customer and machine, as far as they were entered.
    pub from: String,
    /// In how many jobs a price for this was entered.
    pub jobs: u32,
}

/// Gathers what was entered for single jobs.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, _: Arguments) -> Result<Reply, Error> {
    let mut learnt: BTreeMap<PriceKey, LearntPrice> = BTreeMap::new();
    let rows = book.store.read::<_, Error>(|ledger| Ok(ledger.jobs()?))?;
    for row in rows {
            // Each is read by itself: nothing waits for all of them.
            let edits = match book.store.read(|ledger| ledger.edits(row.id)) {
                // From a damaged job nothing is learnt.
                Err(StoreError::Damaged) => continue,
                edits => edits?,
            };
            let job = Job::fold(&edits);
            let names = [TextField::Customer, TextField::Machine].into_iter().filter_map(|field| job.texts.get(&field));
            let from = names.map(|name| name.trim()).collect::<Vec<_>>().join(" · ");
            let mut here: BTreeMap<PriceKey, (Price, u64)> = BTreeMap::new();
            for edit in edits.iter().filter(|edit| !job.undone.contains(&edit.id)) {
                if let RecordedChange::Known(Change::OnMoney(OnMoney::SetPrice { price })) = &edit.change {
                    here.insert(price.of, (*price, edit.id.millis()));
                }
            }
            for (key, (price, at)) in here {
                let currency = job.prices.currency;
                let entry =
                    learnt.entry(key).or_insert(LearntPrice { price, currency, at, from: String::new(), jobs: 0 });
                entry.jobs += 1;
                if at >= entry.at {
                    (entry.price, entry.currency, entry.at) = (price, currency, at);
                    entry.from.clone_from(&from);
                }
            }
    }
    Ok(learnt.into_values().collect())
}
