//! JPEG: what cameras write, in all the ways in which they write it.

use std::cell::Cell;

use zune_core::colorspace::ColorSpace;
use zune_core::options::DecoderOptions;
use zune_jpeg::JpegDecoder;

use super::Decoded;
use super::jpeg_segments::{Frame, Segments};
use super::watched::{Watched, ran_out};
use crate::limits::{self, MAX_SCANS, MAX_SIDE};
use crate::pixels::{Layout, Pixels};
use crate::refusal::Refusal;

/// This many zero bytes at the end of a file without an end marker are a copy that broke off, not compressed data.
const ZERO_TAIL: usize = 64;

pub(super) fn decode(bytes: &[u8]) -> Result<Decoded, Refusal> {
    let segments = Segments::walk(bytes);
    let Some(frame) = &segments.frame else {
        return Err(if segments.ended { Refusal::broken("it has no frame header") } else { Refusal::incomplete() });
    };
    check_kind(frame)?;
    limits::check_size(frame.width, frame.height)?;
    check_scans(&segments, frame)?;

    let (out, layout) = output(&segments, frame)?;
    let options = DecoderOptions::default()
        // Lenient would mean: what can't be read is painted grey, without a word.
        .set_strict_mode(true)
        .set_max_width(MAX_SIDE as usize)
        .set_max_height(MAX_SIDE as usize)
        .jpeg_set_max_scans(MAX_SCANS)
        .jpeg_set_out_colorspace(out);
    let fetches = Cell::new(0);
    let source = Watched::new(&segments.clean, segments.filler_from, &fetches);
    let decoded = JpegDecoder::new_with_options(source, options).decode();
    if ran_out(&fetches) {
        return Err(Refusal::incomplete());
    }
    let samples = decoded.map_err(|_| Refusal::broken("its compressed data contradict themselves"))?;
    if samples.len() as u64 != u64::from(frame.width) * u64::from(frame.height) * out.num_components() as u64 {
        return Err(Refusal::broken("its pixels do not fit its size"));
    }
    let samples = if out == ColorSpace::CMYK { ink_to_light(&samples) } else { samples };
    let pixels = Pixels { width: frame.width, height: frame.height, layout, samples };
    // The profile of a four-ink picture describes inks, and those are gone.
    let profile = if frame.components.len() == 4 { None } else { segments.profile() };
    Ok(Decoded { pixels, profile, exif: segments.exif })
}

/// Refuses the kinds of JPEG that are not read: other than 8 bits a sample, lossless, hierarchical, arithmetic coding.
fn check_kind(frame: &Frame) -> Result<(), Refusal> {
    if frame.precision != 8 {
        return Err(Refusal::new(
            "photo-deep-jpeg",
            format!(
                "This is a JPEG with {} bits per colour, which can't be read here: save it as an ordinary 8-bit JPEG.",
                frame.precision
            ),
        ));
    }
    match frame.process {
        0xC0..=0xC2 => Ok(()),
        _ => Err(Refusal::new(
            "photo-rare-jpeg",
            "This is a rare kind of JPEG (lossless or arithmetic coding), which can't be read here: save it as an ordinary JPEG.",
        )),
    }
}

/// Refuses what the order of the segments already shows to be incomplete.
fn check_scans(segments: &Segments, frame: &Frame) -> Result<(), Refusal> {
    if segments.scans > MAX_SCANS {
        return Err(Refusal::new(
            "photo-rare-jpeg",
            format!(
                "This JPEG is built from more than {MAX_SCANS} passes, which no camera does: save it as an ordinary JPEG."
            ),
        ));
    }
    let one_scan = frame.process != 0xC2 && usize::from(segments.scan_components) == frame.components.len();
    if !segments.ended {
        let data = segments.clean.get(..segments.filler_from).unwrap_or_default();
        let zeros = data.iter().rev().take_while(|byte| **byte == 0).count();
        // Without an end marker only a picture in one pass can be known to be whole.
        if !one_scan || zeros >= ZERO_TAIL {
            return Err(Refusal::incomplete());
        }
    }
    // After a restart marker the decoder does not ask for missing data, so the markers are counted.
    let intervals = frame.mcus().div_ceil(segments.restart_interval.max(1));
    if one_scan && segments.restart_interval > 0 && segments.restarts + 1 < intervals {
        return Err(Refusal::incomplete());
    }
    Ok(())
}

/// What to ask of the decoder, and what comes out in the end.
fn output(segments: &Segments, frame: &Frame) -> Result<(ColorSpace, Layout), Refusal> {
    let ids: Vec<u8> = frame.components.iter().map(|component| component.0).collect();
    match (ids.as_slice(), segments.adobe) {
        ([_], _) => Ok((ColorSpace::Luma, Layout::Grey)),
        // Three components that are red, green and blue already. The decoder takes them for luminance and colour
        // differences, and passes them on unchanged when asked for those.
        ([_, _, _], Some(0)) if ids != *b"RGB" => Ok((ColorSpace::YCbCr, Layout::Rgb)),
        ([_, _, _], _) => Ok((ColorSpace::RGB, Layout::Rgb)),
        // Without an Adobe segment full ink is 255. With one it is 0, and the decoder knows that.
        ([_, _, _, _], None) => Ok((ColorSpace::CMYK, Layout::Rgb)),
        ([_, _, _, _], Some(_)) => Ok((ColorSpace::RGB, Layout::Rgb)),
        _ => Err(Refusal::broken("it has neither one, three nor four colours")),
    }
}

/// Four inks (0 = none) to red, green and blue.
fn ink_to_light(inks: &[u8]) -> Vec<u8> {
    let light = |ink: u8, black: u8| {
        let product = u32::from(255 - ink) * u32::from(255 - black);
        ((product + 127) / 255).min(255) as u8
    };
    inks.as_chunks::<4>().0.iter().flat_map(|&[c, m, y, k]| [light(c, k), light(m, k), light(y, k)]).collect()
}
