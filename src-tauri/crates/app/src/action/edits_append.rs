//! Appends what a person did to a job's log: the one way in.

use serde::Deserialize;
use wearbook_core::assess;
use wearbook_core::document::page_to_propose;
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, Log, OnJob, OnMoney, RecordedChange, guard};
use wearbook_store::JobId;

use crate::open_job::New;
use crate::{Error, JobView, Wearbook};

/// The job and what was done.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The job.
    pub job: JobId,
    /// What was done, in order: 1 to 500 changes.
    pub changes: Vec<Change>,
}

/// The job after them.
pub type Reply = JobView;

/// The most changes at once: a whole engine marked as not looked at has fewer.
const MAX_CHANGES: usize = 500;

/// Appends changes: all or none.
///
/// # Errors
/// `change-refused` with a sentence for the first that does not fit the job as it is after those before it.
pub fn act(book: &Wearbook, Arguments { job, changes }: Arguments) -> Result<Reply, Error> {
    if changes.len() > MAX_CHANGES {
        return Err(Error::change(format!("{} changes at once: {MAX_CHANGES} at most.", changes.len())));
    }
    let now = book.clock.now_millis();
    let edits = |log: &mut Log, device| entered(log, changes.clone(), now, device);
    let new = New { now, edits: &edits, before: &|_| Ok(()) };
    book.open_job.append(&book.store, job, &new, |open| JobView::new(job, open))
}

/// Checks each change against the job as it then is, and adds it to the log.
pub(crate) fn entered(
    log: &mut Log,
    changes: Vec<Change>,
    now_millis: u64,
    device: DeviceId,
) -> Result<Vec<Edit>, Error> {
    let mut edits = Vec::new();
    for change in changes {
        assess::check(log.job(), &change)?;
        let change = with_page(change, log.job());
        let written = serde_json::to_value(&change).map_err(|error| Error::new("answer", error.to_string()))?;
        guard(&written)?;
        check_reference(log, &change)?;
        let id = EditId::next(log.latest_in_time(), now_millis, device);
        let edit = Edit { id, change: RecordedChange::Known(change) };
        log.extend([edit.clone()]);
        edits.push(edit);
    }
    Ok(edits)
}

/// A proposal with what the customer reads beside its jobs, which is kept as it was shown; any other change as it is.
fn with_page(change: Change, job: &Job) -> Change {
    match change {
        Change::OnMoney(OnMoney::Propose { quote, made, .. }) => {
            let page = Some(Box::new(page_to_propose(job, &assess::assess(job))));
            Change::OnMoney(OnMoney::Propose { quote, made, page })
        }
        change => change,
    }
}

/// What a change names outside the job's own state must exist: the edit to be undone. Photos are asked for when it is
/// appended.
fn check_reference(log: &Log, change: &Change) -> Result<(), Error> {
    match change {
        Change::OnJob(OnJob::Undo { edit }) => match log.edit(*edit).map(|there| &there.change) {
            None => Err(Error::change("The entry to be undone is not in this job’s history.")),
            Some(RecordedChange::Unknown(_)) => {
                Err(Error::change("This entry comes from a newer version of this program: undo it there."))
            }
            Some(RecordedChange::Known(_)) => Ok(()),
        },
        _ => Ok(()),
    }
}
