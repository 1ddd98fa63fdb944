//! What can be read where some can't: a damaged page hides what stands on it, and nothing else.

use std::collections::BTreeMap;

use rusqlite::Row;
use wearbook_core::job::Edit;

use super::edit::edit;
use super::{JobRow, Ledger, from_column};
use crate::{JobId, StoreError};

/// The edits of a job, as far as they can be read.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct ReadEdits {
    /// In the order of their ids.
    pub edits: Vec<Edit>,
    /// Whether these are all.
    pub is_whole: bool,
}

impl Ledger<'_> {
    /// The edits of a job: from the first to where they can't be read, and from the last back to there.
    pub fn edits_as_far_as_read(&self, job: JobId) -> ReadEdits {
        let mut edits: BTreeMap<_, Edit> = BTreeMap::new();
        let mut read = |order: &str| {
            let sql = format!("SELECT id, change FROM edit WHERE job = ?1 ORDER BY id {order}");
            self.rows(&sql, &[&job.to_string()], |row| edit(row).map(|edit| edits.insert(edit.id, edit)).is_ok())
        };
        let is_whole = read("ASC") || {
            read("DESC");
            false
        };
        ReadEdits { edits: edits.into_values().collect(), is_whole }
    }

    /// Every job of which anything can be read: from the list of jobs and from whatever names one.
    ///
    /// # Errors
    /// None: what can't be read is passed over.
    pub fn jobs_as_far_as_read(&self) -> Result<Vec<JobRow>, StoreError> {
        let mut jobs: BTreeMap<JobId, u64> = BTreeMap::new();
        for order in ["ASC", "DESC"] {
            for sql in [
                "SELECT id AS job, added_at AS at FROM job ORDER BY id",
                "SELECT job, changed_at AS at FROM summary ORDER BY job",
                "SELECT DISTINCT job, 0 AS at FROM edit ORDER BY job",
            ] {
                self.rows(&format!("{sql} {order}"), &[], |row| named(row, &mut jobs));
            }
        }
        for away in self.all_put_away().unwrap_or_default() {
            jobs.remove(&away.job);
        }
        let latest = |id| self.edits_as_far_as_read(id).edits.last().map(|edit| edit.id.millis());
        Ok(jobs.into_iter().map(|(id, at)| JobRow { id, changed_at: latest(id).unwrap_or(at) }).collect())
    }

    /// Gives each row until one can't be read; says whether all were, and each was good.
    fn rows(&self, sql: &str, values: &[&dyn rusqlite::ToSql], mut take: impl FnMut(&Row<'_>) -> bool) -> bool {
        let Ok(mut statement) = self.connection.prepare(sql) else { return false };
        let Ok(mut rows) = statement.query(values) else { return false };
        let mut are_good = true;
        loop {
            match rows.next() {
                Ok(Some(row)) => are_good &= take(row),
                Ok(None) => return are_good,
                Err(_) => return false,
            }
        }
    }
}

fn named(row: &Row<'_>, jobs: &mut BTreeMap<JobId, u64>) -> bool {
    let id = row.get::<_, String>("job").ok().and_then(|id| id.parse().ok());
    let at = row.get("at").map(from_column).unwrap_or_default();
    id.is_some_and(|id| {
        let known = jobs.entry(id).or_default();
        *known = at.max(*known);
        true
    })
}
