//! One program at a time works in a shop's folder: whoever holds its lock.

use std::fs::{File, TryLockError};
use std::io;
use std::path::Path;

use crate::StoreError;

/// An empty file. That it is there says nothing: the system gives up the lock on it when the program that holds it
/// ends, however it ends.
const LOCK: &str = "wearbook.lock";

/// The lock of a folder, held as long as this lives.
#[derive(Debug)]
pub(crate) struct OneProgram {
    /// None where the file system knows no locks, or has no room for the file: then the shop is opened all the same.
    held: Option<File>,
}

impl OneProgram {
    /// Takes the lock.
    ///
    /// # Errors
    /// [`StoreError::Open`] if another program holds it.
    pub(crate) fn of(dir: &Path) -> Result<Self, StoreError> {
        let Ok(file) = File::options().create(true).truncate(false).write(true).open(dir.join(LOCK)) else {
            return Ok(Self { held: None });
        };
        match file.try_lock() {
            Ok(()) => Ok(Self { held: Some(file) }),
            Err(TryLockError::WouldBlock) => Err(StoreError::Open),
            Err(TryLockError::Error(error)) if is_taken(&error) => Err(StoreError::Open),
            Err(TryLockError::Error(_)) => Ok(Self { held: None }),
        }
    }

    /// Whether no other program can be at work here. Only then may what looks left over be taken away.
    pub(crate) fn is_sure(&self) -> bool {
        self.held.is_some()
    }
}

/// A program that is being started from this one holds the file too for a moment, so closing it is not enough.
impl Drop for OneProgram {
    fn drop(&mut self) {
        if let Some(file) = &self.held {
            // What can't be given up now is when the program ends.
            let _ = file.unlock();
        }
    }
}

/// Some network drives say in other words that a lock is taken.
fn is_taken(error: &io::Error) -> bool {
    matches!(error.kind(), io::ErrorKind::WouldBlock | io::ErrorKind::ResourceBusy)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_holds_it_and_the_next_can_once_it_is_given_up() {
        let dir = tempfile::tempdir().unwrap();
        let first = OneProgram::of(dir.path()).unwrap();
        assert!(first.is_sure());
        assert_eq!(OneProgram::of(dir.path()).unwrap_err().code(), "shop-open");
        drop(first);
        assert!(OneProgram::of(dir.path()).unwrap().is_sure());
    }

    #[test]
    fn where_there_are_no_locks_the_shop_is_opened_and_nothing_swept() {
        let dir = tempfile::tempdir().unwrap();
        // A folder can't be opened as a file, so there is nothing to lock.
        std::fs::create_dir(dir.path().join(LOCK)).unwrap();
        assert!(!OneProgram::of(dir.path()).unwrap().is_sure());
    }
}
