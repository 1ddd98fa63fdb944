//! The whole shop in one file.

use crate::archive::ARCHIVE_MIME;
use crate::{Error, File, Wearbook};

/// Nothing else to be told.
pub type Arguments = super::Awaited;
/// The archive.
pub type Reply = File;

/// Exports it, whole in memory: for whoever can be given no file.
///
/// # Errors
/// `archive-refused` if it is more than a file can hold; `stopped`; and what the store says.
pub fn act(book: &Wearbook, super::Awaited { way }: Arguments) -> Result<Reply, Error> {
    let cannot = |error: std::io::Error| Error::from(wearbook_store::StoreError::from(error));
    let folder = tempfile::tempdir().map_err(cannot)?;
    let path = folder.path().join("shop.wearbook");
    book.save_shop(&path, way)?;
    book.note_shop_saved()?;
    let bytes = std::fs::read(&path).map_err(cannot)?;
    Ok(File { bytes, mime: ARCHIVE_MIME, file_name: Some(book.shop_archive_name()) })
}
