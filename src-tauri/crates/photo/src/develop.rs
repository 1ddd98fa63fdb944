//! From a file to what is shown: facts, a picture for the screen and a small one for lists.

use crate::colour;
use crate::decode::{Picture, decode, never_panics};
use crate::encode;
use crate::orient::{Orientation, upright};
use crate::pixels::Pixels;
use crate::refusal::Refusal;
use crate::resize::smaller;
use crate::sharpness::sharpness;
use crate::sniff::Format;

/// The long side of the picture for the screen and the report, in pixels.
pub const SCREEN_SIDE: u32 = 2048;

/// The long side of the picture for lists, in pixels.
pub const THUMB_SIDE: u32 = 480;

/// The size that the picture for lists should not exceed, in bytes: a list of a hundred is then read in an instant.
pub const THUMB_BYTES: usize = 40 * 1024;

/// JPEG quality of what is looked at and what leaves the shop: scratches stay sharp.
pub(crate) const QUALITY: u8 = 88;

/// JPEG qualities of the picture for lists; the first that stays below [`THUMB_BYTES`] is used, else the last.
const THUMB_QUALITIES: [u8; 4] = [80, 70, 55, 40];

/// What is known of a picture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Facts {
    /// What the file is.
    pub format: Format,
    /// Width in pixels of the upright picture, full size.
    pub width: u32,
    /// Height in pixels of the upright picture, full size.
    pub height: u32,
    /// How the stored pixels must be turned.
    pub orientation: Orientation,
    /// When it was taken by the camera's clock, `YYYY-MM-DDTHH:MM:SS` without a time zone, if the file says so.
    pub taken_at: Option<String>,
}

/// What is shown of a picture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Developed {
    /// What is known of the original.
    pub facts: Facts,
    /// JPEG, upright, sRGB, without notes, long side at most [`SCREEN_SIDE`]; never larger than the original.
    pub screen: Vec<u8>,
    /// The same with the long side at most [`THUMB_SIDE`], and normally at most [`THUMB_BYTES`].
    pub thumb: Vec<u8>,
    /// How sharp it is at the size of print: the higher the sharper, to be compared with pictures of the same thing.
    pub sharpness: u16,
}

/// Decodes the whole picture and says what it is.
///
/// # Errors
/// A [`Refusal`] if it can't be taken: not JPEG, PNG or WebP, too large, cut off, damaged.
pub fn check(bytes: &[u8]) -> Result<Facts, Refusal> {
    decode(bytes).map(|picture| facts(&picture))
}

/// Makes the two pictures that are shown. Decodes once.
///
/// # Errors
/// As [`check`].
pub fn develop(bytes: &[u8]) -> Result<Developed, Refusal> {
    let picture = decode(bytes)?;
    let facts = facts(&picture);
    never_panics(|| {
        let screen = print(picture, SCREEN_SIDE)?;
        let thumb = smaller(&screen, THUMB_SIDE)?;
        let (screen, beside) = std::thread::scope(|scope| {
            let beside = scope.spawn(|| Ok((small_jpeg(thumb.as_ref().unwrap_or(&screen))?, sharpness(&screen)?)));
            (encode::jpeg(&screen, QUALITY), beside.join())
        });
        let (thumb, sharpness) = beside.unwrap_or_else(|_| Err(Refusal::broken("it can't be written as JPEG")))?;
        Ok(Developed { facts, screen: screen?, thumb, sharpness })
    })
}

/// The upright sRGB picture on white, its long side at most `max_side`. What is costly (turning, converting) is done to
/// the small picture, and the large one is let go as soon as the small one is there.
pub(crate) fn print(picture: Picture, max_side: u32) -> Result<Pixels, Refusal> {
    let Picture { pixels, notes, profile, .. } = picture;
    let small = smaller(&pixels, max_side)?.unwrap_or(pixels);
    let small = colour::to_srgb(small, profile.as_deref()).on_white();
    Ok(upright(small, notes.orientation))
}

fn small_jpeg(pixels: &Pixels) -> Result<Vec<u8>, Refusal> {
    let mut bytes = Vec::new();
    for quality in THUMB_QUALITIES {
        bytes = encode::jpeg(pixels, quality)?;
        if bytes.len() <= THUMB_BYTES {
            break;
        }
    }
    Ok(bytes)
}

fn facts(picture: &Picture) -> Facts {
    let (width, height) = (picture.pixels.width, picture.pixels.height);
    let orientation = picture.notes.orientation;
    let (width, height) = if orientation.swaps_sides() { (height, width) } else { (width, height) };
    Facts { format: picture.format, width, height, orientation, taken_at: picture.notes.taken_at.clone() }
}
