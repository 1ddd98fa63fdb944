//! Jobs that are put away: out of the lists at once, gone after 30 days but for a row that remembers them.

use rusqlite::{OptionalExtension, Row};
use wearbook_core::job::{DeviceId, PhotoId};

use super::{Ledger, from_column, to_column};
use crate::{JobId, StoreError};

/// For how long a job that was put away can be brought back: 30 days, in milliseconds.
const KEPT: u64 = 30 * 24 * 60 * 60 * 1000;

/// A job that is put away.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PutAway {
    /// The job.
    pub job: JobId,
    /// When it was put away: milliseconds since 1970-01-01 UTC.
    pub at: u64,
    /// On which device.
    pub device: DeviceId,
    /// Whether nothing but this is left of it.
    pub gone: bool,
}

impl PutAway {
    /// Until when it can be brought back.
    pub fn until(&self) -> u64 {
        self.at.saturating_add(KEPT)
    }
}

impl Ledger<'_> {
    /// Notes that an archive of a job was made as it stands.
    ///
    /// # Errors
    /// [`StoreError::NoSuchJob`]; what the database says.
    pub fn note_archived(&self, job: JobId, now: u64) -> Result<(), StoreError> {
        self.require_job(job)?;
        let edits = i64::try_from(self.count_edits(job)?).unwrap_or(i64::MAX);
        let sql = "INSERT OR REPLACE INTO archived (job, edits, at) VALUES (?1, ?2, ?3)";
        self.connection.execute(sql, (job.to_string(), edits, to_column(now)))?;
        Ok(())
    }

    /// When an archive of a job was made as it stands; none if it was changed since, or never archived.
    ///
    /// # Errors
    /// What the database says.
    pub fn archived_at(&self, job: JobId) -> Result<Option<u64>, StoreError> {
        let edits = i64::try_from(self.count_edits(job)?).unwrap_or(i64::MAX);
        let sql = "SELECT at FROM archived WHERE job = ?1 AND edits = ?2";
        let at = self.connection.query_row(sql, (job.to_string(), edits), |row| row.get(0)).optional()?;
        Ok(at.map(from_column))
    }

    /// Puts a job away. An archive of it as it stands must have been made.
    ///
    /// # Errors
    /// [`StoreError::NotArchived`]; [`StoreError::NoSuchJob`]; what the database says.
    pub fn put_away(&self, job: JobId, now: u64) -> Result<(), StoreError> {
        self.require_job(job)?;
        if self.archived_at(job)?.is_none() {
            return Err(StoreError::NotArchived);
        }
        self.forget_summary(job)?;
        let sql = "INSERT INTO put_away (job, at, device, gone) VALUES (?1, ?2, ?3, 0)";
        let device = self.device()?.0.cast_signed();
        self.connection.execute(sql, (job.to_string(), to_column(now), device))?;
        Ok(())
    }

    /// Brings a job back that was put away.
    ///
    /// # Errors
    /// [`StoreError::NoSuchJob`] if it was not, or is gone; what the database says.
    pub fn bring_back(&self, job: JobId) -> Result<(), StoreError> {
        let back = self.connection.execute("DELETE FROM put_away WHERE job = ?1 AND gone = 0", [job.to_string()])?;
        if back == 0 { Err(StoreError::NoSuchJob) } else { Ok(()) }
    }

    /// Every job that is put away, the latest first; those too of which nothing is left.
    ///
    /// # Errors
    /// What the database says.
    pub fn all_put_away(&self) -> Result<Vec<PutAway>, StoreError> {
        let sql = "SELECT job, at, device, gone FROM put_away ORDER BY at DESC, job";
        let mut statement = self.connection.prepare_cached(sql)?;
        let rows = statement.query_map([], |row| Ok(put_away(row)))?;
        rows.map(|row| row?).collect()
    }

    /// Whether a job is put away.
    ///
    /// # Errors
    /// What the database says.
    pub fn is_put_away(&self, job: JobId) -> Result<bool, StoreError> {
        let mut statement = self.connection.prepare_cached("SELECT 1 FROM put_away WHERE job = ?1")?;
        Ok(statement.exists([job.to_string()])?)
    }

    /// Notes that a job was put away on another device, unless it is here.
    pub(crate) fn note_gone(&self, stub: PutAway) -> Result<(), StoreError> {
        let sql = "INSERT INTO put_away (job, at, device, gone) SELECT ?1, ?2, ?3, 1
            WHERE NOT EXISTS (SELECT 1 FROM job WHERE id = ?1) ON CONFLICT DO NOTHING";
        self.connection.execute(sql, (stub.job.to_string(), to_column(stub.at), stub.device.0.cast_signed()))?;
        Ok(())
    }

    /// Forgets that a job was put away, because an archive of it is to bring it back.
    pub(crate) fn forget_put_away(&self, job: JobId) -> Result<(), StoreError> {
        self.connection.execute("DELETE FROM put_away WHERE job = ?1", [job.to_string()])?;
        Ok(())
    }

    /// Takes all of a job out but the row that remembers it, where its 30 days are over. Names the photos that no other job
    /// has, whose files can go.
    pub(crate) fn clear_put_away(&self, now: u64) -> Result<Vec<PhotoId>, StoreError> {
        let due: Vec<PutAway> =
            self.all_put_away()?.into_iter().filter(|own| !own.gone && own.until() <= now).collect();
        let mut photos = Vec::new();
        for PutAway { job, .. } in due {
            let job = job.to_string();
            let sql = "SELECT photo FROM job_photo AS own WHERE job = ?1
                AND NOT EXISTS (SELECT 1 FROM job_photo WHERE photo = own.photo AND job <> ?1)";
            let mut statement = self.connection.prepare_cached(sql)?;
            let alone: Vec<String> = statement.query_map([&job], |row| row.get(0))?.collect::<Result<_, _>>()?;
            for table in ["job_photo", "edit", "summary", "archived", "shot"] {
                self.connection.execute(&format!("DELETE FROM {table} WHERE job = ?1"), [&job])?;
            }
            self.connection.execute("DELETE FROM job WHERE id = ?1", [&job])?;
            for photo in alone {
                photos.extend(self.stood_in_for(&photo)?);
                self.connection.execute("DELETE FROM stand_in WHERE photo = ?1", [&photo])?;
                self.connection.execute("DELETE FROM photo WHERE id = ?1", [&photo])?;
                photos.push(PhotoId::try_from(photo).map_err(|_| StoreError::Damaged)?);
            }
            self.connection.execute("UPDATE put_away SET gone = 1 WHERE job = ?1", [&job])?;
        }
        Ok(photos)
    }
}

fn put_away(row: &Row<'_>) -> Result<PutAway, StoreError> {
    Ok(PutAway {
        job: row.get::<_, String>("job")?.parse().map_err(|_| StoreError::Damaged)?,
        at: from_column(row.get("at")?),
        device: DeviceId(row.get::<_, i64>("device")?.cast_unsigned()),
        gone: row.get("gone")?,
    })
}
