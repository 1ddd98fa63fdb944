//! What is being taken in out of a file: in a folder of its own until all of it has been looked at.
//!
//! ```text
//! photos/.incoming-…/3f9a…        a photo, whole and on the disk, not kept yet
//! photos/.incoming-…/edits-1      the edits of a job
//! photos/.incoming-…/names        the photos that are about to be kept and were not here before
//! ```
//!
//! Should the program be ended, the next start takes the folder away, with those of the photos in `names` that no row names.

use std::collections::BTreeSet;
use std::fs::{self, File};
use std::io::{self, BufRead, BufReader, BufWriter, Write};
use std::path::{Path, PathBuf};

use tempfile::TempDir;
use wearbook_core::job::{EditId, PhotoId};

use crate::StoreError;
use crate::ledger::{ShelfLine, Written};
use crate::photo_folder::PhotoFolder;
use crate::whole_file::{TEMPORARY, sync_folder};

/// The file with the photos that are about to be kept.
const NAMES: &str = "names";

/// The folder; it goes with what is left in it.
#[derive(Debug)]
pub(crate) struct Incoming {
    dir: TempDir,
    spools: u32,
}

impl Incoming {
    /// Begins a folder beside those in which photos are kept: what is in it can be renamed into them.
    pub(crate) fn begin(photos: &Path) -> Result<Self, StoreError> {
        Ok(Self { dir: tempfile::Builder::new().prefix(TEMPORARY).tempdir_in(photos)?, spools: 0 })
    }

    /// Puts a photo there.
    pub(crate) fn put(&self, photo: &PhotoId, bytes: &[u8]) -> Result<(), StoreError> {
        let mut file = File::create(self.path(photo))?;
        file.write_all(bytes)?;
        Ok(file.sync_all()?)
    }

    /// Where a photo was put.
    pub(crate) fn path(&self, photo: &PhotoId) -> PathBuf {
        self.dir.path().join(photo.as_str())
    }

    /// Notes which photos are about to be kept that were not here before. Nothing may be moved out of here earlier.
    pub(crate) fn note_new(&self, photos: &BTreeSet<PhotoId>) -> Result<(), StoreError> {
        if photos.is_empty() {
            return Ok(());
        }
        let names: String = photos.iter().map(|photo| format!("{}\n", photo.as_str())).collect();
        let mut file = File::create(self.dir.path().join(NAMES))?;
        file.write_all(names.as_bytes())?;
        file.sync_all()?;
        sync_folder(self.dir.path())?;
        Ok(self.dir.path().parent().map_or(Ok(()), sync_folder)?)
    }

    /// Leaves it for the next start to take away.
    pub(crate) fn leave(self) {
        let _ = self.dir.keep();
    }

    /// Begins a file for what stands on a shelf.
    pub(crate) fn shelf(&self) -> Result<ShelfSpool, StoreError> {
        let path = self.dir.path().join("shelf");
        Ok(ShelfSpool { file: BufWriter::new(File::create(&path)?), path })
    }

    /// Begins a file for the edits of a job.
    pub(crate) fn spool(&mut self) -> Result<Spool, StoreError> {
        self.spools += 1;
        let path = self.dir.path().join(format!("edits-{}", self.spools));
        Ok(Spool { file: BufWriter::new(File::create(&path)?), path })
    }
}

/// Takes away what killed imports have left.
pub(crate) fn sweep(
    folder: &PhotoFolder,
    photos: &Path,
    is_named: &dyn Fn(&PhotoId) -> Result<bool, StoreError>,
) -> Result<(), StoreError> {
    for left in fs::read_dir(photos)? {
        let left = left?;
        if !left.file_name().to_string_lossy().starts_with(TEMPORARY) || !left.file_type()?.is_dir() {
            continue;
        }
        let names = fs::read_to_string(left.path().join(NAMES)).unwrap_or_default();
        for photo in names.lines().filter_map(|name| PhotoId::try_from(name.to_owned()).ok()) {
            if !is_named(&photo)? {
                folder.forget(&photo)?;
            }
        }
        fs::remove_dir_all(left.path())?;
    }
    Ok(())
}

/// Edits on their way into the database, so that none need be held in memory. It goes with its folder.
#[derive(Debug)]
pub(crate) struct Spool {
    file: BufWriter<File>,
    path: PathBuf,
}

impl Spool {
    /// Adds one.
    pub(crate) fn put(&mut self, edit: &Written) -> Result<(), StoreError> {
        let photo = edit.photo.as_ref().map(PhotoId::as_str).unwrap_or_default();
        // JSON without blanks has no end of line in it.
        Ok(writeln!(self.file, "{} {photo} {} {}", edit.id, edit.unknown_values, edit.change)?)
    }

    /// Lays it aside until it is read.
    pub(crate) fn close(mut self) -> Result<SpoolFile, StoreError> {
        self.file.flush()?;
        Ok(SpoolFile(self.path))
    }
}

/// What stands on a shelf, on its way into the database.
#[derive(Debug)]
pub(crate) struct ShelfSpool {
    file: BufWriter<File>,
    path: PathBuf,
}

impl ShelfSpool {
    /// Adds a thing.
    pub(crate) fn put(&mut self, line: &ShelfLine) -> Result<(), StoreError> {
        // What was written by hand may have ends of lines in it.
        let content: serde_json::Value = serde_json::from_str(line.content.get()).map_err(|_| StoreError::Damaged)?;
        let content = serde_json::value::to_raw_value(&content).map_err(|_| StoreError::Damaged)?;
        let line = ShelfLine { content, ..line.clone() };
        let text = serde_json::to_string(&line).map_err(|_| StoreError::Damaged)?;
        Ok(writeln!(self.file, "{text}")?)
    }

    /// Lays it aside until it is read.
    pub(crate) fn close(mut self) -> Result<ShelfFile, StoreError> {
        self.file.flush()?;
        Ok(ShelfFile(self.path))
    }
}

/// What stands on a shelf, to be read.
#[derive(Debug)]
pub(crate) struct ShelfFile(PathBuf);

impl ShelfFile {
    /// All of it, in the order in which it came.
    pub(crate) fn lines(&self) -> Result<impl Iterator<Item = Result<ShelfLine, StoreError>>, StoreError> {
        let lines = BufReader::new(File::open(&self.0)?).lines();
        Ok(lines.map(|line| serde_json::from_str(&line?).map_err(|_| StoreError::Damaged)))
    }
}

/// The edits of a job, to be read.
#[derive(Debug)]
pub(crate) struct SpoolFile(PathBuf);

impl SpoolFile {
    /// All of them, in the order in which they came.
    pub(crate) fn edits(&self) -> Result<impl Iterator<Item = Result<Written, StoreError>>, StoreError> {
        let lines = BufReader::new(File::open(&self.0)?).lines();
        Ok(lines.map(|line| edit(&line?).ok_or_else(|| io::Error::from(io::ErrorKind::InvalidData).into())))
    }
}

fn edit(line: &str) -> Option<Written> {
    let mut parts = line.splitn(4, ' ');
    let id: EditId = parts.next()?.parse().ok()?;
    let photo = Some(parts.next()?).filter(|photo| !photo.is_empty());
    let photo = photo.map(|photo| PhotoId::try_from(photo.to_owned())).transpose().ok()?;
    let unknown_values = parts.next()?.parse().ok()?;
    Some(Written { id, change: parts.next()?.to_owned(), photo, unknown_values })
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::job::DeviceId;

    #[test]
    fn edits_come_out_of_the_spool_as_they_went_in() {
        let dir = tempfile::tempdir().unwrap();
        let mut incoming = Incoming::begin(dir.path()).unwrap();
        let id = |n| EditId::next(None, n, DeviceId(1));
        let edits = [
            Written { id: id(2), change: r#"{"a":"x y\nz"}"#.into(), photo: None, unknown_values: 3 },
            Written { id: id(1), change: "{}".into(), photo: Some(crate::photo_id(b"picture")), unknown_values: 0 },
        ];
        let mut spool = incoming.spool().unwrap();
        edits.iter().for_each(|edit| spool.put(edit).unwrap());
        let spool = spool.close().unwrap();
        assert_eq!(spool.edits().unwrap().map(Result::unwrap).collect::<Vec<_>>(), edits);
        drop(incoming);
        assert_eq!(fs::read_dir(dir.path()).unwrap().count(), 0);
    }
}
