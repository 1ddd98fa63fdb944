//! From changes to a log, and how long the log takes to its assessment: shared by the examples that are timed.

use std::time::Instant;

use wearbook_core::assess::assess;
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, RecordedChange};

const RUNS: usize = 101;

/// Writes the log of the changes as JSON to the file that the first argument names, for a peer to read, and prints the
/// median of fold and assessment in milliseconds.
pub(crate) fn time(changes: impl IntoIterator<Item = Change>) {
    let edits: Vec<Edit> = (1..)
        .zip(changes)
        .map(|(n, change)| Edit { id: EditId::next(None, n, DeviceId(1)), change: RecordedChange::Known(change) })
        .collect();
    if let Some(path) = std::env::args().nth(1)
        && let Err(error) = std::fs::write(&path, serde_json::to_vec(&edits).unwrap_or_default())
    {
        eprintln!("{path} can't be written: {error}");
    }
    let mut times: Vec<f64> = (0..RUNS)
        .map(|_| {
            let start = Instant::now();
            let assessment = assess(&Job::fold(&edits));
            assert!(assessment.progress.looked > 100);
            start.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_by(f64::total_cmp);
    let median = times.get(RUNS / 2).copied().unwrap_or(f64::NAN);
    println!("{median:.2}");
}
