//! Settings: names and values.

use std::collections::BTreeMap;

use super::Ledger;
use crate::StoreError;

impl Ledger<'_> {
    /// Every setting that has been set.
    ///
    /// # Errors
    /// What the database says.
    pub fn settings(&self) -> Result<BTreeMap<String, String>, StoreError> {
        let mut statement = self.connection.prepare_cached("SELECT key, value FROM setting")?;
        let rows = statement.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Sets one.
    ///
    /// # Errors
    /// What the database says.
    pub fn set_setting(&self, key: &str, value: &str) -> Result<(), StoreError> {
        let sql = "INSERT INTO setting (key, value) VALUES (?1, ?2) ON CONFLICT DO UPDATE SET value = excluded.value";
        self.connection.execute(sql, (key, value))?;
        Ok(())
    }
}
