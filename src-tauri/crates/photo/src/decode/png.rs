//! PNG: screenshots, and photos that went through an editor.

use std::io::Cursor;

use png::{ColorType, DecodeOptions, Decoder, DecodingError, Limits, Reader, Transformations};

use super::Decoded;
use crate::limits::{self, MAX_DECODER_BYTES};
use crate::pixels::{Layout, Pixels};
use crate::refusal::Refusal;

pub(super) fn decode(bytes: &[u8]) -> Result<Decoded, Refusal> {
    let mut options = DecodeOptions::default();
    options.set_ignore_text_chunk(true);
    let mut decoder = Decoder::new_with_options(Cursor::new(bytes), options);
    decoder.set_limits(Limits { bytes: MAX_DECODER_BYTES });
    // Palettes become colours, and 16 bits become 8 row by row: the whole picture never stands in memory with 16.
    decoder.set_transformations(Transformations::EXPAND | Transformations::STRIP_16);
    let header = decoder.read_header_info().map_err(refusal)?;
    let (width, height) = (header.width, header.height);
    limits::check_size(width, height)?;

    let mut reader = decoder.read_info().map_err(refusal)?;
    let size = reader.output_buffer_size().ok_or_else(|| Refusal::broken("its size can't be worked out"))?;
    let mut samples = vec![0; size];
    read_pixels(&mut reader, &mut samples).map_err(refusal)?;
    // The camera's notes may come after the pixels. That the end is missing matters to nobody.
    let _ = reader.finish();

    let profile = reader.info().icc_profile.as_ref().map(|profile| profile.to_vec());
    let exif = reader.info().exif_metadata.as_ref().map(|exif| exif.to_vec());
    let (layout, samples) = match reader.output_color_type().0 {
        ColorType::Grayscale => (Layout::Grey, samples),
        ColorType::GrayscaleAlpha => (Layout::Rgba, grey_to_colour(&samples)),
        ColorType::Rgba => (Layout::Rgba, samples),
        ColorType::Rgb | ColorType::Indexed => (Layout::Rgb, samples),
    };
    if samples.len() as u64 != u64::from(width) * u64::from(height) * layout.bytes() as u64 {
        return Err(Refusal::broken("its pixels do not fit its size"));
    }
    Ok(Decoded { pixels: Pixels { width, height, layout, samples }, exif, profile })
}

/// Reads the pixels and, if they come in ordinary order, nothing beyond: a file may end right after them.
fn read_pixels(reader: &mut Reader<Cursor<&[u8]>>, samples: &mut [u8]) -> Result<(), DecodingError> {
    let line_size = reader.output_line_size(reader.info().width).unwrap_or(0);
    if reader.info().interlaced || line_size == 0 {
        return reader.next_frame(samples).map(|_| ());
    }
    samples.chunks_exact_mut(line_size).try_for_each(|row| reader.read_row(row).map(|_| ()))
}

fn grey_to_colour(samples: &[u8]) -> Vec<u8> {
    samples.as_chunks::<2>().0.iter().flat_map(|&[grey, opacity]| [grey, grey, grey, opacity]).collect()
}

fn refusal(error: DecodingError) -> Refusal {
    match error {
        DecodingError::IoError(error) if error.kind() == std::io::ErrorKind::UnexpectedEof => Refusal::incomplete(),
        DecodingError::LimitsExceeded => Refusal::broken("it asks for more memory than a picture of its size needs"),
        _ => Refusal::broken("its compressed data contradict themselves"),
    }
}
