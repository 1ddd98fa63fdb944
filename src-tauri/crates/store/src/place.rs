//! Where a database lies, so that a copy of it that is used beside it, or on another machine, takes a name of its own.
//!
//! What no system asks a permission for is put together:
//!
//! | | changes | stays |
//! |---|---|---|
//! | the file's number (all but Windows) | when it is copied, restored, unpacked, moved to another disk | when its folder is renamed or moved on one disk |
//! | when the file was made (where the system tells) | the same, but for some that copy this too | the same |
//! | the machine's own mark (Linux), its name (Windows) | on another machine, whatever was copied: a whole disk too | on this one |
//!
//! What it can't tell from the original: a disk that was copied whole, where no mark of the machine can be read; a file
//! whose bytes were written over those of the original. Should two then come to one id, both entries stay
//! (`same_id.rs`). Where the system gives files other numbers at each start (some memory cards and network drives), a
//! store takes a new name each time, which costs nothing: what it entered before stays as it is.

use std::fs::Metadata;
use std::path::Path;
use std::time::UNIX_EPOCH;

use rusqlite::Connection;
use sha2::{Digest, Sha256};

use crate::StoreError;

/// Notes where the database lies. Draws another name for it if it was another place before; says whether it did.
pub(crate) fn settle(connection: &Connection, database: &Path) -> Result<bool, StoreError> {
    let known = connection.query_row("SELECT place FROM device", [], |row| row.get::<_, String>(0));
    // What is damaged must not keep the rest away.
    let (Some(place), Ok(known)) = (place(database), known) else { return Ok(false) };
    if known == place {
        return Ok(false);
    }
    let is_copy = !known.is_empty();
    let sql = "UPDATE device SET place = ?1, id = CASE WHEN ?2 THEN random() ELSE id END";
    match connection.execute(sql, (place, is_copy)).map_err(StoreError::from) {
        Ok(_) => Ok(is_copy),
        Err(StoreError::Damaged) => Ok(false),
        Err(error) => Err(error),
    }
}

/// None where nothing can be told. The machine's mark is nobody's business: only a digest of it is kept.
fn place(database: &Path) -> Option<String> {
    let file = std::fs::metadata(database).ok()?;
    let made = file.created().ok().and_then(|at| at.duration_since(UNIX_EPOCH).ok()).map(|since| since.as_nanos());
    let number = number_of(&file);
    if made.is_none() && number.is_none() {
        return None;
    }
    let told = format!("{number:?} {made:?} {:?}", machine());
    Some(Sha256::digest(told).iter().map(|byte| format!("{byte:02x}")).collect())
}

#[cfg(unix)]
fn number_of(file: &Metadata) -> Option<u64> {
    use std::os::unix::fs::MetadataExt;
    Some(file.ino())
}

#[cfg(not(unix))]
fn number_of(_: &Metadata) -> Option<u64> {
    None
}

#[cfg(target_os = "linux")]
fn machine() -> Option<String> {
    std::fs::read_to_string("/etc/machine-id").ok()
}

#[cfg(windows)]
fn machine() -> Option<String> {
    std::env::var("COMPUTERNAME").ok()
}

#[cfg(not(any(target_os = "linux", windows)))]
fn machine() -> Option<String> {
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_known_again_and_its_copy_is_another() {
        let dir = tempfile::tempdir().unwrap();
        let (file, copy, moved) = (dir.path().join("one"), dir.path().join("copy"), dir.path().join("moved"));
        std::fs::write(&file, b"bytes").unwrap();
        let at_first = place(&file);
        assert!(at_first.is_some());
        std::fs::write(&file, b"other bytes").unwrap();
        std::fs::copy(&file, &copy).unwrap();
        std::fs::rename(&file, &moved).unwrap();
        assert_eq!(place(&moved), at_first);
        assert_ne!(place(&copy), at_first);
        assert_eq!(place(&file), None);
    }
}
