//! Pictures that stand in for photos that are not here.

use rusqlite::OptionalExtension;
use wearbook_core::job::PhotoId;

use super::Ledger;
use crate::{JobId, PhotoRow, StandIns, StoreError};

impl Ledger<'_> {
    /// The picture that stands in for a photo whose original is not here.
    ///
    /// # Errors
    /// What the database says.
    pub fn stand_in(&self, original: &PhotoId) -> Result<Option<PhotoId>, StoreError> {
        let mut statement = self.connection.prepare_cached("SELECT photo FROM stand_in WHERE original = ?1")?;
        let found: Option<String> = statement.query_row([original.as_str()], |row| row.get(0)).optional()?;
        found.map(|photo| PhotoId::try_from(photo).map_err(|_| StoreError::Damaged)).transpose()
    }

    /// What is known of a photo, or else of the picture that stands in for it.
    ///
    /// # Errors
    /// What the database says.
    pub fn picture(&self, photo: &PhotoId) -> Result<Option<PhotoRow>, StoreError> {
        match self.photo(photo)? {
            Some(row) => Ok(Some(row)),
            None => self.stand_in(photo)?.map_or(Ok(None), |stand_in| self.photo(&stand_in)),
        }
    }

    /// What stands in for photos among those of a job.
    pub(crate) fn stand_ins_of(&self, job: JobId) -> Result<StandIns, StoreError> {
        let sql = "SELECT original, stand_in.photo AS photo FROM stand_in
            JOIN job_photo ON job_photo.photo = stand_in.photo WHERE job_photo.job = ?1";
        let mut statement = self.connection.prepare_cached(sql)?;
        let rows = statement.query_map([job.to_string()], |row| Ok((row.get(0)?, row.get(1)?)))?;
        let id = |name: String| PhotoId::try_from(name).map_err(|_| StoreError::Damaged);
        rows.map(|row| row.map_err(StoreError::from).and_then(|(original, photo)| Ok((id(original)?, id(photo)?))))
            .collect()
    }

    /// For which photos a picture stands in: small pictures of it are kept under their names.
    pub(super) fn stood_in_for(&self, photo: &str) -> Result<Vec<PhotoId>, StoreError> {
        let mut statement = self.connection.prepare_cached("SELECT original FROM stand_in WHERE photo = ?1")?;
        let rows = statement.query_map([photo], |row| row.get::<_, String>(0))?;
        rows.map(|row| PhotoId::try_from(row?).map_err(|_| StoreError::Damaged)).collect()
    }

    /// Notes that a picture of a job stands in for a photo. Who has the photo keeps it; what stands in for it already, stays.
    pub(crate) fn stand_in_for(&self, original: &PhotoId, stand_in: &PhotoId, job: JobId) -> Result<(), StoreError> {
        let sql = "INSERT INTO stand_in (original, photo) SELECT ?1, id FROM photo WHERE id = ?2
            AND NOT EXISTS (SELECT 1 FROM photo WHERE id = ?1) ON CONFLICT DO NOTHING";
        self.connection.prepare_cached(sql)?.execute((original.as_str(), stand_in.as_str()))?;
        self.link_photo(job, stand_in)
    }

    /// The original has come: what stood in for it does so no longer. The picture goes, and is named, unless it is a photo of
    /// its own.
    pub(super) fn original_came(&self, original: &PhotoId) -> Result<Option<PhotoId>, StoreError> {
        let Some(stand_in) = self.stand_in(original)? else { return Ok(None) };
        self.connection.execute("DELETE FROM stand_in WHERE original = ?1", [original.as_str()])?;
        self.photos.forget_shown(original)?;
        let sql = "SELECT EXISTS (SELECT 1 FROM stand_in WHERE photo = ?1) OR EXISTS (
            SELECT 1 FROM job_photo JOIN edit ON edit.job = job_photo.job
            WHERE job_photo.photo = ?1 AND instr(edit.change, ?1) > 0)";
        let is_needed: bool = self.connection.query_row(sql, [stand_in.as_str()], |row| row.get(0))?;
        if is_needed {
            return Ok(None);
        }
        self.connection.execute("DELETE FROM job_photo WHERE photo = ?1", [stand_in.as_str()])?;
        self.connection.execute("DELETE FROM photo WHERE id = ?1", [stand_in.as_str()])?;
        Ok(Some(stand_in))
    }
}
