//! A picture as it is shown, or as it came.

use serde::Deserialize;
use wearbook_core::job::PhotoId;
use wearbook_store::{ShownSize, StoreError};

use crate::{Error, File, Wearbook};

/// Which picture.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The photo.
    pub photo: PhotoId,
    /// How large.
    pub size: Size,
}

/// How large a picture is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(rename = "PhotoSize"))]
#[serde(rename_all = "kebab-case")]
pub enum Size {
    /// For lists.
    Thumb,
    /// For looking at.
    Screen,
    /// The bytes as they came.
    Original,
}

/// The picture.
pub type Reply = File;

/// Answers a picture.
///
/// # Errors
/// `no-such-photo`, `photo-damaged`, and what the store says.
pub fn act(book: &Wearbook, Arguments { photo, size }: Arguments) -> Result<Reply, Error> {
    let jpeg = |bytes| File { bytes, mime: "image/jpeg", file_name: None };
    match size {
        Size::Thumb => book.shown(&photo, ShownSize::Thumb).map(jpeg),
        Size::Screen => book.shown(&photo, ShownSize::Screen).map(jpeg),
        Size::Original => original(book, &photo),
    }
}

fn original(book: &Wearbook, photo: &PhotoId) -> Result<File, Error> {
    let row = book.store.read(|ledger| ledger.picture(photo))?.ok_or(StoreError::NoSuchPhoto)?;
    let format = row.facts.format;
    let file_name = Some(format!("{}.{}", photo.as_str(), format.extension()));
    Ok(File { bytes: book.store.picture(photo)?, mime: format.mime(), file_name })
}
