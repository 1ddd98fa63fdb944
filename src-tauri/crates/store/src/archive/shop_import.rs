//! The archive of a shop into the store, empty or full: all of it or nothing.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{Read, Seek};

use wearbook_core::job::{DeviceId, PhotoId};
use wearbook_core::under_way::UnderWay;

use super::PhotoCheck;
use super::import::Imported;
use super::look::Looked;
use super::read::Archive;
use super::shelf_union::{ShelfDiffers, unite};
use super::shop_file::ShopFile;
use crate::{JobId, Ledger, PutAway, Store, StoreError};

/// How the archive of a shop is taken in.
#[derive(Debug, Clone, Copy)]
pub struct ShopTaking<'a> {
    /// The time.
    pub now: u64,
    /// Whether jobs that were put away here are to come back.
    pub back: bool,
    /// The settings that are the shop's: taken into an empty shop.
    pub settings: &'a [&'a str],
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ShopTaken {
    /// The jobs that it held.
    pub jobs: Vec<Imported>,
    /// Jobs that it held and that are put away here: they were passed over.
    pub put_away: Vec<JobId>,
    /// Jobs that it names, whose entries stand in an earlier archive, and that are not here.
    pub elsewhere: Vec<JobId>,
    /// What stands otherwise on its shelf than on the one here.
    pub differs: Vec<ShelfDiffers>,
    /// Whether what the shop has set was taken over.
    pub settings: bool,
}

impl Store {
    /// Takes in the archive of a shop: every job with its photos, what stands on the shelf, what is left of jobs that were put
    /// away, and, into an empty shop, what it has set. What is here stays; what is here already changes nothing. Of several
    /// archives the latest is best taken in first: it knows what was put away.
    ///
    /// # Errors
    /// As [`Store::import`]. A refused archive leaves nothing, nor does one that was stopped.
    pub fn import_shop(
        &self,
        reader: impl Read + Seek,
        taking: ShopTaking<'_>,
        check: PhotoCheck<'_>,
        way: &UnderWay,
    ) -> Result<ShopTaken, StoreError> {
        let _photos_stay = self.hold_photos();
        let mut archive = Archive::open(reader)?;
        let mut looked = Looked::begin(self)?;
        let mut shelf = looked.incoming.shelf()?;
        let file = match archive.shop()? {
            Some(mut source) => ShopFile::read(&mut source, &mut |line| shelf.put(&line))?,
            None => return Err(StoreError::archive("This file holds one job, not a shop: take it in as a job.")),
        };
        let shelf = shelf.close()?;
        let mut told = ShopTaken::default();
        self.look_at_jobs(&mut archive, &file, taking, &mut looked, &mut told, way)?;
        looked.photos(self, &mut archive, check, way)?;
        let (settings, differs) = self.keep(looked, (taking.now, way), |ledger| {
            let settings = take_settings(ledger, &file, taking)?;
            for job in &told.jobs {
                ledger.forget_put_away(job.job)?;
            }
            let comes = |job| told.jobs.iter().any(|come| come.job == job);
            for stub in file.put_away.iter().filter(|stub| !comes(stub.job)) {
                let device = DeviceId(stub.device.0);
                ledger.note_gone(PutAway { job: stub.job, at: stub.at, device, gone: true })?;
            }
            let mut differs = Vec::new();
            for line in shelf.lines()? {
                differs.extend(unite(ledger, &line?)?);
            }
            Ok((settings, differs))
        })?;
        (told.settings, told.differs) = (settings, differs);
        Ok(told)
    }

    /// Reads every job of it that is to be taken in.
    fn look_at_jobs<R: Read + Seek>(
        &self,
        archive: &mut Archive<R>,
        file: &ShopFile,
        taking: ShopTaking<'_>,
        looked: &mut Looked,
        told: &mut ShopTaken,
        way: &UnderWay,
    ) -> Result<(), StoreError> {
        let mut photos: BTreeMap<JobId, &BTreeSet<PhotoId>> =
            file.jobs.iter().map(|job| (job.job, &job.photos)).collect();
        let mut passed_over: BTreeSet<&PhotoId> = BTreeSet::new();
        let jobs = archive.jobs();
        way.expect(jobs.len());
        for (job, index) in jobs {
            way.step()?;
            let own = photos.remove(&job);
            if !taking.back && self.read(|ledger| ledger.is_put_away(job))? {
                told.put_away.push(job);
                passed_over.extend(own.into_iter().flatten());
                continue;
            }
            let found = looked.job(|take| archive.read_job_at(index, way, take))?;
            if found.read.job != job {
                return Err(StoreError::archive(format!(
                    "The job {job} in this file says of itself that it is {}: the file was altered.",
                    found.read.job
                )));
            }
            found.photos = own.into_iter().flatten().cloned().collect();
            told.jobs.push(Imported { job, refused: found.read.refused.clone() });
        }
        // What is left stands in an earlier archive.
        for (job, own) in photos {
            passed_over.extend(own);
            if !self.read(|ledger| ledger.has_job(job))? && !self.read(|ledger| ledger.is_put_away(job))? {
                told.elsewhere.push(job);
            }
        }
        if !passed_over.is_empty() {
            let wanted: BTreeSet<&PhotoId> = looked.jobs.iter().flat_map(|job| &job.photos).collect();
            looked.passed_over = passed_over.difference(&wanted).map(|photo| (*photo).clone()).collect();
        }
        Ok(())
    }
}

/// A shop is empty as long as nothing was begun in it and nothing stands on its shelf.
fn take_settings(ledger: &Ledger<'_>, file: &ShopFile, taking: ShopTaking<'_>) -> Result<bool, StoreError> {
    if !ledger.is_empty_shop()? {
        return Ok(false);
    }
    let taken = file.settings.iter().filter(|(key, _)| taking.settings.contains(&key.as_str()));
    let mut any = false;
    for (key, value) in taken {
        ledger.set_setting(key, value)?;
        any = true;
    }
    Ok(any)
}
