//! The whole shop into archives: all of it, or what changed since earlier ones.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{BufWriter, Seek, Write};

use wearbook_core::job::PhotoId;
use wearbook_core::under_way::UnderWay;
use zip::ZipWriter;

use super::limits::{MAX_ARCHIVE_BYTES, MAX_PHOTO_BYTES, MAX_SHOP_ENTRIES, MAX_SHOP_FILE_BYTES};
use super::shop_file::{ListedJob, ShopFile, Stub};
use super::shop_held::{Held, JobAsOf};
use super::write::{plain, write_photo, written};
use super::{JOB_FOLDER, SHOP_ENTRY};
use crate::ledger::ShelfLine;
use crate::{JobId, JobRow, PhotoRow, Store, StoreError};

/// What goes into the archive of a shop.
#[derive(Debug, Clone, Copy)]
pub struct ShopAsked<'a> {
    /// What earlier archives hold, which need not be written again; none for an archive of everything.
    pub held: &'a Held,
    /// The settings that are the shop's, and not this device's.
    pub settings: &'a [&'a str],
    /// The time.
    pub now: u64,
}

/// What went into it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ShopWritten {
    /// The jobs, each as it was.
    pub jobs: BTreeMap<JobId, JobAsOf>,
    /// The photos.
    pub photos: BTreeSet<PhotoId>,
    /// Photos whose files are missing or damaged here: the rest has left without them.
    pub lacking: BTreeSet<PhotoId>,
    /// Jobs that can't be read here, or are larger than any archive takes: the rest has left without them.
    pub left_out: BTreeSet<JobId>,
    /// Whether more is left than one file holds: what is asked for after this file is held goes into the next.
    pub has_more: bool,
}

/// What a file takes in a zip beside its bytes, with its name twice.
const AROUND_FILE: u64 = 512;
/// What the lines of a job take beside what was entered.
const AROUND_EDIT: u64 = 128;

/// How much still fits.
struct Room {
    bytes: u64,
    files: usize,
}

impl Room {
    fn take(&mut self, bytes: u64) -> bool {
        let left = self.bytes.checked_sub(bytes + AROUND_FILE).zip(self.files.checked_sub(1));
        if let Some((bytes, files)) = left {
            *self = Self { bytes, files };
        }
        left.is_some()
    }
}

impl Store {
    /// Writes the shop as a `.wearbook` archive: its jobs and photos, its shelf, what it has set, and what is left of jobs that
    /// were put away. A job stands in it unless it is held, as it is and with all its photos, by earlier archives of this
    /// device; a photo unless any holds it. What does not fit into one file is left for the next.
    ///
    /// # Errors
    /// [`StoreError::Stopped`]; what the disk, the database and the writer say.
    pub fn export_shop<W: Write + Seek>(
        &self,
        asked: ShopAsked<'_>,
        writer: W,
        way: &UnderWay,
    ) -> Result<(W, ShopWritten), StoreError> {
        self.export_shop_within(asked, MAX_ARCHIVE_BYTES, writer, way)
    }

    fn export_shop_within<W: Write + Seek>(
        &self,
        asked: ShopAsked<'_>,
        most: u64,
        writer: W,
        way: &UnderWay,
    ) -> Result<(W, ShopWritten), StoreError> {
        let (mut file, shelf) = self.shop_file(asked)?;
        let mut told = ShopWritten::default();
        let mut room = Room { bytes: most.saturating_sub(MAX_SHOP_FILE_BYTES.min(most / 8)), files: MAX_SHOP_ENTRIES };
        let mut photos: BTreeMap<PhotoId, PhotoRow> = BTreeMap::new();
        for job in &mut file.jobs {
            way.go_on()?;
            let found = self.read::<_, StoreError>(|ledger| {
                ledger.require_room(job.job)?;
                Ok((ledger.extent(job.job)?.1, ledger.photos_of(job.job)?))
            });
            let (bytes, rows) = match found {
                Err(StoreError::Damaged | StoreError::JobFull | StoreError::NoSuchJob) => {
                    told.left_out.insert(job.job);
                    continue;
                }
                found => found?,
            };
            let (mut new, is_changed) = (Vec::new(), asked.held.jobs.get(&job.job) != Some(&job.as_of()));
            for row in rows.into_iter().filter(|row| !asked.held.photos.contains(&row.id)) {
                if row.bytes <= MAX_PHOTO_BYTES && self.photos.is_there(&row.id) {
                    new.push(row);
                } else {
                    told.lacking.insert(row.id);
                }
            }
            // A photo never comes without its job: whoever takes it in must know where it belongs.
            job.is_here = (is_changed || !new.is_empty()) && room.take(bytes + AROUND_EDIT * job.edits as u64);
            told.has_more |= is_changed && !job.is_here;
            for row in new {
                if job.is_here && (photos.contains_key(&row.id) || room.take(row.bytes)) {
                    job.photos.insert(row.id.clone());
                    photos.insert(row.id.clone(), row);
                } else {
                    told.has_more = true;
                }
            }
        }
        let mut zip = ZipWriter::new(writer);
        way.expect(photos.len());
        for job in file.jobs.iter_mut().filter(|job| job.is_here) {
            way.go_on()?;
            let stand_ins = self.read(|ledger| ledger.stand_ins_of(job.job))?;
            let name = format!("{JOB_FOLDER}{}.json", job.job);
            match self.write_job(&mut zip, &name, job.job, &stand_ins) {
                // The rest must be able to leave.
                Err(StoreError::Damaged | StoreError::NoSuchJob) => {
                    zip.abort_file().map_err(written)?;
                    job.is_here = false;
                    told.left_out.insert(job.job);
                }
                as_of => {
                    // It may have been added to meanwhile.
                    let as_of = as_of?;
                    (job.edits, job.latest) = (as_of.edits, as_of.latest);
                    told.jobs.insert(job.job, as_of);
                }
            }
        }
        for (photo, row) in photos {
            way.step()?;
            match self.original(&photo) {
                Err(StoreError::NoSuchPhoto | StoreError::PhotoDamaged) => drop(told.lacking.insert(photo)),
                bytes => {
                    write_photo(&mut zip, &photo, row.facts.format, &bytes?)?;
                    told.photos.insert(photo);
                }
            }
        }
        // Only now it is known what is in it.
        for job in &mut file.jobs {
            job.photos.retain(|photo| told.photos.contains(photo));
        }
        file.jobs.retain(|job| !told.left_out.contains(&job.job));
        zip.start_file(SHOP_ENTRY, plain()).map_err(written)?;
        let mut to = BufWriter::with_capacity(64 * 1024, &mut zip);
        file.write(&shelf, &mut to)?;
        to.flush()?;
        drop(to);
        Ok((zip.finish().map_err(written)?, told))
    }

    /// What the shop has beside what its jobs hold, at one moment.
    fn shop_file(&self, asked: ShopAsked<'_>) -> Result<(ShopFile, Vec<ShelfLine>), StoreError> {
        self.read(|ledger| {
            let mut settings = ledger.settings()?;
            settings.retain(|key, _| asked.settings.contains(&key.as_str()));
            let put_away = ledger.all_put_away()?.into_iter();
            let rows = match ledger.jobs() {
                Err(StoreError::Damaged) => ledger.jobs_as_far_as_read(),
                rows => rows,
            };
            let mut jobs = Vec::new();
            for JobRow { id: job, .. } in rows? {
                let JobAsOf { edits, latest } = ledger.as_of(job).unwrap_or(JobAsOf { edits: 0, latest: None });
                jobs.push(ListedJob { job, edits, latest, is_here: false, photos: BTreeSet::new() });
            }
            jobs.sort_by_key(|job| job.job);
            let file = ShopFile {
                device: ledger.device()?.into(),
                written_at: asked.now,
                settings,
                put_away: put_away
                    .map(|stub| Stub { job: stub.job, at: stub.at, device: stub.device.into() })
                    .collect(),
                jobs,
            };
            Ok((file, ledger.shelf_lines()?))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{NewPhoto, PhotoFacts, PhotoFormat, ShopTaking, verify};
    use std::io::Cursor;

    const FACTS: PhotoFacts = PhotoFacts { format: PhotoFormat::Jpeg, width: 1, height: 1 };

    /// What does not fit into one file goes into the next, and all of them together are the shop.
    #[test]
    fn a_shop_too_large_for_one_file_is_cut_into_several() {
        let dir = tempfile::tempdir().unwrap();
        let store = Store::open(dir.path()).unwrap();
        for n in 0..30_u8 {
            let original = vec![n; 20_000];
            let new = NewPhoto { original: &original, facts: FACTS, screen: b"s", thumb: b"t" };
            let job = JobId::from_bits(u128::from(n / 5));
            store
                .write::<_, StoreError>(|ledger| {
                    ledger.adopt_job(job, 1)?;
                    ledger.add_photo(job, new, 1)
                })
                .unwrap();
        }
        let (mut held, mut files) = (Held::default(), vec![]);
        let way = UnderWay::default();
        loop {
            let asked = ShopAsked { held: &held, settings: &[], now: 1 };
            let (file, written) = store.export_shop_within(asked, 150_000, Cursor::new(vec![]), &way).unwrap();
            verify(Cursor::new(file.get_ref()), &way).unwrap();
            assert!(file.get_ref().len() <= 150_000, "{} bytes", file.get_ref().len());
            files.push(file);
            held = held.and(&written);
            if !written.has_more {
                break;
            }
            assert!(!written.photos.is_empty(), "it would never end");
        }
        assert_eq!((files.len(), held.photos.len(), held.jobs.len()), (5, 30, 6));
        let other = tempfile::tempdir().unwrap();
        let other = Store::open(other.path()).unwrap();
        for file in files.into_iter().rev() {
            let taking = ShopTaking { now: 1, back: false, settings: &[] };
            other.import_shop(file, taking, &|_| Ok(FACTS), &way).unwrap();
        }
        for n in 0..6 {
            let photos = |store: &Store| store.read::<_, StoreError>(|ledger| ledger.photos_of(JobId::from_bits(n)));
            assert_eq!(photos(&other).unwrap(), photos(&store).unwrap());
        }
    }
}
