//! Archives: a job and its photos in one file, for another device, for a backup, for the customer's records.
//!
//! A `.wearbook` file is a zip with `job.json` and `photos/<sha256>.<jpg|png|webp>`, all stored as they are. The same
//! content gives the same bytes: sorted, without times, the same on every system.

mod import;
mod job_file;
mod limits;
mod read;
mod write;

pub use import::{Imported, PhotoCheck};
pub use job_file::{JobFile, read_job_file};
pub use limits::{MAX_ARCHIVE_BYTES, MAX_EDITS, MAX_JOB_BYTES, MAX_PHOTO_BYTES, MAX_PHOTOS};

/// The entry with the job.
const JOB_ENTRY: &str = "job.json";
/// The folder of the photos, with its slash.
const PHOTO_FOLDER: &str = "photos/";
