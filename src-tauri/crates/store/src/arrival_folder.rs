//! Files that come from outside, as far as they have come: a page hands them over piece by piece, for whole they may be
//! larger than its memory.
//!
//! ```text
//! arrivals/<number>
//! ```

use std::fs::{self, File};
use std::io::{self, Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

use crate::archive::MAX_ARCHIVE_BYTES;
use crate::{Store, StoreError};

#[derive(Debug)]
pub(crate) struct ArrivalFolder(PathBuf);

impl ArrivalFolder {
    pub(crate) fn open(dir: &Path) -> Result<Self, StoreError> {
        let folder = dir.join("arrivals");
        fs::create_dir_all(&folder)?;
        Ok(Self(folder))
    }

    fn path(&self, number: u32) -> PathBuf {
        self.0.join(number.to_string())
    }
}

impl Store {
    /// Adds a piece to the file of a number, at the place where it belongs. A piece that comes twice is there once.
    ///
    /// # Errors
    /// [`StoreError::Archive`] if a piece before it is missing, or the file is larger than an archive may be; what the disk
    /// says.
    pub fn add_to_arrival(&self, number: u32, at: u64, bytes: &[u8]) -> Result<(), StoreError> {
        self.write_arrival(number, at, &mut io::Cursor::new(bytes))
    }

    /// Takes a whole file in that can be read only once, such as one that another program lends.
    ///
    /// # Errors
    /// As [`Store::add_to_arrival`].
    pub fn copy_arrival(&self, number: u32, from: &mut dyn Read) -> Result<(), StoreError> {
        self.write_arrival(number, 0, from)
    }

    fn write_arrival(&self, number: u32, at: u64, from: &mut dyn Read) -> Result<(), StoreError> {
        let mut file = File::options().create(true).truncate(false).write(true).open(self.arrivals.path(number))?;
        if file.metadata()?.len() < at {
            return Err(StoreError::archive("A piece of this file did not arrive: open it again."));
        }
        file.seek(SeekFrom::Start(at))?;
        let room = MAX_ARCHIVE_BYTES.saturating_sub(at);
        let written = io::copy(&mut from.take(room + 1), &mut file)?;
        if written > room {
            let most = MAX_ARCHIVE_BYTES / (1024 * 1024);
            return Err(StoreError::archive(format!("This file has more than {most} MB: {most} MB at most.")));
        }
        file.flush()?;
        Ok(())
    }

    /// Where the file of a number lies.
    #[must_use]
    pub fn arrival(&self, number: u32) -> PathBuf {
        self.arrivals.path(number)
    }

    /// The file of a number is no longer wanted.
    ///
    /// # Errors
    /// What the disk says.
    pub fn forget_arrival(&self, number: u32) -> Result<(), StoreError> {
        match fs::remove_file(self.arrivals.path(number)) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error.into()),
            _ => Ok(()),
        }
    }

    /// Removes what an earlier run has left: nobody knows its numbers any longer.
    ///
    /// # Errors
    /// What the disk says.
    pub fn sweep_arrivals(&self) -> Result<(), StoreError> {
        for entry in fs::read_dir(&self.arrivals.0)? {
            fs::remove_file(entry?.path())?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_make_the_file_in_their_order_only() {
        let dir = tempfile::tempdir().unwrap();
        let store = Store::open(dir.path()).unwrap();
        store.add_to_arrival(1, 0, b"abc").unwrap();
        store.add_to_arrival(1, 3, b"def").unwrap();
        store.add_to_arrival(1, 3, b"def").unwrap();
        assert_eq!(store.add_to_arrival(1, 9, b"x").unwrap_err().code(), "archive-refused");
        assert_eq!(fs::read(store.arrival(1)).unwrap(), b"abcdef");
        store.copy_arrival(2, &mut &b"whole"[..]).unwrap();
        assert_eq!(fs::read(store.arrival(2)).unwrap(), b"whole");
        store.forget_arrival(1).unwrap();
        store.forget_arrival(1).unwrap();
        assert!(!store.arrival(1).exists() && store.arrival(2).exists());
        store.sweep_arrivals().unwrap();
        assert!(!store.arrival(2).exists());
    }

    #[test]
    fn no_file_grows_beyond_an_archive() {
        let dir = tempfile::tempdir().unwrap();
        let store = Store::open(dir.path()).unwrap();
        // A hole on the disk, not bytes.
        let file = File::create(store.arrival(1)).unwrap();
        file.set_len(MAX_ARCHIVE_BYTES).unwrap();
        let refused = store.add_to_arrival(1, MAX_ARCHIVE_BYTES, b"x").unwrap_err();
        assert!(refused.to_string().contains("2048 MB at most"), "{refused}");
        store.add_to_arrival(1, MAX_ARCHIVE_BYTES - 1, b"x").unwrap();
    }
}
