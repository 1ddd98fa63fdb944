//! Since when there is something here, and until when something came: what a backup goes by.

use super::{Ledger, from_column};
use crate::StoreError;

impl Ledger<'_> {
    /// When the first of the jobs that are here was begun or taken in: milliseconds since 1970-01-01 UTC.
    ///
    /// # Errors
    /// What the database says.
    pub fn first_added_at(&self) -> Result<Option<u64>, StoreError> {
        let sql = "SELECT min(added_at) FROM job WHERE id NOT IN (SELECT job FROM put_away)";
        let at: Option<i64> = self.connection.query_row(sql, [], |row| row.get(0))?;
        Ok(at.map(from_column))
    }

    /// When something was last entered, a job taken in, or a thing put on the shelf. What another device has entered into
    /// a job that was here is not told.
    ///
    /// # Errors
    /// What the database says.
    pub fn last_came_at(&self) -> Result<u64, StoreError> {
        let sql = "SELECT max((SELECT latest_at FROM device), (SELECT coalesce(max(added_at), 0) FROM job),
            (SELECT coalesce(max(changed_at), 0) FROM shelf))";
        Ok(from_column(self.connection.query_row(sql, [], |row| row.get(0))?))
    }
}
