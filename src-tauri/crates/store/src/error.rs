//! What can go wrong with the memory: each with a code for the page and a sentence for the person.

use std::io;

use rusqlite::ErrorCode;
use wearbook_core::under_way::Stopped;

use crate::archive::{MAX_EDITS, MAX_JOB_BYTES};

/// Why the store could not do what was asked. Nothing that was saved before is touched by any of these.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// No room.
    #[error(
        "The disk is full, so this was not saved. Make room and try again; everything saved before is still there."
    )]
    Full,
    /// The database file does not read as it was written.
    #[error(
        "The shop’s database is damaged, so this could not be read. Close the program and open it again: what can be read is then recovered."
    )]
    Damaged,
    /// The photos are there and the database is not.
    #[error(
        "The shop’s database, wearbook.db, is missing or empty, but its photos are there. Put the file back from a backup. Only to begin a new shop move the folder “photos” elsewhere."
    )]
    Missing,
    /// Another program has the shop open.
    #[error("Wearbook is open on this shop already: go on in the window that is open, or close it and start again.")]
    Open,
    /// Another program holds the database.
    #[error("The shop’s database is in use by another program. Close the other window and try again.")]
    Busy,
    /// A newer version has written here.
    #[error(
        "This shop’s database was written by a newer version of this program (its version is {found}, this one knows {known}). Nothing was changed: install the newer version."
    )]
    Newer {
        /// The version found.
        found: i64,
        /// The newest that this program knows.
        known: i64,
    },
    /// The folder can't be written.
    #[error("The shop’s folder can’t be written. Check who owns it and whether it is write-protected.")]
    ReadOnly,
    /// The job is not in this store.
    #[error("There is no such job here. It may be on another device: import its file.")]
    NoSuchJob,
    /// A job was put away, and an archive of it came.
    #[error("This job was put away here. Take it in all the same?")]
    PutAway,
    /// A job is to be put away of which no archive was made as it stands.
    #[error("No archive of this job was made since its last entry: save one first.")]
    NotArchived,
    /// The photo is not in this store.
    #[error("This photo is not here. It may be on another device: import the job’s file from there.")]
    NoSuchPhoto,
    /// The photo's file has other bytes than those taken in.
    #[error("This photo’s file is damaged. Add the picture again, or import the job’s file from another device.")]
    PhotoDamaged,
    /// The camera is open already.
    #[error(
        "The camera was opened and has not closed yet: take that photo first, or say on the list of jobs that it is closed."
    )]
    ShotWaiting,
    /// The photo from the camera is not waiting here.
    #[error("This photo no longer waits here: it was taken into its job or put away. Take it again if it is missing.")]
    NoSuchShot,
    /// Two different edits claim one id, and no device made them.
    #[error(
        "Entry {0} is here already with another content, so one of the two records was altered. Nothing was taken in."
    )]
    EditConflict(String),
    /// An entry that no archive could bring to another device.
    #[error("{0}")]
    EntryRefused(String),
    /// A job with as much as one may hold.
    #[error("This job holds {MAX_EDITS} entries, or {} MB of them: the most that one can. Close it, and begin another.", MAX_JOB_BYTES / (1024 * 1024))]
    JobFull,
    /// An archive that can't be taken in: the sentence says why.
    #[error("{0}")]
    Archive(String),
    /// Whoever waited for it no longer does.
    #[error(transparent)]
    Stopped(#[from] Stopped),
    /// Anything else from the file system.
    #[error("The disk could not be used: {0}.")]
    Io(#[source] io::Error),
    /// Anything else from the database.
    #[error("The shop’s database could not be used: {0}.")]
    Database(#[source] rusqlite::Error),
}

impl StoreError {
    /// The kind of error, as the page knows it.
    pub fn code(&self) -> &'static str {
        match self {
            Self::Full => "store-full",
            Self::Damaged => "store-damaged",
            Self::Missing => "store-missing",
            Self::Open => "shop-open",
            Self::Busy => "store-busy",
            Self::Newer { .. } => "store-newer",
            Self::ReadOnly => "store-read-only",
            Self::NoSuchJob => "no-such-job",
            Self::PutAway => "job-put-away",
            Self::NotArchived => "not-archived",
            Self::NoSuchPhoto => "no-such-photo",
            Self::PhotoDamaged => "photo-damaged",
            Self::ShotWaiting => "shot-waiting",
            Self::NoSuchShot => "no-such-shot",
            Self::EditConflict(_) => "edit-conflict",
            Self::EntryRefused(_) => "change-refused",
            Self::JobFull => "job-full",
            Self::Archive(_) => "archive-refused",
            Self::Stopped(_) => "stopped",
            Self::Io(_) => "store-io",
            Self::Database(_) => "store-database",
        }
    }

    pub(crate) fn archive(sentence: impl Into<String>) -> Self {
        Self::Archive(sentence.into())
    }

    /// Of a file whose form this version does not read.
    pub(crate) fn newer_form(form: u32, known: u32) -> Self {
        Self::Archive(format!(
            "This file was written by a newer version of this program (form {form}, this one reads {known}): install the newer version."
        ))
    }
}

impl From<io::Error> for StoreError {
    fn from(error: io::Error) -> Self {
        match error.kind() {
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => Self::Full,
            io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => Self::ReadOnly,
            _ => Self::Io(error),
        }
    }
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> Self {
        if error.sqlite_error().is_some_and(|error| error.extended_code == rusqlite::ffi::SQLITE_IOERR_SHMSIZE) {
            // The index of the log of writes could not grow, which wants for nothing but room.
            return Self::Full;
        }
        match error.sqlite_error_code() {
            Some(ErrorCode::DiskFull) => Self::Full,
            Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => Self::Damaged,
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => Self::Busy,
            Some(ErrorCode::ReadOnly | ErrorCode::PermissionDenied | ErrorCode::CannotOpen) => Self::ReadOnly,
            _ => Self::Database(error),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    #[cfg(target_os = "linux")]
    fn a_full_disk_is_told_from_other_troubles() {
        // Every write to this device fails as on a full disk.
        let error = StoreError::from(std::fs::write("/dev/full", b"x").unwrap_err());
        assert_eq!(error.code(), "store-full");
    }
}
