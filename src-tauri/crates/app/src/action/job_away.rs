//! Jobs that are put away and can still be brought back.

use serde::Serialize;
use wearbook_core::job::{Job, TextField};
use wearbook_store::JobId;

use crate::{Error, Wearbook};

/// Nothing to be told.
pub type Arguments = super::Nothing;
/// A line for each, the latest first.
pub type Reply = Vec<AwayLine>;

/// A job that is put away.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct AwayLine {
    /// The job.
    pub job: JobId,
    /// Whose engine it is; may be empty.
    pub customer: String,
    /// What the engine came out of; may be empty.
    pub machine: String,
    /// Until when it can be brought back: milliseconds since 1970-01-01 UTC.
    pub until: u64,
}

/// Lists them, once what is due has gone.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, _: Arguments) -> Result<Reply, Error> {
    book.store.clear_put_away(book.clock.now_millis())?;
    let away = book.store.read::<_, Error>(|ledger| Ok(ledger.all_put_away()?))?;
    let lines = away.into_iter().filter(|own| !own.gone).map(|own| {
        let read = book.store.read::<_, Error>(|ledger| Ok(ledger.edits_as_far_as_read(own.job)))?;
        let job = Job::fold(&read.edits);
        let text = |field| job.texts.get(&field).cloned().unwrap_or_default();
        let (customer, machine) = (text(TextField::Customer), text(TextField::Machine));
        Ok(AwayLine { job: own.job, customer, machine, until: own.until() })
    });
    lines.collect()
}
