//! Backups: what changed since the last one goes into a folder that the person has chosen, in archives by date; each is read
//! back before it counts. Of all of them the shop can be made anew.

use std::fs::{self, File};
use std::io::{Seek, Write};
use std::path::{Path, PathBuf};

use chrono::DateTime;
use serde::{Deserialize, Serialize};
use wearbook_core::under_way::UnderWay;
use wearbook_store::{Held, ShopAsked, ShopTaking, ShopWritten, StoreError, verify, write_whole_by};

use crate::action::archive_import::Reply as TakenIn;
use crate::{Error, Wearbook, picture};

/// Where it is noted where backups go and how the last one went. Of this device: it is in no archive.
const SETTING: &str = "backup";
/// The settings that are the shop's, and not this device's.
pub(crate) const OF_THE_SHOP: &[&str] =
    &["shop_name", "shop_address", "shop_phone", "shop_conditions", "paper", "terms"];
/// With what the names of our own files begin.
const NAME: &str = "Wearbook backup";
/// So long nobody is told that a backup is due.
const WEEK_MILLIS: u64 = 7 * 24 * 60 * 60 * 1000;

/// Where backups go, and how the last one went.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Backup {
    /// The folder, if one was chosen.
    pub folder: Option<PathBuf>,
    /// When the last one was made and read back: milliseconds since 1970-01-01 UTC.
    #[cfg_attr(feature = "schema", ts(type = "number | null"))]
    pub at: Option<u64>,
    /// Why the last try failed, if it did.
    pub failed: Option<String>,
}

/// What came of one.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct BackedUp {
    /// Jobs that had changed.
    pub jobs: usize,
    /// Photos that were new.
    pub photos: usize,
    /// Photos that can't be read here: the rest has been saved without them.
    pub lacking: usize,
    /// Jobs that can't be read here.
    pub left_out: usize,
}

impl BackedUp {
    fn add(&mut self, written: &ShopWritten) {
        self.jobs += written.jobs.len();
        self.photos += written.photos.len();
        self.lacking = written.lacking.len();
        self.left_out = written.left_out.len();
    }
}

impl Wearbook {
    /// Where backups go, and how the last one went.
    ///
    /// # Errors
    /// What the store says.
    pub fn backup(&self) -> Result<Backup, Error> {
        let settings = self.store.read::<_, Error>(|ledger| Ok(ledger.settings()?))?;
        // What a newer version has written is as good as nothing.
        Ok(settings.get(SETTING).and_then(|kept| serde_json::from_str(kept).ok()).unwrap_or_default())
    }

    fn keep_backup(&self, backup: &Backup) -> Result<(), Error> {
        let json = crate::shelf::json(backup)?;
        self.store.write(|ledger| Ok(ledger.set_setting(SETTING, &json)?))
    }

    /// Backups go into this folder from now on; into none, without one.
    ///
    /// # Errors
    /// `backup-refused` if it is no folder, or lies within the shop's own.
    pub fn choose_backup(&self, folder: Option<&Path>) -> Result<(), Error> {
        if let Some(folder) = folder {
            let real = fs::canonicalize(folder).ok().filter(|real| real.is_dir());
            let real = real.ok_or_else(|| refused("This is no folder that can be written: choose another."))?;
            if fs::canonicalize(self.store.dir()).is_ok_and(|own| real.starts_with(own)) {
                return Err(refused("This folder is the shop’s own: what harms it harms its backups. Choose another."));
            }
        }
        self.keep_backup(&Backup { folder: folder.map(Path::to_owned), ..Backup::default() })
    }

    /// Saves what changed into the chosen folder.
    ///
    /// # Errors
    /// `backup-refused` if there is no folder; `stopped`; why it could not be written or read back, which is noted too.
    pub fn back_up(&self, way: Option<u32>) -> Result<BackedUp, Error> {
        let before = self.backup()?;
        let Some(folder) = &before.folder else { return Err(refused("Choose a folder for backups first.")) };
        let way = self.ways.begin(way);
        let now = self.clock.now_millis();
        let done = self.save_changed(folder, now, &way);
        match &done {
            Ok(_) => self.keep_backup(&Backup { at: Some(now), failed: None, ..before })?,
            Err(error) if error.code == "stopped" => {}
            Err(error) => self.keep_backup(&Backup { failed: Some(error.message.clone()), ..before })?,
        }
        done
    }

    fn save_changed(&self, folder: &Path, now: u64, way: &UnderWay) -> Result<BackedUp, Error> {
        let files = archives(folder).map_err(|error| not_written(&error.into()))?;
        // One that can't be opened holds nothing: what it should hold is saved again.
        let mut held = self.store.held_by(files.iter().filter_map(|file| File::open(file).ok()))?;
        let mut told = BackedUp::default();
        loop {
            let path = free_name(folder, now);
            let mut written = ShopWritten::default();
            write_whole_by(&path, |file| {
                written = self.write_shop(file, &held, now, way)?;
                Ok(())
            })
            .map_err(|error: StoreError| not_written(&error))?;
            told.add(&written);
            held = held.and(&written);
            // A file that takes nothing more in would come again and again.
            if !written.has_more || (written.jobs.is_empty() && written.photos.is_empty()) {
                return Ok(told);
            }
        }
    }

    /// Writes what is not held, and reads it back.
    fn write_shop(&self, file: &mut File, held: &Held, now: u64, way: &UnderWay) -> Result<ShopWritten, StoreError> {
        let asked = ShopAsked { held, settings: OF_THE_SHOP, now };
        let (file, written) = self.store.export_shop(asked, file, way)?;
        file.flush()?;
        file.rewind()?;
        verify(file, way)?;
        Ok(written)
    }

    /// Whether anything was entered since the last backup.
    ///
    /// # Errors
    /// What the store says.
    pub fn is_changed_since_backup(&self) -> Result<bool, Error> {
        let at = self.backup()?.at.unwrap_or(0);
        Ok(self.store.read::<_, Error>(|ledger| Ok(ledger.last_came_at()?))? > at)
    }

    /// Since when what was entered is in no backup, if that is more than a week: of a device on which none was ever made, since
    /// the first job.
    pub(crate) fn backup_due(&self) -> Result<Option<u64>, Error> {
        let since = match self.backup()?.at {
            Some(_) if !self.is_changed_since_backup()? => return Ok(None),
            Some(at) => at,
            None => match self.store.read::<_, Error>(|ledger| Ok(ledger.first_added_at()?))? {
                Some(first) => first,
                None => return Ok(None),
            },
        };
        Ok((self.clock.now_millis().saturating_sub(since) > WEEK_MILLIS).then_some(since))
    }

    /// Takes in every archive of a folder, the latest first: it knows what was put away.
    ///
    /// # Errors
    /// `backup-refused` if there is none; of the first that is refused, why. What was taken in before stays.
    pub fn restore(&self, folder: &Path, way: Option<u32>) -> Result<TakenIn, Error> {
        let mut files = archives(folder).map_err(|error| not_written(&error.into()))?;
        if files.is_empty() {
            return Err(refused("There is no .wearbook file in this folder."));
        }
        // Their names are dates.
        files.sort_by(|a, b| b.file_name().cmp(&a.file_name()));
        let way = self.ways.begin(way);
        let mut all = TakenIn::default();
        for path in files {
            let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
            let taken = File::open(&path)
                .map_err(|error| Error::from(StoreError::from(error)))
                .and_then(|file| self.take_in(file, false, &way));
            match taken {
                Ok(taken) => all.add(taken),
                Err(error) if error.code == "stopped" => return Err(error),
                Err(error) if error.code == "job-put-away" => all.put_away += 1,
                Err(error) => all.unread.push(format!("{name}: {}", error.message)),
            }
        }
        Ok(all)
    }

    /// Takes in an archive of a job or of a shop.
    pub(crate) fn take_in(&self, mut file: File, back: bool, way: &UnderWay) -> Result<TakenIn, Error> {
        let now = self.clock.now_millis();
        let of = wearbook_store::archive_of(&file)?;
        file.rewind().map_err(StoreError::from)?;
        match of {
            wearbook_store::ArchiveOf::Job => Ok(self.store.import_back(file, now, back, &picture::check, way)?.into()),
            wearbook_store::ArchiveOf::Shop { .. } => {
                let taking = ShopTaking { now, back, settings: OF_THE_SHOP };
                Ok(self.store.import_shop(file, taking, &picture::check, way)?.into())
            }
        }
    }

    /// Under which name the whole shop leaves.
    pub fn shop_archive_name(&self) -> String {
        format!("{}.wearbook", dated(self.clock.now_millis()))
    }

    /// Writes the whole shop, to be read back from where it was written.
    ///
    /// # Errors
    /// `archive-refused` if it is more than one file can hold; what the store and the writer say.
    pub fn save_shop(&self, path: &Path, way: Option<u32>) -> Result<BackedUp, Error> {
        let way = self.ways.begin(way);
        let now = self.clock.now_millis();
        let mut told = BackedUp::default();
        write_whole_by(path, |file| {
            let written = self.write_shop(file, &Held::default(), now, &way)?;
            if written.has_more {
                return Err(StoreError::Archive(
                    "This shop is more than one file can hold. Choose a folder for backups on a computer: there it is cut into several."
                        .into(),
                ));
            }
            told.add(&written);
            Ok(())
        })?;
        Ok(told)
    }

    /// The whole shop was saved somewhere: that counts as a backup.
    ///
    /// # Errors
    /// What the store says.
    pub fn note_shop_saved(&self) -> Result<(), Error> {
        let backup = self.backup()?;
        self.keep_backup(&Backup { at: Some(self.clock.now_millis()), failed: None, ..backup })
    }
}

/// The archives that lie in a folder, not those below it.
fn archives(folder: &Path) -> std::io::Result<Vec<PathBuf>> {
    let paths = fs::read_dir(folder)?.map(|entry| entry.map(|entry| entry.path()));
    let is_archive = |path: &PathBuf| path.extension().is_some_and(|extension| extension == "wearbook");
    paths.filter(|path| path.as_ref().map_or(true, is_archive)).collect()
}

/// A name by date and time under which nothing stands yet; names sort as their times do.
fn free_name(folder: &Path, now: u64) -> PathBuf {
    let begins = dated(now);
    let names = (0_u32..1000).map(|n| format!("{begins}-{n:03}.wearbook"));
    let mut free = names.map(|name| folder.join(name)).filter(|path| !path.exists());
    free.next().unwrap_or_else(|| folder.join(format!("{begins}.wearbook")))
}

/// In the time of Greenwich, so that no change of clocks turns their order round.
fn dated(now: u64) -> String {
    let at = i64::try_from(now).ok().and_then(DateTime::from_timestamp_millis).unwrap_or_default();
    format!("{NAME} {}", at.format("%Y-%m-%d %H%M%S"))
}

fn refused(sentence: &str) -> Error {
    Error::new("backup-refused", sentence)
}

fn not_written(error: &StoreError) -> Error {
    match error {
        StoreError::Stopped(_) | StoreError::Damaged | StoreError::Archive(_) => {
            Error::new(error.code(), error.to_string())
        }
        _ => Error::new(
            "not-saved",
            "The folder for backups can’t be read or written: is it there, and is room left on it?",
        ),
    }
}
