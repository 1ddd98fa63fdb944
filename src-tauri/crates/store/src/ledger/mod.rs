//! What the closures of [`crate::Store::read`] and [`crate::Store::write`] work with: one file per table.

mod as_far_as_read;
mod device;
mod edit;
mod job;
mod photo;
mod put_away;
mod setting;
mod shelf;
mod shot;
mod since;
mod stand_in;
mod summary;
mod written;

pub use as_far_as_read::ReadEdits;
pub(crate) use edit::{AT_ONCE, canonical};
pub use job::JobRow;
pub use photo::{NewPhoto, PhotoFacts, PhotoFormat, PhotoRow};
pub use put_away::PutAway;
pub use shelf::ShelfKind;
pub(crate) use shelf::ShelfLine;
pub use shot::{ShotOf, ShotRow, ShotState};
pub use summary::{Asked, Summary};
pub(crate) use written::{Written, too_long};

use std::cell::RefCell;

use rusqlite::Connection;
use wearbook_core::job::PhotoId;

use crate::StoreError;
use crate::photo_folder::PhotoFolder;

/// The open book: all tables, within one transaction.
#[derive(Debug)]
pub struct Ledger<'a> {
    connection: &'a Connection,
    photos: &'a PhotoFolder,
    /// Photos that were taken in: what stood in for them goes, once it is known what else names it.
    came: RefCell<Vec<PhotoId>>,
}

impl<'a> Ledger<'a> {
    pub(crate) fn new(connection: &'a Connection, photos: &'a PhotoFolder) -> Self {
        Self { connection, photos, came: RefCell::default() }
    }

    /// Ends what was done. Names the photos that no row names any longer: their files go once that is so.
    pub(crate) fn end(self) -> Result<Vec<PhotoId>, StoreError> {
        let mut freed = Vec::new();
        for photo in self.came.take() {
            freed.extend(self.original_came(&photo)?);
        }
        Ok(freed)
    }
}

/// Times are kept as SQLite's signed integers; 63 bits of milliseconds are enough for any of them.
fn to_column(millis: u64) -> i64 {
    i64::try_from(millis).unwrap_or(i64::MAX)
}

fn from_column(number: i64) -> u64 {
    u64::try_from(number).unwrap_or(0)
}
