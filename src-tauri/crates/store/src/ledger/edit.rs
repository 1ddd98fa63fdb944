//! Edits: appended, never removed, and never changed but for two that have one id (`same_id.rs`).

use std::borrow::Cow;
use std::cmp::Ordering;

use rusqlite::Row;
use wearbook_core::job::{Edit, EditId, RecordedChange};

use super::Ledger;
use crate::same_id::{id_of_its_own, order};
use crate::{JobId, StoreError};

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

    /// Appends edits. One that is here already is passed over, so that importing twice changes nothing; of two that have one
    /// id both are kept, see [`crate::gave_way`].
    ///
    /// # Errors
    /// [`StoreError::EditConflict`] if an id of a file written by hand is here with another content;
    /// [`StoreError::NoSuchJob`].
    pub fn append(&self, job: JobId, edits: &[Edit]) -> Result<(), StoreError> {
        self.require_job(job)?;
        self.forget_summary(job)?;
        for edit in edits {
            self.insert(job, edit.id, canonical(&edit.change).into_owned())?;
            if let RecordedChange::Known(change) = &edit.change
                && let Some(photo) = change.photo()
            {
                self.link_photo(job, photo)?;
            }
        }
        Ok(())
    }

    fn insert(&self, job: JobId, id: EditId, change: RecordedChange) -> Result<(), StoreError> {
        let sql = "INSERT INTO edit (job, id, change) VALUES (?1, ?2, ?3) ON CONFLICT DO NOTHING";
        let added = self.connection.prepare_cached(sql)?.execute((job.to_string(), id.to_string(), json(&change)?))?;
        if added > 0 {
            return Ok(());
        }
        let there = self.recorded(job, id)?;
        let (stays, goes) = match order(&there, &change) {
            Ordering::Equal => return Ok(()),
            Ordering::Less => (there, change),
            Ordering::Greater => (change, there),
        };
        let own = id_of_its_own(id, &goes).ok_or_else(|| StoreError::EditConflict(id.to_string()))?;
        let sql = "UPDATE edit SET change = ?3 WHERE job = ?1 AND id = ?2";
        self.connection.prepare_cached(sql)?.execute((job.to_string(), id.to_string(), json(&stays)?))?;
        self.insert(job, own, goes)
    }

    fn recorded(&self, job: JobId, id: EditId) -> Result<RecordedChange, StoreError> {
        let sql = "SELECT id, change FROM edit WHERE job = ?1 AND id = ?2";
        let key = (job.to_string(), id.to_string());
        self.connection.query_row(sql, key, |row| Ok(edit(row)))?.map(|edit| canonical(&edit.change).into_owned())
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

fn json(change: &RecordedChange) -> Result<String, StoreError> {
    // Nothing in a change can fail to become JSON: its maps have text for keys.
    serde_json::to_string(&canonical(change)).map_err(|_| StoreError::Damaged)
}
