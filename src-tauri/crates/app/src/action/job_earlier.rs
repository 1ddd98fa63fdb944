//! The jobs in which the same engine was here before.

use wearbook_core::job::TextField;

use super::job_list::line;
use crate::view::compared;
use crate::{Error, JobLine, Wearbook};

/// The job that is worked at.
pub type Arguments = super::OfJob;

/// A line for each, latest changed first; none where the engine's number is not known.
pub type Reply = Vec<JobLine>;

/// Finds jobs with the same engine number, however it was spaced, dotted or written large.
///
/// # Errors
/// `no-such-job`; what the store says.
pub fn act(book: &Wearbook, Arguments { job }: Arguments) -> Result<Reply, Error> {
    let number = book.look(job, |open| {
        open.log.job().texts.get(&TextField::EngineNumber).map(|number| compared(number)).unwrap_or_default()
    })?;
    if number.is_empty() {
        return Ok(vec![]);
    }
    let found = book.summarised(|ledger| Ok(ledger.summaries_of_engine(&number)?))?;
    found.iter().filter(|own| own.row.id != job).map(line).collect()
}
