//! `demo`: the invented engine's story as an archive.

use std::path::Path;
use std::sync::atomic::{AtomicU64, Ordering};

use serde_json::json;
use wearbook_app::Clock;
use wearbook_core::date::Date;

use crate::failure::Failure;
use crate::file;
use crate::visit::Visit;

pub(crate) fn run(out: &Path) -> Result<(), Failure> {
    let visit = Visit::begin(StoryClock::default())?;
    let job = visit.ask("job_demo", json!({}), None)?.get("job").cloned().unwrap_or_default();
    file::write(out, &visit.fetch("archive_export", json!({ "job": job }))?)
}

/// Every look at this clock is half a minute after the one before, so that the story has a morning's length.
#[derive(Debug)]
struct StoryClock(AtomicU64);

/// 2026-03-02, 08:00 UTC, in milliseconds since 1970-01-01.
const START: u64 = 1_772_438_400_000;
const HALF_A_MINUTE: u64 = 30_000;

impl Default for StoryClock {
    fn default() -> Self {
        Self(AtomicU64::new(START))
    }
}

impl Clock for StoryClock {
    fn now_millis(&self) -> u64 {
        self.0.fetch_add(HALF_A_MINUTE, Ordering::Relaxed)
    }

    fn today(&self) -> Date {
        Date::new(2026, 3, 2).unwrap_or(Date::EPOCH)
    }
}
