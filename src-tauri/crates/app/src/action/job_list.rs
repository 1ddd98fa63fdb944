//! All jobs, latest changed first.

use wearbook_core::job::Job;

use crate::{Error, JobLine, Wearbook};

/// Nothing to be told.
pub type Arguments = super::Nothing;
/// A line for each job.
pub type Reply = Vec<JobLine>;

/// Lists the jobs.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, _: Arguments) -> Result<Reply, Error> {
    book.store.read(|ledger| {
        let jobs = ledger.jobs()?;
        jobs.into_iter().map(|row| Ok(JobLine::new(row, &Job::fold(&ledger.edits(row.id)?)))).collect()
    })
}
