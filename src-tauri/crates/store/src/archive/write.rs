//! A job and its photos into an archive.

use std::io::{Seek, Write};

use wearbook_core::under_way::UnderWay;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, System, ZipWriter};

use super::limits::{MAX_ARCHIVE_BYTES, MAX_PHOTOS};
use super::{JOB_ENTRY, JobFile, PHOTO_FOLDER};
use crate::{JobId, PhotoRow, Store, StoreError};

impl Store {
    /// Writes a job with its photos as a `.wearbook` archive. A photo whose file is missing or damaged is left out: the
    /// rest must be able to leave.
    ///
    /// # Errors
    /// [`StoreError::NoSuchJob`]; [`StoreError::Stopped`]; [`StoreError::Archive`] if the job is larger than an archive can be; what the disk,
    /// the database and the writer say.
    pub fn export<W: Write + Seek>(&self, job: JobId, writer: W, way: &UnderWay) -> Result<W, StoreError> {
        let (edits, photos) = self.read::<_, StoreError>(|ledger| Ok((ledger.edits(job)?, ledger.photos_of(job)?)))?;
        refuse_too_large(&photos)?;
        way.expect(photos.len());
        let mut zip = ZipWriter::new(writer);
        zip.start_file(JOB_ENTRY, plain()).map_err(written)?;
        zip.write_all(&JobFile::new(job, edits).to_json()?)?;
        for photo in photos {
            way.step()?;
            let bytes = match self.original(&photo.id) {
                Err(StoreError::NoSuchPhoto | StoreError::PhotoDamaged) => continue,
                bytes => bytes?,
            };
            let name = format!("{PHOTO_FOLDER}{}.{}", photo.id.as_str(), photo.facts.format.extension());
            zip.start_file(name, plain()).map_err(written)?;
            zip.write_all(&bytes)?;
        }
        zip.finish().map_err(written)
    }
}

/// Everything that could differ between two machines or two days is fixed. Nothing is compressed: photos can't be, and
/// two versions of a compressor need not agree.
fn plain() -> SimpleFileOptions {
    SimpleFileOptions::default()
        .compression_method(CompressionMethod::Stored)
        .last_modified_time(DateTime::default())
        .system(System::Unix)
        .unix_permissions(0o644)
}

fn refuse_too_large(photos: &[PhotoRow]) -> Result<(), StoreError> {
    let bytes: u64 = photos.iter().map(|photo| photo.bytes).sum();
    // The job itself and the archive's own lists take what is kept back here.
    if bytes > MAX_ARCHIVE_BYTES - super::MAX_JOB_BYTES || photos.len() > MAX_PHOTOS {
        return Err(StoreError::archive(format!(
            "This job has {} photos of {} MB together: an archive holds at most {MAX_PHOTOS} photos of {} MB.",
            photos.len(),
            bytes / (1024 * 1024),
            (MAX_ARCHIVE_BYTES - super::MAX_JOB_BYTES) / (1024 * 1024)
        )));
    }
    Ok(())
}

fn written(error: zip::result::ZipError) -> StoreError {
    match error {
        zip::result::ZipError::Io(error) => error.into(),
        other => StoreError::archive(format!("The archive could not be written: {other}.")),
    }
}
