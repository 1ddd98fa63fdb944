//! Shots: a row for each photo that the camera was asked for and that is not in its job yet.

use rusqlite::{OptionalExtension, Row};
use wearbook_core::engine::Part;
use wearbook_core::job::EditId;

use super::{Ledger, from_column, to_column};
use crate::shot_id::ShotId;
use crate::{JobId, StoreError};

/// What a shot is to show.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShotOf {
    /// A part.
    Part(Part),
    /// What came with the engine: the edit that noted it.
    Ancillary(EditId),
}

/// How far a shot is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShotState {
    /// Noted before the camera opened; whether there will be a picture nobody knows.
    Waiting,
    /// A whole picture is there.
    Taken,
}

impl ShotState {
    fn name(self) -> &'static str {
        match self {
            Self::Waiting => "waiting",
            Self::Taken => "taken",
        }
    }
}

/// A photo that the camera was asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ShotRow {
    /// Its name.
    pub id: ShotId,
    /// The job.
    pub job: JobId,
    /// What it is to show.
    pub of: ShotOf,
    /// When the camera was asked: milliseconds since 1970-01-01 UTC.
    pub asked_at: u64,
    /// How far it is.
    pub state: ShotState,
}

impl Ledger<'_> {
    /// Notes that the camera is about to open.
    ///
    /// # Errors
    /// [`StoreError::ShotWaiting`] while another shot waits; what the database says.
    pub fn begin_shot(&self, job: JobId, of: ShotOf, now: u64) -> Result<ShotRow, StoreError> {
        if self.shots()?.iter().any(|shot| shot.state == ShotState::Waiting) {
            return Err(StoreError::ShotWaiting);
        }
        let (part, ancillary) = match of {
            ShotOf::Part(part) => (Some(part.to_string()), None),
            ShotOf::Ancillary(edit) => (None, Some(edit.to_string())),
        };
        let sql = "INSERT INTO shot (job, part, ancillary, asked_at) VALUES (?1, ?2, ?3, ?4) RETURNING *";
        let values = (job.to_string(), part, ancillary, to_column(now));
        self.connection.query_row(sql, values, |row| Ok(shot_row(row)))?
    }

    /// Every shot, the earliest first.
    ///
    /// # Errors
    /// What the database says.
    pub fn shots(&self) -> Result<Vec<ShotRow>, StoreError> {
        let mut statement = self.connection.prepare_cached("SELECT * FROM shot ORDER BY asked_at, id")?;
        let rows = statement.query_map([], |row| Ok(shot_row(row)))?;
        rows.map(|row| row?).collect()
    }

    /// One shot.
    ///
    /// # Errors
    /// [`StoreError::NoSuchShot`] if it has been taken in or put away; what the database says.
    pub fn shot(&self, id: &ShotId) -> Result<ShotRow, StoreError> {
        let mut statement = self.connection.prepare_cached("SELECT * FROM shot WHERE id = ?1")?;
        let found = statement.query_row([id.to_string()], |row| Ok(shot_row(row))).optional()?;
        found.ok_or(StoreError::NoSuchShot)?
    }

    /// Notes that a whole picture of a shot is on the disk.
    pub(crate) fn take_shot(&self, id: &ShotId) -> Result<(), StoreError> {
        let sql = "UPDATE shot SET state = ?2 WHERE id = ?1";
        self.connection.execute(sql, (id.to_string(), ShotState::Taken.name()))?;
        Ok(())
    }

    /// Forgets a shot. Its file is of no use from then on.
    ///
    /// # Errors
    /// [`StoreError::NoSuchShot`] if it has been taken in or put away; what the database says.
    pub fn forget_shot(&self, id: &ShotId) -> Result<(), StoreError> {
        let gone = self.connection.execute("DELETE FROM shot WHERE id = ?1", [id.to_string()])?;
        if gone == 0 { Err(StoreError::NoSuchShot) } else { Ok(()) }
    }
}

fn shot_row(row: &Row<'_>) -> Result<ShotRow, StoreError> {
    let text = |column: &str| row.get::<_, Option<String>>(column);
    let of = match (text("part")?, text("ancillary")?) {
        (Some(part), _) => ShotOf::Part(part.parse().map_err(|_| StoreError::Damaged)?),
        (None, Some(edit)) => ShotOf::Ancillary(edit.parse().map_err(|_| StoreError::Damaged)?),
        (None, None) => return Err(StoreError::Damaged),
    };
    let is_taken = row.get::<_, String>("state")? == ShotState::Taken.name();
    Ok(ShotRow {
        id: row.get::<_, String>("id")?.parse().map_err(|_| StoreError::Damaged)?,
        job: row.get::<_, String>("job")?.parse().map_err(|_| StoreError::Damaged)?,
        of,
        asked_at: from_column(row.get("asked_at")?),
        state: if is_taken { ShotState::Taken } else { ShotState::Waiting },
    })
}
