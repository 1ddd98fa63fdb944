//! The shelf: what the shop keeps from job to job.

use rusqlite::{OptionalExtension, Row};
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use super::{Ledger, from_column, to_column};
use crate::StoreError;
use crate::archive::{Extent, MAX_SHELF_BYTES, MAX_SHELF_LINE_BYTES, MAX_SHELF_LINE_VALUES};

/// What kind of thing stands on the shelf.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ShelfKind {
    /// A measuring instrument.
    Instrument,
    /// A spec sheet.
    Sheet,
    /// The shop's prices: one list, without a name.
    Prices,
}

impl ShelfKind {
    const ALL: [Self; 3] = [Self::Instrument, Self::Sheet, Self::Prices];

    fn column(self) -> &'static str {
        match self {
            Self::Instrument => "instrument",
            Self::Sheet => "sheet",
            Self::Prices => "prices",
        }
    }
}

/// A thing on the shelf, as it stands in the shop's archive.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ShelfLine {
    pub(crate) kind: ShelfKind,
    pub(crate) name: String,
    /// When it was put there; 0 if that is not known.
    #[serde(default)]
    pub(crate) changed_at: u64,
    pub(crate) content: Box<RawValue>,
}

impl Ledger<'_> {
    /// Everything of a kind as JSON, by name.
    ///
    /// # Errors
    /// What the database says.
    pub fn shelf(&self, kind: ShelfKind) -> Result<Vec<String>, StoreError> {
        let mut statement =
            self.connection.prepare_cached("SELECT content FROM shelf WHERE kind = ?1 ORDER BY name")?;
        let rows = statement.query_map([kind.column()], |row| row.get(0))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Puts a thing on the shelf in place of the one of its name.
    ///
    /// # Errors
    /// [`StoreError::EntryRefused`] where the shop’s archive could not hold it; what the database says.
    pub fn keep_on_shelf(&self, kind: ShelfKind, name: &str, content: &str, now: u64) -> Result<(), StoreError> {
        let most = MAX_SHELF_LINE_BYTES / (1024 * 1024);
        if content.len() > MAX_SHELF_LINE_BYTES || name.len() > content.len().max(1_000) {
            return Err(StoreError::EntryRefused(format!(
                "This has more than {most} MB, the most that a shelf takes."
            )));
        }
        if Extent::of(content).values > MAX_SHELF_LINE_VALUES {
            return Err(StoreError::EntryRefused(format!(
                "This has more than {MAX_SHELF_LINE_VALUES} values, the most that a shelf takes."
            )));
        }
        let sql = "INSERT INTO shelf (kind, name, content, changed_at) VALUES (?1, ?2, ?3, ?4)
                   ON CONFLICT DO UPDATE SET content = excluded.content, changed_at = excluded.changed_at";
        self.connection.execute(sql, (kind.column(), name, content, to_column(now)))?;
        let sql = "SELECT coalesce(sum(octet_length(content) + octet_length(name)), 0) FROM shelf";
        let bytes = from_column(self.connection.query_row(sql, [], |row| row.get(0))?);
        if bytes > MAX_SHELF_BYTES {
            let most = MAX_SHELF_BYTES / (1024 * 1024);
            return Err(StoreError::EntryRefused(format!(
                "The shop’s shelf would have more than {most} MB: take something off it first."
            )));
        }
        Ok(())
    }

    /// Takes a thing off the shelf; jobs that use it keep their copies.
    ///
    /// # Errors
    /// What the database says.
    pub fn take_off_shelf(&self, kind: ShelfKind, name: &str) -> Result<(), StoreError> {
        self.connection.execute("DELETE FROM shelf WHERE kind = ?1 AND name = ?2", (kind.column(), name))?;
        Ok(())
    }

    /// Everything on the shelf.
    pub(crate) fn shelf_lines(&self) -> Result<Vec<ShelfLine>, StoreError> {
        let mut lines = Vec::new();
        for kind in ShelfKind::ALL {
            let sql = "SELECT name, content, changed_at FROM shelf WHERE kind = ?1 ORDER BY name";
            let mut statement = self.connection.prepare_cached(sql)?;
            let rows = statement.query_map([kind.column()], |row| Ok(line(kind, row)))?;
            for row in rows {
                lines.push(row??);
            }
        }
        Ok(lines)
    }

    /// The thing of a name.
    pub(crate) fn shelf_line(&self, kind: ShelfKind, name: &str) -> Result<Option<ShelfLine>, StoreError> {
        let sql = "SELECT name, content, changed_at FROM shelf WHERE kind = ?1 AND name = ?2";
        let mut statement = self.connection.prepare_cached(sql)?;
        statement.query_row((kind.column(), name), |row| Ok(line(kind, row))).optional()?.transpose()
    }
}

fn line(kind: ShelfKind, row: &Row<'_>) -> Result<ShelfLine, StoreError> {
    let content: String = row.get("content")?;
    Ok(ShelfLine {
        kind,
        name: row.get("name")?,
        changed_at: from_column(row.get("changed_at")?),
        content: RawValue::from_string(content).map_err(|_| StoreError::Damaged)?,
    })
}
