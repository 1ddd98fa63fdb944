//! Builds small pictures with notes, and takes JPEG files apart, for the tests.

use std::io::Cursor;

use image::codecs::{jpeg::JpegEncoder, png::PngEncoder, webp::WebPEncoder};
use image::{DynamicImage, ExtendedColorType, ImageEncoder, ImageFormat, Rgb, RgbImage};
use jpeg_encoder::{ColorType, Encoder};

/// 64 × 48, a colour in each quarter: no two ways of turning it look the same.
pub(crate) fn quarters() -> RgbImage {
    RgbImage::from_fn(64, 48, |x, y| match (x < 32, y < 24) {
        (true, true) => Rgb([220, 40, 40]),
        (false, true) => Rgb([40, 180, 60]),
        (true, false) => Rgb([40, 60, 200]),
        (false, false) => Rgb([240, 240, 240]),
    })
}

/// 96 × 80, detail everywhere down to the last corner.
pub(crate) fn busy() -> RgbImage {
    RgbImage::from_fn(96, 80, |x, y| {
        let mixed = (x * 2_654_435 + y * 40_503 + x * y * 977) >> 4;
        Rgb([mixed as u8, (mixed >> 5) as u8, (mixed >> 9) as u8])
    })
}

pub(crate) fn encoded(picture: &DynamicImage, format: ImageFormat) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    picture.write_to(&mut bytes, format).unwrap();
    bytes.into_inner()
}

pub(crate) fn jpeg(picture: &RgbImage) -> Vec<u8> {
    let mut bytes = Vec::new();
    JpegEncoder::new_with_quality(&mut bytes, 95).encode_image(picture).unwrap();
    bytes
}

pub(crate) fn png(picture: &RgbImage) -> Vec<u8> {
    encoded(&picture.clone().into(), ImageFormat::Png)
}

pub(crate) fn webp(picture: &RgbImage) -> Vec<u8> {
    encoded(&picture.clone().into(), ImageFormat::WebP)
}

/// A JPEG of a kind that `image` does not write.
pub(crate) fn jpeg_with(picture: &RgbImage, set: impl FnOnce(&mut Encoder<&mut Vec<u8>>)) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = Encoder::new(&mut bytes, 95);
    set(&mut encoder);
    let (width, height) = (picture.width() as u16, picture.height() as u16);
    encoder.encode(picture.as_raw(), width, height, ColorType::Rgb).unwrap();
    bytes
}

/// A picture with an EXIF block: orientation, time taken, a position.
pub(crate) fn with_exif(picture: &RgbImage, format: ImageFormat, orientation: u16, taken: &str) -> Vec<u8> {
    with_notes(picture, format, |encoder| encoder.set_exif_metadata(exif(orientation, taken)).unwrap())
}

/// A picture with a colour profile.
pub(crate) fn with_profile(picture: &RgbImage, format: ImageFormat, profile: &[u8]) -> Vec<u8> {
    with_notes(picture, format, |encoder| encoder.set_icc_profile(profile.to_vec()).unwrap())
}

fn with_notes(picture: &RgbImage, format: ImageFormat, note: impl FnOnce(&mut dyn Notes)) -> Vec<u8> {
    let mut bytes = Vec::new();
    match format {
        ImageFormat::Jpeg => write(picture, JpegEncoder::new_with_quality(&mut bytes, 95), note),
        ImageFormat::Png => write(picture, PngEncoder::new(&mut bytes), note),
        _ => write(picture, WebPEncoder::new_lossless(&mut bytes), note),
    }
    bytes
}

fn write(picture: &RgbImage, mut encoder: impl ImageEncoder, note: impl FnOnce(&mut dyn Notes)) {
    note(&mut encoder);
    encoder.write_image(picture.as_raw(), picture.width(), picture.height(), ExtendedColorType::Rgb8).unwrap();
}

/// What every encoder can be told, in a form that can be passed around.
pub(crate) trait Notes {
    fn set_exif_metadata(&mut self, exif: Vec<u8>) -> Result<(), image::error::UnsupportedError>;
    fn set_icc_profile(&mut self, profile: Vec<u8>) -> Result<(), image::error::UnsupportedError>;
}

impl<E: ImageEncoder> Notes for E {
    fn set_exif_metadata(&mut self, exif: Vec<u8>) -> Result<(), image::error::UnsupportedError> {
        ImageEncoder::set_exif_metadata(self, exif)
    }
    fn set_icc_profile(&mut self, profile: Vec<u8>) -> Result<(), image::error::UnsupportedError> {
        ImageEncoder::set_icc_profile(self, profile)
    }
}

/// An EXIF block as a camera writes it (a small TIFF file, little-endian), by hand.
fn exif(orientation: u16, taken: &str) -> Vec<u8> {
    const SHORT: u16 = 3;
    const LONG: u16 = 4;
    const ASCII: u16 = 2;
    let entry = |tag: u16, kind: u16, count: u32, value: u32| {
        [&tag.to_le_bytes()[..], &kind.to_le_bytes(), &count.to_le_bytes(), &value.to_le_bytes()].concat()
    };
    // Header 8, directory of three 42, then two directories of one 18 each, then the text.
    let (camera, place, text) = (50, 68, 86);
    let taken = [taken.as_bytes(), b"\0"].concat();
    [
        &b"II*\0\x08\0\0\0\x03\0"[..],
        &entry(0x0112, SHORT, 1, u32::from(orientation)),
        &entry(0x8769, LONG, 1, camera),
        &entry(0x8825, LONG, 1, place),
        b"\0\0\0\0\x01\0",
        &entry(0x9003, ASCII, taken.len() as u32, text),
        b"\0\0\0\0\x01\0",
        &entry(0x0001, ASCII, 2, u32::from_le_bytes(*b"N\0\0\0")),
        b"\0\0\0\0",
        &taken,
    ]
    .concat()
}

/// A JPEG with one more segment right after its start.
pub(crate) fn with_segment(jpeg: &[u8], marker: u8, body: &[u8]) -> Vec<u8> {
    let length = (body.len() as u16 + 2).to_be_bytes();
    [&jpeg[..2], &[0xFF, marker], &length, body, &jpeg[2..]].concat()
}

/// A JPEG without the segments of one kind.
pub(crate) fn without_segment(jpeg: &[u8], marker: u8) -> Vec<u8> {
    let mut kept = jpeg[..2].to_vec();
    let mut at = 2;
    while jpeg[at + 1] != 0xDA {
        let end = at + 2 + usize::from(u16::from_be_bytes([jpeg[at + 2], jpeg[at + 3]]));
        if jpeg[at + 1] != marker {
            kept.extend(&jpeg[at..end]);
        }
        at = end;
    }
    kept.extend(&jpeg[at..]);
    kept
}

/// The markers of the segments before the compressed data.
pub(crate) fn segments(jpeg: &[u8]) -> Vec<u8> {
    let mut found = Vec::new();
    let mut at = 2;
    while jpeg[at + 1] != 0xDA {
        assert_eq!(jpeg[at], 0xFF);
        found.push(jpeg[at + 1]);
        at += 2 + usize::from(u16::from_be_bytes([jpeg[at + 2], jpeg[at + 3]]));
    }
    found
}

/// The check sum of a PNG chunk (PNG specification, annex D).
pub(crate) fn crc(bytes: &[u8]) -> u32 {
    let all = bytes.iter().fold(u32::MAX, |crc, byte| {
        (0..8).fold(crc ^ u32::from(*byte), |crc, _| if crc & 1 == 1 { 0xEDB8_8320 ^ (crc >> 1) } else { crc >> 1 })
    });
    !all
}
