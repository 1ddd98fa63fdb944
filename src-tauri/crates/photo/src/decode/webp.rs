//! WebP: what messengers and browsers save.

use std::io::Cursor;

use image_webp::{DecodingError, WebPDecoder};

use super::Decoded;
use crate::limits::{self, MAX_DECODER_BYTES};
use crate::pixels::{Layout, Pixels};
use crate::refusal::Refusal;

pub(super) fn decode(bytes: &[u8]) -> Result<Decoded, Refusal> {
    check_whole(bytes)?;
    let mut decoder = WebPDecoder::new(Cursor::new(bytes)).map_err(refusal)?;
    decoder.set_memory_limit(MAX_DECODER_BYTES);
    let (width, height) = decoder.dimensions();
    limits::check_size(width, height)?;

    let size = decoder.output_buffer_size().ok_or_else(|| Refusal::broken("its size can't be worked out"))?;
    let mut samples = vec![0; size];
    decoder.read_image(&mut samples).map_err(refusal)?;
    let layout = if decoder.has_alpha() { Layout::Rgba } else { Layout::Rgb };
    Ok(Decoded {
        pixels: Pixels { width, height, layout, samples },
        // Notes that can't be read are as good as none.
        exif: decoder.exif_metadata().unwrap_or(None),
        profile: decoder.icc_profile().unwrap_or(None),
    })
}

/// The file says how long it is. The decoder does not compare, and would make up what is missing.
fn check_whole(bytes: &[u8]) -> Result<(), Refusal> {
    let [_, _, _, _, a, b, c, d, rest @ ..] = bytes else { return Err(Refusal::incomplete()) };
    let stated = u64::from(u32::from_le_bytes([*a, *b, *c, *d]));
    // Some writers count the padding byte at the end and leave it out.
    if stated > rest.len() as u64 + 1 { Err(Refusal::incomplete()) } else { Ok(()) }
}

fn refusal(error: DecodingError) -> Refusal {
    match error {
        DecodingError::IoError(error) if error.kind() == std::io::ErrorKind::UnexpectedEof => Refusal::incomplete(),
        DecodingError::MemoryLimitExceeded | DecodingError::ImageTooLarge => {
            Refusal::broken("it asks for more memory than a picture of its size needs")
        }
        _ => Refusal::broken("its compressed data contradict themselves"),
    }
}
