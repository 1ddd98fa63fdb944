//! Edits: appended, never removed, and never changed but for two that have one id (`same_id.rs`).

use std::borrow::Cow;

use rusqlite::Row;
use wearbook_core::job::{Edit, EditId, RecordedChange};

use super::written::Written;
use super::{Ledger, from_column};
use crate::archive::{Extent, MAX_EDITS, MAX_JOB_BYTES, MAX_UNKNOWN_VALUES};
use crate::same_id::{id_of_its_own, order};
use crate::{JobAsOf, JobId, StoreError};

/// How many bytes of edits are read at once: an ordinary job has a tenth of it.
pub(crate) const AT_ONCE: usize = 4 * 1024 * 1024;

impl Ledger<'_> {
    /// All edits of a job in the order of their ids.
    ///
    /// # Errors
    /// [`StoreError::NoSuchJob`]; [`StoreError::Damaged`] if a row can't be read.
    pub fn edits(&self, job: JobId) -> Result<Vec<Edit>, StoreError> {
        self.edits_after(job, None)
    }

    /// The edits of a job later than one of them; all without one.
    ///
    /// # Errors
    /// As [`Ledger::edits`].
    pub fn edits_after(&self, job: JobId, known: Option<EditId>) -> Result<Vec<Edit>, StoreError> {
        self.require_job(job)?;
        let known = known.map(|id| id.to_string()).unwrap_or_default();
        let sql = "SELECT id, change FROM edit WHERE job = ?1 AND id > ?2 ORDER BY id";
        let mut statement = self.connection.prepare_cached(sql)?;
        let rows = statement.query_map((job.to_string(), known), |row| Ok(edit(row)))?;
        rows.map(|row| row?).collect()
    }

    /// How many edits a job has.
    ///
    /// # Errors
    /// What the database says.
    pub fn count_edits(&self, job: JobId) -> Result<usize, StoreError> {
        let mut statement = self.connection.prepare_cached("SELECT count(*) FROM edit WHERE job = ?1")?;
        let count: i64 = statement.query_row([job.to_string()], |row| row.get(0))?;
        usize::try_from(count).map_err(|_| StoreError::Damaged)
    }

    /// Appends edits. One that is here already is passed over, so that importing twice changes nothing; of two that
    /// have one id both are kept, see [`crate::gave_way`].
    ///
    /// # Errors
    /// [`StoreError::EditConflict`] if an id of a file written by hand is here with another content;
    /// [`StoreError::EntryRefused`] and [`StoreError::JobFull`] where an archive of the job could not be taken in;
    /// [`StoreError::NoSuchJob`].
    pub fn append(&self, job: JobId, edits: &[Edit]) -> Result<(), StoreError> {
        let written = edits
            .iter()
            .map(|edit| Written::new(edit.id, &edit.change).map_err(|refused| StoreError::EntryRefused(refused.0)));
        self.append_written(job, written)
    }

    /// The same of edits as they are kept.
    pub(crate) fn append_written(
        &self,
        job: JobId,
        edits: impl IntoIterator<Item = Result<Written, StoreError>>,
    ) -> Result<(), StoreError> {
        self.require_job(job)?;
        self.forget_summary(job)?;
        let mut has_unknown = false;
        for edit in edits {
            let edit = edit?;
            has_unknown |= edit.unknown_values > 0;
            if let Some(photo) = &edit.photo {
                self.link_photo(job, photo)?;
            }
            self.insert(job, edit)?;
        }
        self.require_room(job)?;
        if has_unknown { self.require_few_unknown(job) } else { Ok(()) }
    }

    fn insert(&self, job: JobId, edit: Written) -> Result<(), StoreError> {
        let id = edit.id;
        let sql = "INSERT INTO edit (job, id, change) VALUES (?1, ?2, ?3) ON CONFLICT DO NOTHING";
        let added = self.connection.prepare_cached(sql)?.execute((job.to_string(), id.to_string(), &edit.change))?;
        if added > 0 {
            return Ok(());
        }
        let there = self.recorded(job, id)?;
        if edit.is_the_same_as(&there)? {
            return Ok(());
        }
        let read = |text: &str| serde_json::from_str::<RecordedChange>(text).map_err(|_| StoreError::Damaged);
        let (there, change) = (read(&there)?, read(&edit.change)?);
        let (stays, goes) = if order(&there, &change).is_le() { (there, change) } else { (change, there) };
        let own = id_of_its_own(id, &goes).ok_or_else(|| StoreError::EditConflict(id.to_string()))?;
        let sql = "UPDATE edit SET change = ?3 WHERE job = ?1 AND id = ?2";
        let stays = serde_json::to_string(&canonical(&stays)).map_err(|_| StoreError::Damaged)?;
        self.connection.prepare_cached(sql)?.execute((job.to_string(), id.to_string(), stays))?;
        self.insert(job, Written::new(own, &goes).map_err(|refused| StoreError::EntryRefused(refused.0))?)
    }

    fn recorded(&self, job: JobId, id: EditId) -> Result<String, StoreError> {
        let sql = "SELECT change FROM edit WHERE job = ?1 AND id = ?2";
        let mut statement = self.connection.prepare_cached(sql)?;
        Ok(statement.query_row((job.to_string(), id.to_string()), |row| row.get(0))?)
    }

    /// How many edits a job has, and of how many bytes together.
    pub(crate) fn extent(&self, job: JobId) -> Result<(usize, u64), StoreError> {
        let sql = "SELECT count(*), coalesce(sum(octet_length(change)), 0) FROM edit WHERE job = ?1";
        let mut statement = self.connection.prepare_cached(sql)?;
        let (count, bytes): (i64, i64) =
            statement.query_row([job.to_string()], |row| Ok((row.get(0)?, row.get(1)?)))?;
        Ok((usize::try_from(count).map_err(|_| StoreError::Damaged)?, from_column(bytes)))
    }

    /// How many edits a job has, and the latest of them.
    pub(crate) fn as_of(&self, job: JobId) -> Result<JobAsOf, StoreError> {
        let sql = "SELECT count(*), max(id) FROM edit WHERE job = ?1";
        let mut statement = self.connection.prepare_cached(sql)?;
        let (edits, latest): (i64, Option<String>) =
            statement.query_row([job.to_string()], |row| Ok((row.get(0)?, row.get(1)?)))?;
        let latest = latest.map(|id| id.parse().map_err(|_| StoreError::Damaged)).transpose()?;
        Ok(JobAsOf { edits: usize::try_from(edits).map_err(|_| StoreError::Damaged)?, latest })
    }

    /// A job may hold what an archive of it may.
    pub(crate) fn require_room(&self, job: JobId) -> Result<(), StoreError> {
        let (count, bytes) = self.extent(job)?;
        if count > MAX_EDITS || bytes > MAX_JOB_BYTES { Err(StoreError::JobFull) } else { Ok(()) }
    }

    /// Whoever opens the job holds all that newer versions entered in memory.
    fn require_few_unknown(&self, job: JobId) -> Result<(), StoreError> {
        let (mut after, mut values) = (None, 0);
        loop {
            let kept = self.edits_as_kept(job, after, AT_ONCE)?;
            let Some((last, _)) = kept.last() else { return Ok(()) };
            after = Some(*last);
            for (_, change) in &kept {
                let read: RecordedChange = serde_json::from_str(change).map_err(|_| StoreError::Damaged)?;
                if let RecordedChange::Unknown(_) = read {
                    values += Extent::of(change).values;
                }
            }
            if values > MAX_UNKNOWN_VALUES {
                return Err(StoreError::EntryRefused(format!(
                    "What newer versions entered in this job has more than {MAX_UNKNOWN_VALUES} values together, which no job has. Nothing was taken in."
                )));
            }
        }
    }

    /// The next edits of a job as they are kept, in the order of ids: about so many bytes of them.
    pub(crate) fn edits_as_kept(
        &self,
        job: JobId,
        after: Option<EditId>,
        bytes: usize,
    ) -> Result<Vec<(EditId, String)>, StoreError> {
        self.require_job(job)?;
        let sql = "SELECT id, change FROM edit WHERE job = ?1 AND id > ?2 ORDER BY id";
        let mut statement = self.connection.prepare_cached(sql)?;
        let after = after.map(|id| id.to_string()).unwrap_or_default();
        let mut rows = statement.query((job.to_string(), after))?;
        let (mut kept, mut taken) = (Vec::new(), 0);
        while taken < bytes
            && let Some(row) = rows.next()?
        {
            let (id, change): (String, String) = (row.get(0)?, row.get(1)?);
            taken += change.len();
            kept.push((id.parse().map_err(|_| StoreError::Damaged)?, change));
        }
        Ok(kept)
    }
}

pub(super) fn edit(row: &Row<'_>) -> Result<Edit, StoreError> {
    let id: String = row.get("id")?;
    let change: String = row.get("change")?;
    let id = id.parse().map_err(|_| StoreError::Damaged)?;
    let change = serde_json::from_str(&change).map_err(|_| StoreError::Damaged)?;
    Ok(Edit { id, change })
}

/// The fields of an entry that is not understood come in any order; here they are sorted, so that the same content is
/// the same text.
pub(crate) fn canonical(change: &RecordedChange) -> Cow<'_, RecordedChange> {
    match change {
        RecordedChange::Unknown(value) => {
            let mut value = value.clone();
            value.sort_all_objects();
            Cow::Owned(RecordedChange::Unknown(value))
        }
        known @ RecordedChange::Known(_) => Cow::Borrowed(known),
    }
}
