//! Bytes to pixels, whatever the format.

mod jpeg;
mod jpeg_segments;
mod png;
mod watched;
mod webp;

use std::panic::{AssertUnwindSafe, catch_unwind};

use crate::exif::{self, Notes};
use crate::limits;
use crate::pixels::Pixels;
use crate::refusal::Refusal;
use crate::sniff::{Format, sniff};

/// A whole picture, as stored: not yet turned, not yet converted to sRGB.
#[derive(Debug)]
pub(crate) struct Picture {
    pub(crate) format: Format,
    pub(crate) pixels: Pixels,
    pub(crate) notes: Notes,
    pub(crate) profile: Option<Vec<u8>>,
}

/// What the reader of one format returns: the pixels and the raw blocks that came with them.
struct Decoded {
    pixels: Pixels,
    exif: Option<Vec<u8>>,
    profile: Option<Vec<u8>>,
}

/// Decodes every pixel of a picture.
///
/// # Errors
/// A [`Refusal`] for what is not JPEG, PNG or WebP, is too large, is cut off or damaged.
pub(crate) fn decode(bytes: &[u8]) -> Result<Picture, Refusal> {
    limits::check_bytes(bytes)?;
    let format = sniff(bytes);
    if let Some(refusal) = format.refusal() {
        return Err(refusal);
    }
    never_panics(|| {
        let decoded = match format {
            Format::Png => png::decode(bytes),
            Format::WebP => webp::decode(bytes),
            _ => jpeg::decode(bytes),
        }?;
        let notes = exif::read(decoded.exif.as_deref());
        Ok(Picture { format, pixels: decoded.pixels, notes, profile: decoded.profile })
    })
}

/// The decoders are other people's code and the bytes are hostile: a panic in there must not end the app.
pub(crate) fn never_panics<T>(work: impl FnOnce() -> Result<T, Refusal>) -> Result<T, Refusal> {
    catch_unwind(AssertUnwindSafe(work))
        .unwrap_or_else(|_| Err(Refusal::broken("reading it failed in an unforeseen way")))
}
