//! How long a fully recorded V8 takes from its log to its assessment: fold and assess, the median of many runs.
//!
//! `assess_v8 LOG` writes the log to a file as JSON, for a peer to read, and prints the median in milliseconds.

use std::time::Instant;

use wearbook_core::assess::assess;
use wearbook_core::engine::{Arrangement, Engine};
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, RecordedChange};
use wearbook_core::wear::Grade;

/// Every part tagged with several tags, until the log has this many edits.
const EDITS: usize = 500;
const RUNS: usize = 101;

fn main() {
    let arrangement = Arrangement::vee(8);
    let Ok(engine) = Engine::new(arrangement.clone()) else { return };
    let mut changes = vec![Change::Arrange { arrangement }];
    for round in 0.. {
        for part in engine.parts() {
            let tags = part.kind.row().tags;
            let Some(tag) = tags.get(round % tags.len()) else { continue };
            let grade = Grade::ALL.get((round + changes.len()) % 4).copied().unwrap_or(Grade::ONE);
            let zones = part.kind.row().zones.zones().iter().copied().take(2).collect();
            changes.push(Change::Tag { part: *part, tag: *tag, grade, zones });
        }
        if changes.len() >= EDITS {
            break;
        }
    }
    changes.truncate(EDITS);
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
