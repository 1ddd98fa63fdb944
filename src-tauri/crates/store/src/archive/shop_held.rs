//! What archives hold, known from their lists alone: what a folder of backups has need not be written again.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{Read, Seek};

use wearbook_core::job::{EditId, PhotoId};

use super::read::{Archive, is_zip};
use super::shop_file::{Device, ShopFile};
use super::shop_write::ShopWritten;
use crate::{JobId, Store, StoreError};

/// How far a job was. On one device a job of as many edits and the same latest one is the same.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct JobAsOf {
    /// How many edits it had.
    pub edits: usize,
    /// The latest of them.
    pub latest: Option<EditId>,
}

/// What archives hold.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Held {
    /// Photos, by whatever archive.
    pub photos: BTreeSet<PhotoId>,
    /// Jobs as they were, by archives of this device.
    pub jobs: BTreeMap<JobId, JobAsOf>,
    /// When the latest of them was written, of those that hold a shop.
    pub latest: Option<u64>,
    /// How many could not be read.
    pub unreadable: usize,
}

impl Held {
    /// What was written since is held too.
    pub fn and(mut self, written: &ShopWritten) -> Self {
        self.photos.extend(written.photos.iter().cloned());
        self.jobs.extend(&written.jobs);
        self
    }
}

/// What an archive is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ArchiveOf {
    /// One job.
    Job,
    /// A shop, and when it was written.
    Shop {
        /// The time on the device that wrote it.
        written_at: u64,
    },
}

/// Says what a file is of, without looking at all of it.
///
/// # Errors
/// [`StoreError::Archive`] if it is no archive of ours.
pub fn archive_of(mut reader: impl Read + Seek) -> Result<ArchiveOf, StoreError> {
    if !is_zip(&mut reader)? {
        return Ok(ArchiveOf::Job);
    }
    match Archive::open(reader)?.shop()? {
        None => Ok(ArchiveOf::Job),
        Some(mut source) => {
            let written_at = ShopFile::read(&mut source, &mut |_| Ok(()))?.written_at;
            Ok(ArchiveOf::Shop { written_at })
        }
    }
}

impl Store {
    /// What these archives hold, by their lists: their photos are not read. One that can't be read holds nothing.
    ///
    /// # Errors
    /// What the database says.
    pub fn held_by<R: Read + Seek>(&self, archives: impl IntoIterator<Item = R>) -> Result<Held, StoreError> {
        let device = self.read::<_, StoreError>(|ledger| ledger.device())?.into();
        let mut held = Held::default();
        for archive in archives {
            if add(&mut held, archive, device).is_err() {
                held.unreadable += 1;
            }
        }
        Ok(held)
    }
}

fn add(held: &mut Held, archive: impl Read + Seek, device: Device) -> Result<(), StoreError> {
    let mut archive = Archive::open(archive)?;
    let shop = archive.shop()?.map(|mut source| ShopFile::read(&mut source, &mut |_| Ok(()))).transpose()?;
    held.photos.extend(archive.photos().into_iter().map(|entry| entry.id));
    let Some(shop) = shop else { return Ok(()) };
    held.latest = held.latest.max(Some(shop.written_at));
    let here: BTreeSet<JobId> = archive.jobs().into_iter().map(|(job, _)| job).collect();
    for job in shop.jobs.iter().filter(|job| shop.device == device && job.is_here && here.contains(&job.job)) {
        let as_of = job.as_of();
        held.jobs.entry(job.job).and_modify(|held| *held = as_of.max(*held)).or_insert(as_of);
    }
    Ok(())
}
