//! Jobs for the tests of every module, made as they are made at the bench: each change is checked before it is applied.

use serde_json::{Value, json};

use super::{Change, DeviceId, EditId, Job};
use crate::engine::Arrangement;

/// The id of the `n`th edit of a test.
pub(crate) fn edit(n: u64) -> EditId {
    EditId::next(None, n, DeviceId(1))
}

/// A job of these changes, in the form in which they stand in a log.
#[track_caller]
pub(crate) fn job_of(changes: &[Value]) -> Job {
    let mut job = Job::default();
    for (n, change) in (1..).zip(changes) {
        then(&mut job, n, change);
    }
    job
}

/// A job of which no more is known than the arrangement.
pub(crate) fn arranged(arrangement: Arrangement) -> Job {
    Job { arrangement: Some(arrangement), ..Job::default() }
}

/// The same as an edit: what begins almost every job.
pub(crate) fn arrange(arrangement: &Arrangement) -> Value {
    json!({ "do": "arrange", "arrangement": arrangement })
}

/// Goes on with a job by its `n`th edit.
#[track_caller]
pub(crate) fn then(job: &mut Job, n: u64, change: &Value) -> EditId {
    let change: Change = serde_json::from_value(change.clone()).unwrap();
    assert_eq!(job.check(&change), Ok(()), "{change:?}");
    let id = edit(n);
    job.apply(id, &change);
    id
}
