//! The shop's memory: the edit logs of its jobs in SQLite, its photos as files named by their content, and archives.
//!
//! This is the only crate with SQL and files. Every action of a person is one call of [`Store::read`] or
//! [`Store::write`], which hand out a [`Ledger`]; what a write does is kept whole or not at all.
//!
//! What survives the power going off: everything that [`Store::write`] has returned from. The database runs with
//! `synchronous=FULL`; a photo is written to a temporary name, synced, renamed to its content's name, and only then
//! named by a row. A photo that the camera has taken waits as a shot until it is in its job (`shots.rs`).
//!
//! What is *not* here: pictures are not decoded (whoever imports hands in the check), and there is no clock (times are
//! arguments).

#![warn(missing_docs)]

mod archive;
mod arrival_folder;
mod database;
mod error;
mod incoming;
mod job_id;
mod ledger;
mod one_program;
mod photo_folder;
mod place;
mod recovery;
mod same_id;
mod shot_folder;
mod shot_id;
mod shots;
mod whole_file;

pub use archive::{
    ArchiveOf, GivenAway, Held, Imported, JobAsOf, JobFile, MAX_ARCHIVE_BYTES, MAX_EDITS, MAX_JOB_BYTES,
    MAX_PHOTO_BYTES, MAX_PHOTOS, PhotoCheck, PhotoCleaning, ShelfDiffers, ShelfHolds, ShopAsked, ShopTaken, ShopTaking,
    ShopWritten, StandIns, Verified, archive_of, read_job_file, verify,
};
pub use error::StoreError;
pub use job_id::JobId;
pub use ledger::{
    Asked, JobRow, Ledger, NewPhoto, PhotoFacts, PhotoFormat, PhotoRow, PutAway, ReadEdits, ShelfKind, ShotOf, ShotRow,
    ShotState, Summary,
};
pub use photo_folder::{ShownSize, photo_id};
pub use recovery::Recovered;
pub use same_id::gave_way;
pub use shot_id::ShotId;
pub use shots::ShotEnd;
pub use whole_file::{write_whole, write_whole_by};

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Mutex, MutexGuard, PoisonError, RwLock, RwLockReadGuard, TryLockError};

use rusqlite::{Connection, TransactionBehavior};
use wearbook_core::job::PhotoId;

use arrival_folder::ArrivalFolder;
use one_program::OneProgram;
use photo_folder::PhotoFolder;
use shot_folder::ShotFolder;

/// One shop's memory, in one folder.
#[derive(Debug)]
pub struct Store {
    connection: Mutex<Connection>,
    photos: PhotoFolder,
    shots: ShotFolder,
    arrivals: ArrivalFolder,
    dir: PathBuf,
    /// Held by whoever counts on it that no photo goes meanwhile; taken for itself by what takes photos away.
    photos_stay: RwLock<()>,
    is_copy: bool,
    /// Not, if the disk was so full that the database could only be opened to read it.
    has_room: AtomicBool,
    /// Last, so that it is given up when all else is closed.
    one_program: OneProgram,
}

/// A database that is damaged is recovered first; where there is none beside photos, none is begun.
fn open_database(dir: &Path, photos: &PhotoFolder) -> Result<Connection, StoreError> {
    let path = dir.join(database::DATABASE);
    if recovery::is_noted(dir) {
        recovery::recover(dir)?;
    }
    let is_there = std::fs::metadata(&path).is_ok_and(|file| file.len() > 0);
    if !is_there && !photos.is_empty()? {
        return Err(StoreError::Missing);
    }
    match database::open(&path) {
        Err(StoreError::Damaged) if is_there => {
            recovery::recover(dir)?;
            database::open(&path)
        }
        opened => opened,
    }
}

/// Opens the database, and says whether it is a copy of another.
fn open_to_write(dir: &Path, photos: &PhotoFolder) -> Result<(Connection, bool), StoreError> {
    let connection = open_database(dir, photos)?;
    let is_copy = place::settle(&connection, &dir.join(database::DATABASE))?;
    Ok((connection, is_copy))
}

/// Opens a database that could not be opened otherwise because the disk is full; gives any other error back.
fn open_to_read(dir: &Path, error: StoreError) -> Result<Connection, StoreError> {
    let may_be = matches!(error, StoreError::Full | StoreError::ReadOnly | StoreError::Io(_) | StoreError::Database(_));
    if !may_be || !whole_file::is_full(dir) {
        return Err(error);
    }
    database::open_without_room(&dir.join(database::DATABASE)).map_err(|_| StoreError::Full)
}

impl Store {
    /// Opens the store in a folder, or makes a new one there.
    ///
    /// # Errors
    /// [`StoreError::Open`] while another program has it open; [`StoreError::Newer`] if a newer version has written
    /// here, with everything left as it was; otherwise what the disk or the database says.
    pub fn open(dir: &Path) -> Result<Self, StoreError> {
        std::fs::create_dir_all(dir)?;
        let one_program = OneProgram::of(dir)?;
        let photos = PhotoFolder::open(dir)?;
        let shots = ShotFolder::open(dir)?;
        let arrivals = ArrivalFolder::open(dir)?;
        if one_program.is_sure() {
            whole_file::sweep(dir)?;
        }
        let (connection, is_copy, has_room) = match open_to_write(dir, &photos) {
            Ok((connection, is_copy)) => (connection, is_copy, true),
            Err(error) => (open_to_read(dir, error)?, false, false),
        };
        let store = Self {
            connection: Mutex::new(connection),
            photos,
            shots,
            arrivals,
            dir: dir.to_owned(),
            photos_stay: RwLock::new(()),
            is_copy,
            has_room: AtomicBool::new(has_room),
            one_program,
        };
        if store.one_program.is_sure() {
            store.sweep()?;
        }
        Ok(store)
    }

    /// Takes away what a killed program has left of photos. For the one process that holds the shop: another may be at
    /// it.
    fn sweep(&self) -> Result<(), StoreError> {
        // A database that can't say which photos it names takes none away.
        self.photos.sweep(&|photo| self.read(|ledger| Ok(ledger.photo(photo).map_or(true, |row| row.is_some()))))
    }

    /// Whether this folder was found to be a copy of another, or put back from one, when it was opened: what is entered
    /// from now on carries another device's id than what was entered before.
    pub fn is_copy(&self) -> bool {
        self.is_copy
    }

    /// The shop's own folder.
    #[must_use]
    pub fn dir(&self) -> &Path {
        &self.dir
    }

    /// Notes that damage was met: the next time the shop is opened, what can be read is recovered.
    ///
    /// # Errors
    /// What the disk says.
    pub fn note_damage(&self) -> Result<(), StoreError> {
        recovery::note(&self.dir)
    }

    /// What came of the last recovery; none if there never was one.
    ///
    /// # Errors
    /// What the database says.
    pub fn recovered(&self) -> Result<Option<Recovered>, StoreError> {
        let settings = self.read::<_, StoreError>(|ledger| ledger.settings())?;
        Ok(settings.get(recovery::SETTING).and_then(|told| serde_json::from_str(told).ok()))
    }

    /// Looks something up. All that the closure reads is of one moment.
    ///
    /// # Errors
    /// Those of the closure and of the database.
    pub fn read<T, E: From<StoreError>>(&self, look: impl FnOnce(&Ledger<'_>) -> Result<T, E>) -> Result<T, E> {
        let mut connection = self.lock();
        let transaction = connection.transaction().map_err(StoreError::from)?;
        look(&Ledger::new(&transaction, &self.photos))
    }

    /// Does one thing that a person asked for. If the closure fails, nothing of it is kept in the database.
    ///
    /// # Errors
    /// Those of the closure and of the database.
    pub fn write<T, E: From<StoreError>>(&self, act: impl FnOnce(&Ledger<'_>) -> Result<T, E>) -> Result<T, E> {
        let mut connection = self.lock();
        self.find_room(&mut connection)?;
        // Taking the write lock at once means that nothing read in the closure can change before it writes.
        let transaction =
            connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(StoreError::from)?;
        let ledger = Ledger::new(&transaction, &self.photos);
        let done = act(&ledger)?;
        let freed = ledger.end()?;
        transaction.commit().map_err(StoreError::from)?;
        for photo in freed {
            // Nobody can have taken it in again meanwhile. A file that stays is waste, and nothing was lost.
            let _ = self.photos.forget(&photo);
        }
        Ok(done)
    }

    /// Opens a database that could only be read for writing too, if there is room now.
    fn find_room(&self, connection: &mut Connection) -> Result<(), StoreError> {
        if self.has_room.load(Ordering::Relaxed) {
            return Ok(());
        }
        // It is closed first: it may have the database for itself alone.
        *connection = Connection::open_in_memory()?;
        match open_to_write(&self.dir, &self.photos) {
            Ok((opened, _)) => *connection = opened,
            Err(error) => {
                *connection = open_to_read(&self.dir, error)?;
                return Err(StoreError::Full);
            }
        }
        self.has_room.store(true, Ordering::Relaxed);
        Ok(())
    }

    /// Puts all that was written into the one file of the database, and empties the log of writes: a device that copies
    /// the folder while the program sleeps then copies all of it.
    ///
    /// # Errors
    /// What the database says.
    pub fn rest(&self) -> Result<(), StoreError> {
        self.lock().query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(()))?;
        Ok(())
    }

    /// Takes out what was put away more than 30 days ago, with the photos that no other job has.
    ///
    /// # Errors
    /// What the disk and the database say.
    pub fn clear_put_away(&self, now: u64) -> Result<(), StoreError> {
        // An import that is under way counts on the photos that are here. What is due then goes the next time.
        let _alone = match self.photos_stay.try_write() {
            Ok(alone) => alone,
            Err(TryLockError::Poisoned(alone)) => alone.into_inner(),
            Err(TryLockError::WouldBlock) => return Ok(()),
        };
        // Only once the rows are gone for good: a file without a row is waste, a row without a file is a loss.
        let photos = self.write(|ledger| ledger.clear_put_away(now))?;
        photos.iter().try_for_each(|photo| self.photos.forget(photo))
    }

    /// The untouched bytes of a photo.
    ///
    /// # Errors
    /// [`StoreError::NoSuchPhoto`] if the file is not there, [`StoreError::PhotoDamaged`] if its bytes have changed.
    pub fn original(&self, photo: &PhotoId) -> Result<Vec<u8>, StoreError> {
        self.photos.original(photo)
    }

    /// The bytes of a photo, or else of the picture that stands in for it.
    ///
    /// # Errors
    /// As [`Store::original`].
    pub fn picture(&self, photo: &PhotoId) -> Result<Vec<u8>, StoreError> {
        match self.original(photo) {
            Err(StoreError::NoSuchPhoto) => {
                let stand_in = self.read(|ledger| ledger.stand_in(photo))?.ok_or(StoreError::NoSuchPhoto)?;
                self.original(&stand_in)
            }
            original => original,
        }
    }

    /// A derived picture, if it has been made.
    ///
    /// # Errors
    /// What the disk says.
    pub fn shown(&self, photo: &PhotoId, size: ShownSize) -> Result<Option<Vec<u8>>, StoreError> {
        self.photos.shown(photo, size)
    }

    /// Keeps a derived picture, made anew from the original.
    ///
    /// # Errors
    /// What the disk says.
    pub fn keep_shown(&self, photo: &PhotoId, size: ShownSize, bytes: &[u8]) -> Result<(), StoreError> {
        self.photos.keep_shown(photo, size, bytes)
    }

    /// As long as it is held, no photo goes.
    fn hold_photos(&self) -> RwLockReadGuard<'_, ()> {
        self.photos_stay.read().unwrap_or_else(PoisonError::into_inner)
    }

    /// A panic while the lock was held has rolled its transaction back, so the connection is sound.
    fn lock(&self) -> MutexGuard<'_, Connection> {
        self.connection.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, RecordedChange, TextField};

    fn fill(n: u64, text: &str) -> Edit {
        let change = Change::OnIntake(OnIntake::Fill { field: TextField::Remarks, text: text.into() });
        Edit { id: EditId::next(None, n, DeviceId(1)), change: RecordedChange::Known(change) }
    }

    fn create(store: &Store) -> JobId {
        store.write::<_, StoreError>(|ledger| ledger.create_job(1)).unwrap()
    }

    fn append(store: &Store, job: JobId, edits: &[Edit]) -> Result<(), StoreError> {
        store.write(|ledger| ledger.append(job, edits))
    }

    fn edits(store: &Store, job: JobId) -> Vec<Edit> {
        store.read::<_, StoreError>(|ledger| ledger.edits(job)).unwrap()
    }

    #[test]
    fn a_full_disk_is_said_and_loses_nothing_that_was_saved() {
        let dir = tempfile::tempdir().unwrap();
        let store = Store::open(dir.path()).unwrap();
        let job = create(&store);
        append(&store, job, &[fill(1, "saved")]).unwrap();
        {
            // SQLite answers with the same code when it runs into its own limit as when the disk is full.
            let connection = store.lock();
            let pages: i64 = connection.query_row("PRAGMA page_count", [], |row| row.get(0)).unwrap();
            connection.pragma_update(None, "max_page_count", pages + 1).unwrap();
        }
        let many: Vec<Edit> = (10..30).map(|n| fill(n, &"x".repeat(10_000))).collect();
        let refused = append(&store, job, &many).unwrap_err();
        assert_eq!(refused.code(), "store-full");
        assert_eq!(edits(&store, job), [fill(1, "saved")]);
        store.lock().pragma_update(None, "max_page_count", 1_000_000).unwrap();
        append(&store, job, &[fill(3, "room again")]).unwrap();
        drop(store);
        assert_eq!(edits(&Store::open(dir.path()).unwrap(), job), [fill(1, "saved"), fill(3, "room again")]);
    }

    #[test]
    fn a_full_disk_at_the_start_is_read_until_there_is_room() {
        let dir = tempfile::tempdir().unwrap();
        let store = Store::open(dir.path()).unwrap();
        let job = create(&store);
        append(&store, job, &[fill(1, "saved")]).unwrap();
        *store.lock() = Connection::open_in_memory().unwrap();
        *store.lock() = database::open_without_room(&dir.path().join("wearbook.db")).unwrap();
        store.has_room.store(false, Ordering::Relaxed);
        assert_eq!(edits(&store, job), [fill(1, "saved")]);
        assert!(!dir.path().join("wearbook.db-wal").exists(), "something was laid beside it");
        append(&store, job, &[fill(2, "room again")]).unwrap();
        assert_eq!(edits(&store, job), [fill(1, "saved"), fill(2, "room again")]);
    }

    #[test]
    fn at_rest_the_one_file_of_the_database_holds_all() {
        let dir = tempfile::tempdir().unwrap();
        let store = Store::open(dir.path()).unwrap();
        let job = create(&store);
        append(&store, job, &[fill(1, "saved")]).unwrap();
        let log = dir.path().join("wearbook.db-wal");
        assert!(log.metadata().unwrap().len() > 0);
        store.rest().unwrap();
        assert_eq!(log.metadata().unwrap().len(), 0);
        let copy = tempfile::tempdir().unwrap();
        std::fs::copy(dir.path().join("wearbook.db"), copy.path().join("wearbook.db")).unwrap();
        assert_eq!(edits(&Store::open(copy.path()).unwrap(), job), [fill(1, "saved")]);
    }

    #[test]
    fn an_edit_that_exists_is_ignored_and_one_that_differs_stays_beside_it() {
        let dir = tempfile::tempdir().unwrap();
        let store = Store::open(dir.path()).unwrap();
        let job = create(&store);
        append(&store, job, &[fill(1, "a")]).unwrap();
        append(&store, job, &[fill(1, "a"), fill(2, "b")]).unwrap();
        assert_eq!(edits(&store, job), [fill(1, "a"), fill(2, "b")]);
        let at_two = |text: &str| {
            let all = edits(&store, job);
            let (at, edit) = all.iter().enumerate().find(|(_, edit)| edit.change == fill(2, text).change).unwrap();
            (at, edit.id == fill(2, "b").id, gave_way(&all).contains(&edit.id))
        };
        // Whichever came first: “b” sorts before “c”, and “a” before both.
        append(&store, job, &[fill(3, "d"), fill(2, "c")]).unwrap();
        assert_eq!((at_two("c"), at_two("b")), ((1, false, true), (2, true, false)));
        append(&store, job, &[fill(2, "a")]).unwrap();
        assert_eq!((at_two("b").1, at_two("b").2, at_two("c").2), (false, true, true));
        let all = edits(&store, job);
        assert_eq!((all.len(), &all[0], &all[3], &all[4]), (5, &fill(1, "a"), &fill(2, "a"), &fill(3, "d")));
        append(&store, job, &[fill(2, "a"), fill(2, "b"), fill(2, "c")]).unwrap();
        append(&store, job, &all).unwrap();
        assert_eq!(edits(&store, job), all, "twice changes nothing");
    }

    #[test]
    fn in_a_file_written_by_hand_another_content_is_a_slip() {
        let dir = tempfile::tempdir().unwrap();
        let store = Store::open(dir.path()).unwrap();
        let job = create(&store);
        let by_hand = |text: &str| Edit { id: EditId::next(None, 0, DeviceId(0)), ..fill(0, text) };
        append(&store, job, &[by_hand("a")]).unwrap();
        assert_eq!(append(&store, job, &[fill(3, "c"), by_hand("b")]).unwrap_err().code(), "edit-conflict");
        assert_eq!(edits(&store, job), [by_hand("a")], "a refused append left something");
    }

    #[test]
    fn a_closure_that_fails_leaves_nothing() {
        let dir = tempfile::tempdir().unwrap();
        let store = Store::open(dir.path()).unwrap();
        let failed: Result<(), StoreError> = store.write(|ledger| {
            ledger.create_job(1)?;
            Err(StoreError::NoSuchJob)
        });
        assert!(failed.is_err());
        assert_eq!(store.read::<_, StoreError>(|ledger| ledger.jobs()).unwrap(), []);
    }

    #[test]
    fn another_program_that_holds_the_database_is_said() {
        let dir = tempfile::tempdir().unwrap();
        let store = Store::open(dir.path()).unwrap();
        let other = Connection::open(dir.path().join("wearbook.db")).unwrap();
        other.execute_batch("BEGIN IMMEDIATE").unwrap();
        store.lock().busy_timeout(std::time::Duration::from_millis(1)).unwrap();
        let refused = store.write::<_, StoreError>(|ledger| ledger.create_job(1)).unwrap_err();
        assert_eq!(refused.code(), "store-busy");
    }
}
