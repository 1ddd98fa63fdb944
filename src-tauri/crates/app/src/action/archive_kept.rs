//! Notes that an archive of a job was saved.

use serde::Serialize;
use wearbook_store::StoreError;

use crate::{Error, Wearbook};

/// Which job.
pub type Arguments = super::OfJob;

/// What is not in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(rename = "Kept"))]
pub struct Reply {
    /// Photos of the job whose files are missing or damaged: the rest has left without them.
    pub left_out: usize,
}

/// Notes that the archive that was made last was saved: from then on the job may be put away, until it is changed.
///
/// # Errors
/// `no-such-job`; what the store says.
pub fn act(book: &Wearbook, Arguments { job }: Arguments) -> Result<Reply, Error> {
    let now = book.clock.now_millis();
    let photos = book.store.write::<_, StoreError>(|ledger| {
        ledger.note_archived(job, now)?;
        ledger.photos_of(job)
    })?;
    let mut left_out = 0;
    for photo in photos {
        match book.store.original(&photo.id) {
            Err(StoreError::NoSuchPhoto | StoreError::PhotoDamaged) => left_out += 1,
            sound => drop(sound?),
        }
    }
    Ok(Reply { left_out })
}
