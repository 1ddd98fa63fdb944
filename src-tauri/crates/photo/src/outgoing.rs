//! What may leave the shop: the picture, and nothing that tells where, when or with what it was taken.

use crate::decode::{decode, never_panics};
use crate::develop::{QUALITY, print};
use crate::encode;
use crate::limits::MAX_SIDE;
use crate::refusal::Refusal;

/// An upright sRGB JPEG with its long side at most `max_side` pixels (1 to [`MAX_SIDE`]; never larger than the
/// original). It is written anew from the pixels, so no EXIF, XMP, IPTC, comment, profile or preview picture can come
/// along.
///
/// # Errors
/// As [`check`](crate::check).
pub fn outgoing(bytes: &[u8], max_side: u32) -> Result<Vec<u8>, Refusal> {
    let picture = decode(bytes)?;
    never_panics(|| encode::jpeg(&print(picture, max_side.clamp(1, MAX_SIDE))?, QUALITY))
}
