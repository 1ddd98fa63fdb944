//! The device: one row.

use wearbook_core::job::{DeviceId, Horizon};

use super::{Ledger, from_column, to_column};
use crate::StoreError;

impl Ledger<'_> {
    /// This store's own id, drawn when it was made.
    ///
    /// # Errors
    /// What the database says.
    pub fn device(&self) -> Result<DeviceId, StoreError> {
        let mut statement = self.connection.prepare_cached("SELECT id FROM device")?;
        let id: i64 = statement.query_row([], |row| row.get(0))?;
        Ok(DeviceId(id.cast_unsigned()))
    }

    /// The latest time, by its own clock, at which something was entered here.
    ///
    /// # Errors
    /// What the database says.
    pub fn latest_at(&self) -> Result<u64, StoreError> {
        let mut statement = self.connection.prepare_cached("SELECT latest_at FROM device")?;
        Ok(from_column(statement.query_row([], |row| row.get(0))?))
    }

    /// From when on an edit is dated ahead. A clock that was set back hides nothing that was there before.
    ///
    /// # Errors
    /// What the database says.
    pub fn horizon(&self, now: u64) -> Result<Horizon, StoreError> {
        Ok(Horizon::at(now.max(self.latest_at()?), self.device()?))
    }

    /// Notes that something was entered at this time.
    ///
    /// # Errors
    /// What the database says.
    pub fn entered_at(&self, now: u64) -> Result<(), StoreError> {
        let sql = "UPDATE device SET latest_at = ?1 WHERE latest_at < ?1";
        self.connection.prepare_cached(sql)?.execute([to_column(now)])?;
        Ok(())
    }
}
