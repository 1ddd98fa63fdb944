//! A job as it stands in the list.

use serde::Serialize;
use wearbook_core::engine::{Engine, Part};
use wearbook_core::job::{EditId, Job, TextField};
use wearbook_store::{JobId, JobRow};

/// A job in one line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct JobLine {
    /// The job.
    pub job: JobId,
    /// Whose engine it is; may be empty.
    pub customer: String,
    /// What the engine came out of; may be empty.
    pub machine: String,
    /// The arrangement in words, once entered.
    pub engine: Option<String>,
    /// When it was last changed: milliseconds since 1970-01-01 UTC.
    pub changed_at: u64,
    /// When it was closed: milliseconds since 1970-01-01 UTC; none while it is open.
    pub closed_at: Option<u64>,
    /// Whether the customer refused the work.
    pub refused: bool,
    /// Parts that were looked at.
    pub looked: usize,
    /// Parts of the engine.
    pub parts: usize,
    /// Photos taken in.
    pub photos: usize,
}

impl JobLine {
    pub(crate) fn new(row: JobRow, job: &Job) -> Self {
        let engine = job.arrangement.clone().and_then(|arrangement| Engine::new(arrangement).ok());
        let parts = engine.as_ref().map(Engine::parts).unwrap_or_default();
        let outside = engine.as_ref().map(Engine::outside).unwrap_or_default();
        let records = |of: &[Part]| of.iter().filter_map(|part| job.parts.get(part)).collect::<Vec<_>>();
        let text = |field| job.texts.get(&field).cloned().unwrap_or_default();
        Self {
            job: row.id,
            customer: text(TextField::Customer),
            machine: text(TextField::Machine),
            engine: engine.as_ref().map(|engine| engine.arrangement().summary()),
            changed_at: row.changed_at,
            closed_at: job.closed.map(EditId::millis),
            refused: job.refusal.is_some(),
            looked: records(parts).into_iter().filter(|record| record.looked_at()).count(),
            parts: parts.iter().filter(|part| job.seen_with(**part).is_none()).count(),
            photos: [records(parts), records(outside)].concat().iter().map(|record| record.photos.len()).sum(),
        }
    }
}
