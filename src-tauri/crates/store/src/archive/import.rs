//! The archive of a job into the store: all of it or nothing.

use std::collections::BTreeMap;
use std::io::{Read, Seek};

use wearbook_core::under_way::UnderWay;

use super::job_file::ReadJob;
use super::limits::MAX_JOB_FILE_BYTES;
use super::look::Looked;
use super::read::{Archive, is_zip};
use super::source::Bare;
use crate::{JobId, PhotoFacts, Store, StoreError};

/// Decodes a picture from outside and says what it is, or why it can't be taken. Handed in, because pictures are not
/// this crate's trade.
pub type PhotoCheck<'a> = &'a dyn Fn(&[u8]) -> Result<PhotoFacts, String>;

/// What came of an archive.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Imported {
    /// The job.
    pub job: JobId,
    /// Entries that the guard refused: each reason in a sentence, and of how many.
    pub refused: BTreeMap<String, usize>,
}

impl Store {
    /// Takes in a job from a `.wearbook` archive or a bare `job.json`, as it is read. A job that is here already gets the
    /// edits that it lacks; importing twice changes nothing. Edits that this version does not know are kept. Photos that the
    /// job names but the archive lacks stay missing until another archive brings them; what stands in for a photo is shown
    /// until then.
    ///
    /// # Errors
    /// [`StoreError::Archive`] and [`StoreError::EditConflict`] with a sentence; what the disk and the database say.
    /// A refused archive leaves nothing, nor does one that was stopped.
    pub fn import(
        &self,
        reader: impl Read + Seek,
        now: u64,
        check: PhotoCheck<'_>,
        way: &UnderWay,
    ) -> Result<Imported, StoreError> {
        self.import_back(reader, now, false, check, way)
    }

    /// The same of a job that may have been put away here: it comes back only when asked to.
    ///
    /// # Errors
    /// As [`Store::import`]; [`StoreError::PutAway`] if the job was put away and is not asked back.
    pub fn import_back(
        &self,
        mut reader: impl Read + Seek,
        now: u64,
        back: bool,
        check: PhotoCheck<'_>,
        way: &UnderWay,
    ) -> Result<Imported, StoreError> {
        let _photos_stay = self.hold_photos();
        let mut looked = Looked::begin(self)?;
        let (job, refused);
        if is_zip(&mut reader)? {
            let mut archive = Archive::open(reader)?;
            let found = looked.job(|take| archive.read_job(way, take))?;
            found.photos = archive.photos().into_iter().map(|entry| entry.id).collect();
            (job, refused) = (found.read.job, found.read.refused.clone());
            self.require_not_put_away(job, back)?;
            looked.photos(self, &mut archive, check, way)?;
        } else {
            let found = looked.job(|take| ReadJob::read(&mut Bare(reader, MAX_JOB_FILE_BYTES), way, take))?;
            (job, refused) = (found.read.job, found.read.refused.clone());
        }
        self.keep(looked, (now, way), |ledger| match (ledger.is_put_away(job)?, back) {
            (true, false) => Err(StoreError::PutAway),
            (true, true) => ledger.forget_put_away(job),
            (false, _) => Ok(()),
        })?;
        Ok(Imported { job, refused })
    }

    /// Asked before the photos are looked at, which takes a while.
    fn require_not_put_away(&self, job: JobId, back: bool) -> Result<(), StoreError> {
        if !back && self.read(|ledger| ledger.is_put_away(job))? { Err(StoreError::PutAway) } else { Ok(()) }
    }
}
