//! A job and its photos into an archive.

use std::io::{BufWriter, Seek, Write};

use wearbook_core::job::{Edit, PhotoId};
use wearbook_core::under_way::UnderWay;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, System, ZipWriter};

use super::job_file::{StandIns, write_job};
use super::limits::{MAX_ARCHIVE_BYTES, MAX_PHOTOS};
use super::{JOB_ENTRY, MAX_JOB_BYTES, PHOTO_FOLDER};
use crate::ledger::AT_ONCE;
use crate::{JobAsOf, JobId, PhotoFormat, PhotoRow, Store, StoreError};

/// How often a job is written anew that others add to meanwhile. What the last writing holds is whole as it is.
const TRIES: usize = 3;

impl Store {
    /// Writes a job with its photos, bit for bit, as a `.wearbook` archive: for the shop's own devices. A photo whose file is
    /// missing or damaged is left out: the rest must be able to leave.
    ///
    /// # Errors
    /// [`StoreError::NoSuchJob`]; [`StoreError::Stopped`]; [`StoreError::Archive`] if the job is larger than an archive can be; what the disk,
    /// the database and the writer say.
    pub fn export<W: Write + Seek>(&self, job: JobId, writer: W, way: &UnderWay) -> Result<W, StoreError> {
        let (photos, stand_ins) = self.read::<_, StoreError>(|ledger| {
            ledger.require_job(job)?;
            // What earlier versions let in may be more than an archive can hold.
            ledger.require_room(job)?;
            Ok((ledger.photos_of(job)?, ledger.stand_ins_of(job)?))
        })?;
        refuse_too_large(&photos)?;
        let mut zip = ZipWriter::new(writer);
        self.write_job(&mut zip, JOB_ENTRY, job, &stand_ins)?;
        // An edit that came meanwhile may have brought its photo.
        let photos = self.read(|ledger| ledger.photos_of(job))?;
        way.expect(photos.len());
        for photo in photos {
            way.step()?;
            match self.original(&photo.id) {
                Err(StoreError::NoSuchPhoto | StoreError::PhotoDamaged) => {}
                bytes => write_photo(&mut zip, &photo.id, photo.facts.format, &bytes?)?,
            }
        }
        zip.finish().map_err(written)
    }

    /// Writes a job’s own file, an edit at a time. Says how far the job was. A long one is read in parts: where an import has
    /// added to those that were read already, it is written anew.
    pub(super) fn write_job<W: Write + Seek>(
        &self,
        zip: &mut ZipWriter<W>,
        name: &str,
        job: JobId,
        stand_ins: &StandIns,
    ) -> Result<JobAsOf, StoreError> {
        let mut as_of = self.write_job_once(zip, name, job, stand_ins)?;
        for _ in 0..TRIES {
            if self.read(|ledger| ledger.as_of(job))? == as_of {
                break;
            }
            zip.abort_file().map_err(written)?;
            as_of = self.write_job_once(zip, name, job, stand_ins)?;
        }
        Ok(as_of)
    }

    fn write_job_once<W: Write + Seek>(
        &self,
        zip: &mut ZipWriter<W>,
        name: &str,
        job: JobId,
        stand_ins: &StandIns,
    ) -> Result<JobAsOf, StoreError> {
        zip.start_file(name, plain()).map_err(written)?;
        let mut to = BufWriter::with_capacity(64 * 1024, zip);
        let mut as_of = JobAsOf { edits: 0, latest: None };
        write_job(&mut to, job, stand_ins, &mut |take| {
            self.each_edit(job, &mut |edit| {
                as_of = JobAsOf { edits: as_of.edits + 1, latest: Some(edit.id) };
                take(edit)
            })
        })?;
        to.flush()?;
        Ok(as_of)
    }

    /// Gives each edit of a job in the order of ids. The lock is not held while one is used.
    pub(super) fn each_edit(
        &self,
        job: JobId,
        take: &mut dyn FnMut(Edit) -> Result<(), StoreError>,
    ) -> Result<(), StoreError> {
        let mut after = None;
        loop {
            let kept = self.read(|ledger| ledger.edits_as_kept(job, after, AT_ONCE))?;
            let Some((last, _)) = kept.last() else { return Ok(()) };
            after = Some(*last);
            for (id, change) in kept {
                take(Edit { id, change: serde_json::from_str(&change).map_err(|_| StoreError::Damaged)? })?;
            }
        }
    }
}

/// Writes a photo under its name.
pub(super) fn write_photo<W: Write + Seek>(
    zip: &mut ZipWriter<W>,
    photo: &PhotoId,
    format: PhotoFormat,
    bytes: &[u8],
) -> Result<(), StoreError> {
    let name = format!("{PHOTO_FOLDER}{}.{}", photo.as_str(), format.extension());
    zip.start_file(name, plain()).map_err(written)?;
    Ok(zip.write_all(bytes)?)
}

/// Everything that could differ between two machines or two days is fixed. Nothing is compressed: photos can't be, and
/// two versions of a compressor need not agree.
pub(super) fn plain() -> SimpleFileOptions {
    SimpleFileOptions::default()
        .compression_method(CompressionMethod::Stored)
        .last_modified_time(DateTime::default())
        .system(System::Unix)
        .unix_permissions(0o644)
}

pub(super) fn refuse_too_large(photos: &[PhotoRow]) -> Result<(), StoreError> {
    let bytes: u64 = photos.iter().map(|photo| photo.bytes).sum();
    // The job itself and the archive's own lists take what is kept back here.
    if bytes > MAX_ARCHIVE_BYTES - 2 * MAX_JOB_BYTES || photos.len() > MAX_PHOTOS {
        return Err(StoreError::archive(format!(
            "This job has {} photos of {} MB together: an archive holds at most {MAX_PHOTOS} photos of {} MB. Save the shop’s archive, which is cut into several files.",
            photos.len(),
            bytes / (1024 * 1024),
            (MAX_ARCHIVE_BYTES - 2 * MAX_JOB_BYTES) / (1024 * 1024)
        )));
    }
    Ok(())
}

pub(super) fn written(error: zip::result::ZipError) -> StoreError {
    match error {
        zip::result::ZipError::Io(error) => error.into(),
        other => StoreError::archive(format!("The archive could not be written: {other}.")),
    }
}
