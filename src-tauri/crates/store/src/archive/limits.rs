//! What an archive may cost: the caps that keep a hostile file from filling memory or disk. Declared sizes are checked
//! first, and what really comes out again. What an entry and a job may be holds for what is entered here too
//! (`ledger/written.rs`): nothing is kept that could not leave.

/// The largest archive, and the most bytes that may come out of one: 2 GiB, some 400 photos of a good phone.
pub const MAX_ARCHIVE_BYTES: u64 = 2 * 1024 * 1024 * 1024;
/// The most bytes of all edits of a job, without blanks. An edit takes about 200.
pub const MAX_JOB_BYTES: u64 = 32 * 1024 * 1024;
/// The largest `job.json`: it holds the ids too, and one written by hand or by an earlier version has blanks.
pub(super) const MAX_JOB_FILE_BYTES: u64 = 64 * 1024 * 1024;
/// The most edits of one job: a year of one edit every five minutes.
pub const MAX_EDITS: usize = 100_000;
/// The most photos of the archive of one job.
pub const MAX_PHOTOS: usize = 5_000;
/// The largest photo, the same as is taken in from a camera.
pub const MAX_PHOTO_BYTES: u64 = 40 * 1024 * 1024;
/// The latest time an edit may carry: the year 4199. It leaves room for ids after it, which a hostile one near the end
/// of all ids would not.
pub(crate) const MAX_EDIT_MILLIS: u64 = 1 << 46;
/// The longest single entry: a spec sheet or a proposal with all that it names has a tenth of it.
pub(crate) const MAX_ENTRY_BYTES: usize = 1024 * 1024;
/// The longest single entry of a version that this one does not know.
pub(crate) const MAX_UNKNOWN_BYTES: usize = 256 * 1024;
/// The most values in all entries of versions that this one does not know: lists, maps and what stands in them. A value of
/// three bytes in a file may take several hundred in memory.
pub(crate) const MAX_UNKNOWN_VALUES: usize = 200_000;
/// The most values of one entry that are read at all: what no entry may have is known by reading it.
pub(super) const MAX_READ_VALUES: usize = 200_000;
/// The most bytes of one entry that are ever held, blanks and all.
pub(super) const MAX_READ_ENTRY_BYTES: u64 = 8 * 1024 * 1024;
/// The largest thing on the shelf, the most values of one, and the most bytes of all together.
pub(crate) const MAX_SHELF_LINE_BYTES: usize = 2 * 1024 * 1024;
pub(crate) const MAX_SHELF_LINE_VALUES: usize = 50_000;
pub(crate) const MAX_SHELF_BYTES: u64 = 48 * 1024 * 1024;
/// The largest `shop.json`: the shelf, and a line for each job and each photo.
pub(super) const MAX_SHOP_FILE_BYTES: u64 = 96 * 1024 * 1024;
/// The most files in an archive of a shop: jobs and photos.
pub(super) const MAX_SHOP_ENTRIES: usize = 50_000;
