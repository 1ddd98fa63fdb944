//! An archive is looked at, all of it, before the first of it is kept. What it holds is laid into a folder of its own as it
//! comes by; the store's lock is not held meanwhile.

use std::collections::BTreeSet;
use std::io::{Read, Seek};

use wearbook_core::job::PhotoId;
use wearbook_core::under_way::UnderWay;

use super::PhotoCheck;
use super::job_file::ReadJob;
use super::read::{Archive, PhotoEntry};
use crate::incoming::{Incoming, SpoolFile};
use crate::ledger::Written;
use crate::{PhotoFacts, Store, StoreError};

/// What was found.
#[derive(Debug)]
pub(super) struct Looked {
    pub(super) incoming: Incoming,
    pub(super) jobs: Vec<LookedJob>,
    pub(super) photos: Vec<LookedPhoto>,
    /// Photos of jobs that are not taken in.
    pub(super) passed_over: BTreeSet<PhotoId>,
}

/// A job that was found.
#[derive(Debug)]
pub(super) struct LookedJob {
    pub(super) read: ReadJob,
    pub(super) edits: SpoolFile,
    /// Photos that belong to it, beside those that its edits name.
    pub(super) photos: Vec<PhotoId>,
}

/// A photo that was found, and is no worse than what is here.
#[derive(Debug)]
pub(super) struct LookedPhoto {
    pub(super) id: PhotoId,
    /// What is known of it, where it is to be kept; none if it is here already, whole.
    pub(super) new: Option<(PhotoFacts, u64)>,
}

impl Looked {
    pub(super) fn begin(store: &Store) -> Result<Self, StoreError> {
        Ok(Self { incoming: store.photos.incoming()?, jobs: vec![], photos: vec![], passed_over: BTreeSet::new() })
    }

    /// Reads a job into the folder.
    pub(super) fn job(
        &mut self,
        read: impl FnOnce(&mut dyn FnMut(Written) -> Result<(), StoreError>) -> Result<ReadJob, StoreError>,
    ) -> Result<&mut LookedJob, StoreError> {
        let mut spool = self.incoming.spool()?;
        let read = read(&mut |edit| spool.put(&edit))?;
        self.jobs.push(LookedJob { read, edits: spool.close()?, photos: vec![] });
        self.jobs.last_mut().ok_or(StoreError::Damaged)
    }

    /// Looks at every photo of an archive, one at a time, and lays those into the folder that are not here.
    pub(super) fn photos<R: Read + Seek>(
        &mut self,
        store: &Store,
        archive: &mut Archive<R>,
        check: PhotoCheck<'_>,
        way: &UnderWay,
    ) -> Result<(), StoreError> {
        let entries = archive.photos();
        way.expect(entries.len());
        let needless = self.needless(store, &entries)?;
        for entry in entries {
            way.step()?;
            if needless.contains(&entry.id) || self.passed_over.contains(&entry.id) {
                continue;
            }
            let bytes = archive.photo(&entry)?;
            let is_here =
                store.read(|ledger| ledger.photo(&entry.id))?.is_some() && store.photos.is_whole(&entry.id)?;
            let new = if is_here {
                None
            } else {
                let facts = check_photo(&bytes, &entry, check)?;
                self.incoming.put(&entry.id, &bytes)?;
                Some((facts, bytes.len() as u64))
            };
            self.photos.push(LookedPhoto { id: entry.id, new });
        }
        Ok(())
    }

    /// Who has an original, or gets it now, keeps it: what stands in for it is not taken in. Nor is a second picture that
    /// stands in for the same.
    fn needless(&mut self, store: &Store, entries: &[PhotoEntry]) -> Result<BTreeSet<PhotoId>, StoreError> {
        let come: BTreeSet<&PhotoId> = entries.iter().map(|entry| &entry.id).collect();
        let (mut needless, mut needed) = (BTreeSet::new(), BTreeSet::new());
        for job in &mut self.jobs {
            job.read.stand_ins.retain(|original, stand_in| original != stand_in);
            let mut lacking = job.read.stand_ins.clone();
            for (original, stand_in) in &job.read.stand_ins {
                let (is_here, stands_in) = store.read::<_, StoreError>(|ledger| {
                    Ok((ledger.photo(original)?.is_some(), ledger.stand_in(original)?))
                })?;
                let has_other = stands_in.is_some_and(|there| there != *stand_in);
                if is_here || has_other || come.contains(original) {
                    needless.insert(stand_in.clone());
                    lacking.remove(original);
                } else {
                    needed.insert(stand_in.clone());
                }
            }
            job.read.stand_ins = lacking;
        }
        if needless.is_empty() {
            return Ok(needless);
        }
        for job in &self.jobs {
            for edit in job.edits.edits()? {
                needed.extend(edit?.photo);
            }
        }
        needless.retain(|photo| !needed.contains(photo));
        Ok(needless)
    }
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
