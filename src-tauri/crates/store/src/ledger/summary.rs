//! What is shown of a job in a list: follows from its edits, and is kept so that a list needs no job unfolded.

use rusqlite::{Row, params};

use super::job::job_row;
use super::{Ledger, from_column, to_column};
use crate::{JobId, JobRow, StoreError};

/// What is kept of a job for lists.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Summary {
    /// Of which job, and when it was last edited.
    pub row: JobRow,
    /// Whether the job is open.
    pub is_open: bool,
    /// The engine's number as it is compared; may be empty.
    pub engine: String,
    /// What a search looks through.
    pub found_by: String,
    /// JSON.
    pub content: String,
}

/// Which jobs are asked for.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// Open ones, or closed ones.
    pub is_open: bool,
    /// Words that must all be found; none finds all.
    pub words: &'a [String],
    /// How many at most.
    pub most: usize,
}

impl Ledger<'_> {
    /// Jobs of which no summary of this version is kept.
    ///
    /// # Errors
    /// What the database says.
    pub fn jobs_without_summary(&self, version: u32) -> Result<Vec<JobRow>, StoreError> {
        // Most often there are none: three counts, each of one index, say so.
        let sql = "SELECT (SELECT count(*) FROM job) - (SELECT count(*) FROM put_away WHERE gone = 0)
            - (SELECT count(*) FROM summary WHERE version = ?1)";
        let missing: i64 = self.connection.prepare_cached(sql)?.query_row([version], |row| row.get(0))?;
        if missing == 0 {
            return Ok(vec![]);
        }
        let sql = "SELECT id, added_at, (SELECT max(edit.id) FROM edit WHERE edit.job = job.id) AS latest_edit FROM job
            WHERE NOT EXISTS (SELECT 1 FROM summary WHERE summary.job = job.id AND summary.version = ?1)
            AND id NOT IN (SELECT job FROM put_away)";
        let mut statement = self.connection.prepare_cached(sql)?;
        let rows = statement.query_map([version], |row| Ok(job_row(row)))?;
        rows.map(|row| row?).collect()
    }

    /// Keeps a summary, in place of the one before.
    ///
    /// # Errors
    /// What the database says.
    pub fn keep_summary(&self, version: u32, summary: &Summary) -> Result<(), StoreError> {
        let sql = "INSERT OR REPLACE INTO summary (job, version, changed_at, is_open, engine, found_by, content)
            VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
        let Summary { row, is_open, engine, found_by, content } = summary;
        let changed_at = to_column(row.changed_at);
        self.connection.prepare_cached(sql)?.execute(params![
            row.id.to_string(),
            version,
            changed_at,
            is_open,
            engine,
            found_by,
            content
        ])?;
        Ok(())
    }

    /// The summaries that are asked for, latest changed first, and how many there are in all.
    ///
    /// # Errors
    /// What the database says.
    pub fn summaries(&self, asked: Asked<'_>) -> Result<(Vec<Summary>, usize), StoreError> {
        let Asked { is_open, words, most } = asked;
        if words.is_empty() {
            let sql = "SELECT count(*) FROM summary WHERE is_open = ?1";
            let all: i64 = self.connection.prepare_cached(sql)?.query_row([is_open], |row| row.get(0))?;
            let sql = "SELECT job, changed_at, is_open, engine, found_by, content FROM summary
                WHERE is_open = ?1 ORDER BY changed_at DESC, job LIMIT ?2";
            let mut statement = self.connection.prepare_cached(sql)?;
            let most = i64::try_from(most).unwrap_or(i64::MAX);
            let rows = statement.query_map((is_open, most), |row| Ok(summary(row)))?;
            let summaries = rows.map(|row| row?).collect::<Result<Vec<_>, StoreError>>()?;
            return Ok((summaries, usize::try_from(all).map_err(|_| StoreError::Damaged)?));
        }
        // Every word is looked for as it is: none of its letters means anything to the database. All that are found are
        // counted, in one pass.
        let has_word = |nth: usize| format!(" AND instr(found_by, ?{}) > 0", nth + 2);
        let matches: String = (0..words.len()).map(has_word).collect();
        let sql = format!(
            "SELECT job, changed_at, is_open, engine, found_by, content FROM summary
             WHERE is_open = ?1{matches} ORDER BY changed_at DESC, job"
        );
        let words = words.iter().map(|word| word as &dyn rusqlite::ToSql);
        let values: Vec<&dyn rusqlite::ToSql> =
            std::iter::once(&is_open as &dyn rusqlite::ToSql).chain(words).collect();
        let mut statement = self.connection.prepare_cached(&sql)?;
        let mut rows = statement.query(&*values)?;
        let (mut summaries, mut all) = (Vec::new(), 0);
        while let Some(row) = rows.next()? {
            all += 1;
            if summaries.len() < most {
                summaries.push(summary(row)?);
            }
        }
        Ok((summaries, all))
    }

    /// The summaries of jobs about an engine of this number, latest changed first.
    ///
    /// # Errors
    /// What the database says.
    pub fn summaries_of_engine(&self, engine: &str) -> Result<Vec<Summary>, StoreError> {
        let sql = "SELECT job, changed_at, is_open, engine, found_by, content FROM summary
            WHERE engine = ?1 AND engine <> '' ORDER BY changed_at DESC, job";
        let mut statement = self.connection.prepare_cached(sql)?;
        let rows = statement.query_map([engine], |row| Ok(summary(row)))?;
        rows.map(|row| row?).collect()
    }

    /// Takes a summary away: something came that it does not tell of.
    pub(super) fn forget_summary(&self, job: JobId) -> Result<(), StoreError> {
        self.connection.prepare_cached("DELETE FROM summary WHERE job = ?1")?.execute([job.to_string()])?;
        Ok(())
    }
}

fn summary(row: &Row<'_>) -> Result<Summary, StoreError> {
    let id: JobId = row.get::<_, String>("job")?.parse().map_err(|_| StoreError::Damaged)?;
    Ok(Summary {
        row: JobRow { id, changed_at: from_column(row.get("changed_at")?) },
        is_open: row.get("is_open")?,
        engine: row.get("engine")?,
        found_by: row.get("found_by")?,
        content: row.get("content")?,
    })
}
