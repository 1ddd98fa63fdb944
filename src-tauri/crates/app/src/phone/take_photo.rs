//! A photo from the camera, into a file of ours.

use serde::{Deserialize, Serialize};
use wearbook_store::ShotId;

use super::{Phone, Refused};
use crate::{Error, Wearbook};

/// So much must be free before the camera opens, in bytes: a photo of 48 megapixels, its two smaller forms, and some.
const ROOM: u64 = 64 * 1024 * 1024;

/// For which shot.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(rename = "TakePhoto"))]
#[serde(deny_unknown_fields)]
pub struct Asked {
    /// It was begun by the action `shot_begin`.
    pub shot: ShotId,
}

/// How it went.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Photographed {
    /// The photo is on the disk, and is noted as taken.
    Taken,
    /// The person changed their mind.
    Cancelled,
}

/// The file decides, whatever the device says: a camera that reports a failure may have written a photo, and one that
/// reports none may have written nothing.
pub(super) fn act(book: &Wearbook, phone: &dyn Phone, Asked { shot }: &Asked) -> Result<Photographed, Error> {
    let closed = phone.take_photo(&book.shot_file(shot)?, ROOM);
    if closed == Err(Refused::CameraOpen) {
        // That camera is still at it.
        return Err(Refused::CameraOpen.into());
    }
    if book.end_shot(shot)? {
        return Ok(Photographed::Taken);
    }
    closed?;
    Ok(Photographed::Cancelled)
}
