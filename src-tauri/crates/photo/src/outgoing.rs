//! What may leave the shop: the picture, and nothing that tells where, when or with what it was taken.

use crate::decode::{decode, never_panics};
use crate::develop::{QUALITY, print};
use crate::encode;
use crate::limits::MAX_SIDE;
use crate::refusal::Refusal;
use crate::resize::smaller;

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

/// As [`outgoing`], and as fine as `max_bytes` allow: first the quality gives way, then the size. A picture that would
/// have to become too coarse to judge a scratch by stays larger than asked.
///
/// # Errors
/// As [`check`](crate::check).
pub fn outgoing_within(bytes: &[u8], max_side: u32, max_bytes: usize) -> Result<Vec<u8>, Refusal> {
    let picture = decode(bytes)?;
    never_panics(|| {
        let whole = print(picture, max_side.clamp(1, MAX_SIDE))?;
        let mut written = encode::jpeg(&whole, QUALITY)?;
        let first = written.len();
        // Not every step is tried: what is known of the first tells which are too large by far.
        let may_fit = |step: &&Step| first.saturating_mul(step.percent) / 100 <= max_bytes.saturating_mul(5) / 4;
        let last = STEPS.last().into_iter();
        for step in STEPS.iter().filter(may_fit).chain(last) {
            if written.len() <= max_bytes {
                break;
            }
            let smaller = smaller(&whole, step.side.min(max_side.max(1)))?;
            written = encode::jpeg(smaller.as_ref().unwrap_or(&whole), step.quality)?;
        }
        Ok(written)
    })
}

/// A size and quality to try.
struct Step {
    side: u32,
    quality: u8,
    /// About how large it comes out, of 100 for 1280 pixels at [`QUALITY`]; tried on photos of metal.
    percent: usize,
}

/// From fine to coarse; the last is still 170 dots to the inch where the report prints it 60 mm wide.
const STEPS: [Step; 8] = [
    Step { side: 1280, quality: 80, percent: 70 },
    Step { side: 1024, quality: 80, percent: 45 },
    Step { side: 880, quality: 76, percent: 30 },
    Step { side: 760, quality: 72, percent: 20 },
    Step { side: 640, quality: 70, percent: 14 },
    Step { side: 560, quality: 62, percent: 9 },
    Step { side: 480, quality: 55, percent: 6 },
    Step { side: 400, quality: 45, percent: 4 },
];
