//! An archive is read back, all of it, without taking anything in: whether what was saved is really there.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{Read, Seek};

use wearbook_core::job::PhotoId;
use wearbook_core::under_way::UnderWay;

use super::job_file::ReadJob;
use super::read::Archive;
use super::shop_file::ShopFile;
use crate::ledger::Written;
use crate::{JobId, StoreError};

/// What was found whole in an archive.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Verified {
    /// Its jobs, each with how many edits of it were read.
    pub jobs: BTreeMap<JobId, usize>,
    /// How many photos were read, each with the content that its name says.
    pub photos: usize,
    /// Entries that a device would refuse to take in.
    pub refused: usize,
    /// Jobs of the shop that stand in earlier archives.
    pub jobs_elsewhere: BTreeSet<JobId>,
    /// Photos that its jobs name and that it does not hold: they stand in earlier archives, or were missing already.
    pub photos_elsewhere: BTreeSet<PhotoId>,
}

/// The most photos that are told of: more, and the archive is none of ours.
const MOST_ELSEWHERE: usize = 1_000_000;

/// Reads an archive back, of a job or of a shop: every edit and every photo.
///
/// # Errors
/// [`StoreError::Archive`] with a sentence if anything in it is not whole; [`StoreError::Stopped`]; what the disk says.
pub fn verify(reader: impl Read + Seek, way: &UnderWay) -> Result<Verified, StoreError> {
    let mut archive = Archive::open(reader)?;
    let mut verified = Verified::default();
    let photos = archive.photos();
    let held: BTreeSet<&PhotoId> = photos.iter().map(|entry| &entry.id).collect();
    way.expect(photos.len());
    let shop = archive.shop()?.map(|mut source| ShopFile::read(&mut source, &mut |_| Ok(()))).transpose()?;
    match &shop {
        None => drop(verified.job(&held, |take| archive.read_job(way, take))?),
        Some(_) => {
            for (job, index) in archive.jobs() {
                if verified.job(&held, |take| archive.read_job_at(index, way, take))? != job {
                    return Err(StoreError::archive(format!("The job {job} in this file is another: it was altered.")));
                }
            }
        }
    }
    for job in shop.iter().flat_map(|shop| &shop.jobs) {
        let read = verified.jobs.get(&job.job);
        if job.is_here && read != Some(&job.edits) {
            return Err(StoreError::archive(format!(
                "Of the job {} this file should hold {} entries and holds {}: save it again.",
                job.job,
                job.edits,
                read.copied().unwrap_or_default()
            )));
        }
        if read.is_none() {
            verified.jobs_elsewhere.insert(job.job);
        }
        if let Some(photo) = job.photos.iter().find(|photo| !held.contains(photo)) {
            return Err(StoreError::archive(format!(
                "The photo {} should be in this file and is not: save it again.",
                photo.as_str()
            )));
        }
    }
    for entry in &photos {
        way.step()?;
        archive.photo(entry)?;
        verified.photos += 1;
    }
    Ok(verified)
}

impl Verified {
    fn job(
        &mut self,
        held: &BTreeSet<&PhotoId>,
        read: impl FnOnce(&mut dyn FnMut(Written) -> Result<(), StoreError>) -> Result<ReadJob, StoreError>,
    ) -> Result<JobId, StoreError> {
        let (mut count, mut elsewhere) = (0, BTreeSet::new());
        let read = read(&mut |edit| {
            count += 1;
            if let Some(photo) = edit.photo.filter(|photo| !held.contains(photo)) {
                elsewhere.insert(photo);
            }
            Ok(())
        })?;
        // What stands in for a photo is held in its place.
        elsewhere.retain(|photo| !read.stand_ins.get(photo).is_some_and(|stand_in| held.contains(stand_in)));
        if self.photos_elsewhere.len() + elsewhere.len() > MOST_ELSEWHERE {
            return Err(StoreError::archive("This file names more photos than any shop has: it was altered."));
        }
        self.photos_elsewhere.append(&mut elsewhere);
        let refused: usize = read.refused.values().sum();
        self.refused += refused;
        self.jobs.insert(read.job, count + refused);
        Ok(read.job)
    }
}
