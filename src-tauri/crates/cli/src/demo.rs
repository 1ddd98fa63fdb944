//! `demo`: the invented engine's story, told to the book step by step through the same actions as a person's.

use std::path::Path;
use std::sync::atomic::{AtomicU64, Ordering};

use serde_json::{Value, json};
use wearbook_app::Clock;
use wearbook_core::date::Date;
use wearbook_demo::picture::{draw, jpeg};
use wearbook_demo::scenario::{Step, steps};

use crate::failure::Failure;
use crate::file;
use crate::visit::Visit;

pub(crate) fn run(out: &Path) -> Result<(), Failure> {
    let visit = Visit::begin(StoryClock::default())?;
    let job = visit.ask("job_create", json!({}), None)?.get("job").cloned().unwrap_or_default();
    let mut view = Value::Null;
    for step in steps() {
        view = tell(&visit, &job, step, &view)?;
    }
    file::write(out, &visit.fetch("archive_export", json!({ "job": job }))?)
}

/// Takes a step in the job as it was last seen; answers how it looks then.
fn tell(visit: &Visit, job: &Value, step: Step, view: &Value) -> Result<Value, Failure> {
    let append = |change: Value| visit.ask("edits_append", json!({ "job": job, "changes": [change] }), None);
    match step {
        Step::Record(change) => append(json!(change)),
        Step::UndoLast => append(json!({ "do": "undo", "edit": view.get("last_edit") })),
        Step::DrawOver { part, markup } => {
            let parts = view.pointer("/assessment/parts").and_then(Value::as_array);
            let here = parts.into_iter().flatten().find(|view| view.get("part") == Some(&json!(part)));
            let photo = here.and_then(|view| view.pointer("/photos/0"));
            append(json!({ "do": "mark-up", "part": part, "photo": photo, "markup": markup }))
        }
        Step::Photograph { part, subject, seed } => {
            let picture = jpeg(&draw(&subject, seed))
                .map_err(|error| Failure::Sentence(format!("A picture of the demo could not be drawn: {error}.")))?;
            visit.ask("photo_add", json!({ "job": job, "part": part }), Some(picture))
        }
    }
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
