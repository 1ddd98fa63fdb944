//! What was looked at of an archive is kept: all of it or nothing.

use std::collections::BTreeSet;

use wearbook_core::job::PhotoId;
use wearbook_core::under_way::UnderWay;

use super::look::{Looked, LookedJob};
use crate::{Ledger, Store, StoreError};

impl Store {
    /// Keeps what was looked at, with whatever else belongs to it.
    pub(super) fn keep<T>(
        &self,
        looked: Looked,
        (now, way): (u64, &UnderWay),
        also: impl FnOnce(&Ledger<'_>) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        let mut new = BTreeSet::new();
        let kept = self.write(|ledger| {
            way.go_on()?;
            new = new_files(ledger, &looked)?;
            looked.incoming.note_new(&new)?;
            let told = also(ledger)?;
            photos(ledger, &looked, now, way)?;
            looked.jobs.iter().try_for_each(|job| take_in(ledger, job, now, way))?;
            Ok(told)
        });
        if kept.is_err() && self.forget_files(&new).is_err() {
            // The refusal is what the person must hear. The next start takes its traces away.
            looked.incoming.leave();
        }
        kept
    }

    /// Takes away files that no row came to name after all.
    fn forget_files(&self, photos: &BTreeSet<PhotoId>) -> Result<(), StoreError> {
        if photos.is_empty() {
            return Ok(());
        }
        self.write(|ledger| {
            for photo in photos {
                if ledger.photo(photo)?.is_none() {
                    self.photos.forget_original(photo)?;
                }
            }
            Ok(())
        })
    }
}

/// The photos of which neither a row nor a file is here.
fn new_files(ledger: &Ledger<'_>, looked: &Looked) -> Result<BTreeSet<PhotoId>, StoreError> {
    let mut new = BTreeSet::new();
    for photo in &looked.photos {
        match (ledger.photo(&photo.id)?, photo.new) {
            (Some(_), _) => {}
            // It was here when it was looked at, and went with what it stood in for.
            (None, None) => return Err(StoreError::Busy),
            (None, Some(_)) if ledger.photo_folder().is_there(&photo.id) => {}
            (None, Some(_)) => drop(new.insert(photo.id.clone())),
        }
    }
    Ok(new)
}

/// The files first, and only when they are on the disk the rows.
fn photos(ledger: &Ledger<'_>, looked: &Looked, now: u64, way: &UnderWay) -> Result<(), StoreError> {
    let folder = ledger.photo_folder();
    let kept = || looked.photos.iter().filter_map(|photo| photo.new.map(|new| (&photo.id, new)));
    for (photo, _) in kept() {
        way.go_on()?;
        folder.take_over(photo, &looked.incoming.path(photo))?;
    }
    folder.settle(kept().map(|(photo, _)| photo))?;
    for (photo, (facts, bytes)) in kept() {
        ledger.record_photo(photo, facts, bytes, now)?;
    }
    Ok(())
}

fn take_in(ledger: &Ledger<'_>, looked: &LookedJob, now: u64, way: &UnderWay) -> Result<(), StoreError> {
    way.go_on()?;
    let job = looked.read.job;
    ledger.adopt_job(job, now)?;
    ledger.append_written(job, looked.edits.edits()?)?;
    for (original, stand_in) in &looked.read.stand_ins {
        ledger.stand_in_for(original, stand_in, job)?;
    }
    looked.photos.iter().try_for_each(|photo| ledger.link_photo(job, photo))
}
