//! A photo that the camera was asked for, as it is offered.

use serde::Serialize;
use wearbook_core::engine::{Engine, Part};
use wearbook_core::job::{EditId, Job, TextField};
use wearbook_store::{JobId, ShotId, ShotOf, ShotRow, ShotState, StoreError};

use crate::{Error, Wearbook};

/// A photo that the camera was asked for and that is not in its job yet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Shot {
    /// By this name it is taken in or put away.
    pub shot: ShotId,
    /// The job.
    pub job: JobId,
    /// The part that it shows,
    pub part: Option<Part>,
    /// or what came with the engine: the edit that noted it.
    pub ancillary: Option<EditId>,
    /// What it shows, as a mechanic would call it.
    pub label: String,
    /// Whose engine it is; may be empty.
    pub customer: String,
    /// What the engine came out of; may be empty.
    pub machine: String,
    /// When the camera was asked: milliseconds since 1970-01-01 UTC.
    pub asked_at: u64,
    /// Whether the photo is there; until then the camera is open.
    pub taken: bool,
}

impl Shot {
    /// Every shot, the earliest first; none of a job that is damaged, for that must not keep the others away.
    pub(crate) fn all(book: &Wearbook) -> Result<Vec<Self>, Error> {
        let rows = book.store.read::<_, Error>(|ledger| Ok(ledger.shots()?))?;
        let damaged = StoreError::Damaged.code();
        let shots = rows.into_iter().map(|row| Self::of(book, row));
        shots.filter(|shot| !shot.as_ref().is_err_and(|error| error.code == damaged)).collect()
    }

    /// One as it is offered.
    pub(crate) fn of(book: &Wearbook, row: ShotRow) -> Result<Self, Error> {
        book.look(row.job, |open| Self::new(row, open.log.job()))
    }

    fn new(row: ShotRow, job: &Job) -> Self {
        let (part, ancillary) = match row.of {
            ShotOf::Part(part) => (Some(part), None),
            ShotOf::Ancillary(edit) => (None, Some(edit)),
        };
        let text = |field| job.texts.get(&field).cloned().unwrap_or_default();
        Self {
            shot: row.id,
            job: row.job,
            part,
            ancillary,
            label: label(row.of, job),
            customer: text(TextField::Customer),
            machine: text(TextField::Machine),
            asked_at: row.asked_at,
            taken: row.state == ShotState::Taken,
        }
    }
}

/// What the engine no longer has keeps its written form: the photo is there all the same.
fn label(of: ShotOf, job: &Job) -> String {
    match of {
        ShotOf::Part(part) => {
            let engine = job.arrangement.clone().and_then(|arrangement| Engine::new(arrangement).ok());
            engine.map_or_else(|| part.to_string(), |engine| part.label(engine.arrangement(), job.terms))
        }
        ShotOf::Ancillary(edit) => job.ancillary(edit).map(|item| item.what.trim().to_owned()).unwrap_or_default(),
    }
}
