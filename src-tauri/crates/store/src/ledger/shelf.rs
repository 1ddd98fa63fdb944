//! The shelf: what the shop keeps from job to job.

use super::Ledger;
use crate::StoreError;

/// What kind of thing stands on the shelf.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShelfKind {
    /// A measuring instrument.
    Instrument,
    /// A spec sheet.
    Sheet,
    /// The shop's prices: one list, without a name.
    Prices,
}

impl ShelfKind {
    fn column(self) -> &'static str {
        match self {
            Self::Instrument => "instrument",
            Self::Sheet => "sheet",
            Self::Prices => "prices",
        }
    }
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
    /// What the database says.
    pub fn keep_on_shelf(&self, kind: ShelfKind, name: &str, content: &str) -> Result<(), StoreError> {
        let sql = "INSERT INTO shelf (kind, name, content) VALUES (?1, ?2, ?3)
                   ON CONFLICT DO UPDATE SET content = excluded.content";
        self.connection.execute(sql, (kind.column(), name, content))?;
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
}
