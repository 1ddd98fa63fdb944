//! How long a fully recorded V8 takes from its log to its assessment: fold and assess, the median of many runs.
//!
//! `assess_v8 LOG` writes the log to a file as JSON, for a peer to read, and prints the median in milliseconds.

mod timing;

use wearbook_core::engine::{Arrangement, Engine};
use wearbook_core::job::{Change, OnIntake, OnPart};
use wearbook_core::wear::Grade;

/// Every part tagged with several tags, until the log has this many edits.
const EDITS: usize = 500;

fn main() {
    let arrangement = Arrangement::vee(8);
    let Ok(engine) = Engine::new(arrangement.clone()) else { return };
    let mut changes = vec![Change::OnIntake(OnIntake::Arrange { arrangement })];
    for round in 0.. {
        for part in engine.parts() {
            let tags = part.kind.row().tags;
            let Some(tag) = tags.get(round % tags.len()) else { continue };
            let grade = Grade::ALL.get((round + changes.len()) % 4).copied().unwrap_or(Grade::ONE);
            let zones = part.kind.row().zones.zones().iter().copied().take(2).collect();
            changes.push(Change::OnPart(OnPart::Tag { part: *part, tag: *tag, grade, zones }));
        }
        if changes.len() >= EDITS {
            break;
        }
    }
    changes.truncate(EDITS);
    timing::time(changes);
}
