//! An archive into the store: all of it or nothing.

use std::collections::BTreeMap;
use std::io::{Cursor, Read, Seek};

use wearbook_core::job::PhotoId;
use wearbook_core::under_way::UnderWay;

use super::job_file::{ReadJob, is_zip};
use super::read::{Archive, PhotoEntry};
use crate::{JobId, Ledger, PhotoFacts, Store, StoreError};

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
    /// Takes in a job from a `.wearbook` archive or a bare `job.json`. A job that is here already gets the edits that it
    /// lacks; importing twice changes nothing. Edits that this version does not know are kept. Photos that the job
    /// names but the archive lacks stay missing until another archive brings them.
    ///
    /// # Errors
    /// [`StoreError::Archive`] and [`StoreError::EditConflict`] with a sentence; what the disk and the database say.
    /// A refused archive leaves nothing, nor does one that was stopped.
    pub fn import(
        &self,
        bytes: &[u8],
        now: u64,
        check: PhotoCheck<'_>,
        way: &UnderWay,
    ) -> Result<Imported, StoreError> {
        self.import_back(bytes, now, false, check, way)
    }

    /// The same of a job that may have been put away here: it comes back only when asked to.
    ///
    /// # Errors
    /// As [`Store::import`]; [`StoreError::PutAway`] if the job was put away and is not asked back.
    pub fn import_back(
        &self,
        bytes: &[u8],
        now: u64,
        back: bool,
        check: PhotoCheck<'_>,
        way: &UnderWay,
    ) -> Result<Imported, StoreError> {
        if !is_zip(bytes) {
            let read = ReadJob::from_json(bytes)?;
            return self.write(|ledger| adopt(ledger, &read, now, back));
        }
        let mut archive = Archive::open(Cursor::new(bytes))?;
        if !back && self.read(|ledger| ledger.is_put_away(archive.job().file.job))? {
            return Err(StoreError::PutAway);
        }
        // Every picture is looked at before the first is kept.
        let mut checked = Vec::new();
        let photos = archive.photos();
        way.expect(2 * photos.len());
        for entry in photos {
            way.step()?;
            let facts = check_photo(&archive.photo(&entry)?, &entry, check)?;
            checked.push((entry, facts));
        }
        let mut new = Vec::new();
        let done = self.write(|ledger| take_in(ledger, &mut archive, &checked, (now, back), &mut new, way));
        if done.is_err() {
            for photo in &new {
                // The refusal is what the person must hear, not that its traces could not be removed.
                let _ = self.photos.forget_original(photo);
            }
        }
        done
    }
}

fn take_in<R: Read + Seek>(
    ledger: &Ledger<'_>,
    archive: &mut Archive<R>,
    photos: &[(PhotoEntry, PhotoFacts)],
    (now, back): (u64, bool),
    new: &mut Vec<PhotoId>,
    way: &UnderWay,
) -> Result<Imported, StoreError> {
    let imported = adopt(ledger, archive.job(), now, back)?;
    for (entry, facts) in photos {
        way.step()?;
        let bytes = archive.photo(entry)?;
        if ledger.keep_original(&entry.id, &bytes)? {
            new.push(entry.id.clone());
        }
        ledger.record_photo(&entry.id, *facts, bytes.len(), now)?;
        ledger.link_photo(imported.job, &entry.id)?;
    }
    Ok(imported)
}

fn adopt(ledger: &Ledger<'_>, read: &ReadJob, now: u64, back: bool) -> Result<Imported, StoreError> {
    let ReadJob { file, refused } = read;
    match (ledger.is_put_away(file.job)?, back) {
        (true, false) => return Err(StoreError::PutAway),
        (true, true) => ledger.forget_put_away(file.job)?,
        (false, _) => {}
    }
    ledger.adopt_job(file.job, now)?;
    ledger.append(file.job, &file.edits)?;
    Ok(Imported { job: file.job, refused: refused.clone() })
}

fn check_photo(bytes: &[u8], entry: &PhotoEntry, check: PhotoCheck<'_>) -> Result<PhotoFacts, StoreError> {
    let named = entry.id.as_str();
    let facts = check(bytes).map_err(|why| StoreError::archive(format!("The photo {named} in this file: {why}")))?;
    if facts.format != entry.format {
        return Err(StoreError::archive(format!(
            "The photo {named} in this file is named “.{}” but is {}: the file was altered.",
            entry.format.extension(),
            facts.format.name()
        )));
    }
    Ok(facts)
}
