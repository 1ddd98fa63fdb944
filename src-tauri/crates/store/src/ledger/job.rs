//! Jobs: a name each, and when it came here.

use rusqlite::{OptionalExtension, Row};
use wearbook_core::job::EditId;
use wearbook_core::label::JobStart;

use super::{Ledger, from_column, to_column};
use crate::{JobId, StoreError};

/// A job as it stands in the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct JobRow {
    /// Its name.
    pub id: JobId,
    /// When it was last edited, or, without edits, added here: milliseconds since 1970-01-01 UTC.
    pub changed_at: u64,
}

impl Ledger<'_> {
    /// Every job, latest changed first.
    ///
    /// # Errors
    /// What the database says.
    pub fn jobs(&self) -> Result<Vec<JobRow>, StoreError> {
        let mut statement = self.connection.prepare_cached(include_str!("jobs.sql"))?;
        let rows = statement.query_map([], |row| Ok(job_row(row)))?;
        let mut jobs = rows.map(|row| row?).collect::<Result<Vec<_>, StoreError>>()?;
        jobs.sort_by_key(|job| (std::cmp::Reverse(job.changed_at), job.id));
        Ok(jobs)
    }

    /// Every job whose name begins so: one, but for a rare chance.
    ///
    /// # Errors
    /// What the database says.
    pub fn jobs_beginning(&self, start: JobStart) -> Result<Vec<JobId>, StoreError> {
        let mut statement = self.connection.prepare_cached(
            "SELECT id FROM job WHERE id GLOB ?1 AND id NOT IN (SELECT job FROM put_away) ORDER BY id",
        )?;
        let rows = statement.query_map([format!("{start}*")], |row| row.get::<_, String>("id"))?;
        rows.map(|id| id?.parse().map_err(|_| StoreError::Damaged)).collect()
    }

    /// Begins an empty job. Its name is drawn at random.
    ///
    /// # Errors
    /// What the database says.
    pub fn create_job(&self, now: u64) -> Result<JobId, StoreError> {
        let sql = "INSERT INTO job (added_at) VALUES (?1) RETURNING id";
        let id: String = self.connection.query_row(sql, [to_column(now)], |row| row.get(0))?;
        id.parse().map_err(|_| StoreError::Damaged)
    }

    /// Adds a job that has its name already, unless it is here.
    ///
    /// # Errors
    /// What the database says.
    pub fn adopt_job(&self, id: JobId, now: u64) -> Result<(), StoreError> {
        let sql = "INSERT INTO job (id, added_at) VALUES (?1, ?2) ON CONFLICT DO NOTHING";
        self.connection.execute(sql, (id.to_string(), to_column(now)))?;
        Ok(())
    }

    /// Whether a job is here, put away or not.
    pub(crate) fn has_job(&self, id: JobId) -> Result<bool, StoreError> {
        let mut statement = self.connection.prepare_cached("SELECT 1 FROM job WHERE id = ?1")?;
        Ok(statement.exists([id.to_string()])?)
    }

    /// Whether nothing was begun here yet, nothing was put away and nothing stands on the shelf.
    pub(crate) fn is_empty_shop(&self) -> Result<bool, StoreError> {
        let sql = "SELECT NOT EXISTS (SELECT 1 FROM job) AND NOT EXISTS (SELECT 1 FROM put_away)
            AND NOT EXISTS (SELECT 1 FROM shelf)";
        Ok(self.connection.query_row(sql, [], |row| row.get(0))?)
    }

    /// Refuses the name of a job that is not here, or is put away.
    ///
    /// # Errors
    /// [`StoreError::NoSuchJob`], and what the database says.
    pub fn require_job(&self, id: JobId) -> Result<JobId, StoreError> {
        let mut statement = self.connection.prepare_cached(
            "SELECT 1 FROM job WHERE id = ?1 AND NOT EXISTS (SELECT 1 FROM put_away WHERE put_away.job = ?1)",
        )?;
        let found = statement.query_row([id.to_string()], |_| Ok(())).optional()?;
        found.map(|()| id).ok_or(StoreError::NoSuchJob)
    }
}

pub(super) fn job_row(row: &Row<'_>) -> Result<JobRow, StoreError> {
    let id: JobId = row.get::<_, String>("id")?.parse().map_err(|_| StoreError::Damaged)?;
    let latest: Option<String> = row.get("latest_edit")?;
    let changed_at = match latest {
        Some(edit) => edit.parse::<EditId>().map_err(|_| StoreError::Damaged)?.millis(),
        None => from_column(row.get("added_at")?),
    };
    Ok(JobRow { id, changed_at })
}
