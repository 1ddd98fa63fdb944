//! Pixels to JPEG: nothing but the picture, no notes of any kind.

use jpeg_encoder::{ColorType, Encoder};

use crate::pixels::{Layout, Pixels};
use crate::refusal::Refusal;

/// A JPEG of the given quality (1 to 100). It holds the tables and the pixels and nothing else.
///
/// # Errors
/// Only for a side above 65 535, which the limits rule out.
pub(crate) fn jpeg(pixels: &Pixels, quality: u8) -> Result<Vec<u8>, Refusal> {
    let failed = || Refusal::broken("it can't be written as JPEG");
    let (width, height) = (u16::try_from(pixels.width), u16::try_from(pixels.height));
    let (Ok(width), Ok(height)) = (width, height) else { return Err(failed()) };
    let kind = match pixels.layout {
        Layout::Grey => ColorType::Luma,
        Layout::Rgb => ColorType::Rgb,
        Layout::Rgba => ColorType::Rgba,
    };
    let mut bytes = Vec::with_capacity(pixels.samples.len() / 8 + 1024);
    Encoder::new(&mut bytes, quality).encode(&pixels.samples, width, height, kind).map_err(|_| failed())?;
    Ok(bytes)
}
