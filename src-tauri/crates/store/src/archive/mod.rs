//! Archives: a job and its photos in one file, for another device, for a backup, for the customer's records; or the whole
//! shop.
//!
//! A `.wearbook` file is a zip, all stored as it is: of a job `job.json` and `photos/<sha256>.<jpg|png|webp>`, of a shop
//! `shop.json`, `jobs/<job>.json` and the same photos. The same content gives the same bytes: sorted, without times, the same
//! on every system.

mod extent;
mod give_away;
mod import;
mod job_file;
mod keep;
mod limits;
mod look;
mod read;
mod shelf_union;
mod shop_file;
mod shop_held;
mod shop_import;
mod shop_write;
mod source;
mod verify;
mod write;

pub(crate) use extent::Extent;
pub use give_away::{GivenAway, PhotoCleaning};
pub use import::{Imported, PhotoCheck};
pub use job_file::{JobFile, StandIns, read_job_file};
pub use limits::{MAX_ARCHIVE_BYTES, MAX_EDITS, MAX_JOB_BYTES, MAX_PHOTO_BYTES, MAX_PHOTOS};
pub(crate) use limits::{
    MAX_EDIT_MILLIS, MAX_ENTRY_BYTES, MAX_SHELF_BYTES, MAX_SHELF_LINE_BYTES, MAX_SHELF_LINE_VALUES, MAX_UNKNOWN_BYTES,
    MAX_UNKNOWN_VALUES,
};
pub use shelf_union::{ShelfDiffers, ShelfHolds};
pub use shop_held::{ArchiveOf, Held, JobAsOf, archive_of};
pub use shop_import::{ShopTaken, ShopTaking};
pub use shop_write::{ShopAsked, ShopWritten};
pub use verify::{Verified, verify};

/// The entry with the job.
const JOB_ENTRY: &str = "job.json";
/// The entry with what the shop has beside its jobs.
const SHOP_ENTRY: &str = "shop.json";
/// The folder of a shop's jobs, with its slash.
const JOB_FOLDER: &str = "jobs/";
/// The folder of the photos, with its slash.
const PHOTO_FOLDER: &str = "photos/";
