//! A job to be given away: its pictures cleaned, so that none tells where it was taken, or with what.

use std::collections::BTreeSet;
use std::io::{Seek, Write};

use wearbook_core::job::PhotoId;
use wearbook_core::under_way::UnderWay;
use zip::ZipWriter;

use super::job_file::StandIns;
use super::write::{refuse_too_large, write_photo, written};
use super::{JOB_ENTRY, MAX_PHOTO_BYTES};
use crate::photo_folder::photo_id;
use crate::{JobId, PhotoFacts, PhotoFormat, Store, StoreError};

/// Makes of a picture one that holds the picture and nothing else, and says what that is; or why it can't. Handed in, because
/// pictures are not this crate's trade. The same picture gives the same bytes.
pub type PhotoCleaning<'a> = &'a dyn Fn(&[u8]) -> Result<(Vec<u8>, PhotoFacts), String>;

/// What was given away.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct GivenAway {
    /// How many pictures stand in for photos.
    pub stand_ins: usize,
    /// Photos that are missing or damaged here, or can't be cleaned: the rest leaves without them.
    pub left_out: BTreeSet<PhotoId>,
}

impl Store {
    /// Writes a job as [`Store::export`] does, with a cleaned picture in place of every photo. Whoever has the photo keeps it;
    /// who lacks it is shown the picture until the photo comes.
    ///
    /// # Errors
    /// As [`Store::export`].
    pub fn export_to_give_away<W: Write + Seek>(
        &self,
        job: JobId,
        writer: W,
        clean: PhotoCleaning<'_>,
        way: &UnderWay,
    ) -> Result<(W, GivenAway), StoreError> {
        let (photos, cleaned_before) = self.read::<_, StoreError>(|ledger| {
            ledger.require_job(job)?;
            ledger.require_room(job)?;
            Ok((ledger.photos_of(job)?, ledger.stand_ins_of(job)?))
        })?;
        refuse_too_large(&photos)?;
        let are_clean: BTreeSet<&PhotoId> = cleaned_before.values().collect();
        let (mut stand_ins, mut written_photos) = (StandIns::new(), BTreeSet::new());
        let mut told = GivenAway::default();
        let mut zip = ZipWriter::new(writer);
        way.expect(photos.len());
        for photo in photos {
            way.step()?;
            let cleaned = match self.original(&photo.id) {
                Err(StoreError::NoSuchPhoto | StoreError::PhotoDamaged) => None,
                bytes if are_clean.contains(&photo.id) => Some((bytes?, photo.facts.format)),
                bytes => cleaned(&bytes?, clean),
            };
            let Some((bytes, format)) = cleaned else {
                told.left_out.insert(photo.id);
                continue;
            };
            let id = photo_id(&bytes);
            if written_photos.insert(id.clone()) {
                write_photo(&mut zip, &id, format, &bytes)?;
            }
            if id != photo.id {
                stand_ins.insert(photo.id, id);
            }
        }
        stand_ins.extend(cleaned_before.into_iter().filter(|(_, stand_in)| written_photos.contains(stand_in)));
        told.stand_ins = stand_ins.len();
        self.write_job(&mut zip, JOB_ENTRY, job, &stand_ins)?;
        Ok((zip.finish().map_err(written)?, told))
    }
}

/// A cleaned picture that another device takes in.
fn cleaned(bytes: &[u8], clean: PhotoCleaning<'_>) -> Option<(Vec<u8>, PhotoFormat)> {
    let (cleaned, facts) = clean(bytes).ok()?;
    (cleaned.len() as u64 <= MAX_PHOTO_BYTES).then_some((cleaned, facts.format))
}
