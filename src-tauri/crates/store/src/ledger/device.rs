//! The device: one row.

use wearbook_core::job::DeviceId;

use super::Ledger;
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
}
