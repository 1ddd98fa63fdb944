//! A job in which every part has every tag that it can have, each graded and located, and nothing is destroyed.

use wearbook_core::engine::{Arrangement, Engine};
use wearbook_core::job::{Job, TagRecord};
use wearbook_core::wear::Grade;

pub(crate) fn fully(arrangement: Arrangement, engine: &Engine) -> Job {
    let mut job = Job { arrangement: Some(arrangement), ..Job::default() };
    for (n, part) in engine.parts().iter().enumerate() {
        let record = job.parts.entry(*part).or_default();
        for (m, tag) in part.kind.row().tags.iter().enumerate() {
            let grade = Grade::ALL.get((n + m) % 3).copied().unwrap_or(Grade::ONE);
            let zones = part.kind.row().zones.zones().iter().copied().skip((n + m) % 5).take(2).collect();
            record.tags.insert(*tag, TagRecord { grade, zones });
        }
    }
    job
}
