//! Pictures built here, with other encoders than the crate's own where there are any: what must be taken, what must be
//! refused, and that nothing makes it panic.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "a test that fails is meant to panic"
)]

mod build;

use std::time::{Duration, Instant};

use build::{jpeg, jpeg_with, png, quarters, segments, webp, with_exif, with_segment};
use image::metadata::Orientation;
use image::{DynamicImage, GrayAlphaImage, ImageFormat, RgbImage, RgbaImage};
use jpeg_encoder::{ColorType, Encoder};
use proptest::prelude::*;
use wearbook_photo::{Format, MAX_BYTES, SCREEN_SIDE, THUMB_BYTES, check, develop, outgoing};

fn shown(bytes: &[u8]) -> RgbImage {
    image::load_from_memory(&develop(bytes).unwrap().screen).unwrap().into_rgb8()
}

#[track_caller]
fn check_same(found: &RgbImage, expected: &RgbImage) {
    assert_eq!(found.dimensions(), expected.dimensions());
    let sum: u64 = found.as_raw().iter().zip(expected.as_raw()).map(|(a, b)| u64::from(a.abs_diff(*b))).sum();
    let mean = sum as f64 / found.as_raw().len() as f64;
    assert!(mean < 4.0, "differs by {mean:.2} of 255");
}

#[track_caller]
fn check_refused(bytes: &[u8], code: &str) {
    let start = Instant::now();
    let refusal = check(bytes).expect_err(code);
    assert_eq!(refusal.code(), code, "{refusal}");
    assert_eq!(develop(bytes).unwrap_err(), refusal);
    assert_eq!(outgoing(bytes, 1000).unwrap_err(), refusal);
    assert!(start.elapsed() < Duration::from_secs(1), "took {:?}", start.elapsed());
}

/// Every orientation in every format, compared with what another crate's turning makes of the stored pixels.
#[test]
fn upright() {
    let stored = quarters();
    for exif in 0..=9_u16 {
        let mut expected = DynamicImage::ImageRgb8(stored.clone());
        expected.apply_orientation(Orientation::from_exif(exif as u8).unwrap_or(Orientation::NoTransforms));
        let expected = expected.into_rgb8();
        for format in [ImageFormat::Jpeg, ImageFormat::Png, ImageFormat::WebP] {
            let bytes = with_exif(&stored, format, exif, "2026:03:14 09:26:53");
            check_same(&shown(&bytes), &expected);
            let facts = check(&bytes).unwrap();
            assert_eq!((facts.width, facts.height), expected.dimensions());
            assert_eq!(facts.orientation.exif(), if (1..=8).contains(&exif) { exif as u8 } else { 1 });
            assert_eq!(facts.taken_at.as_deref(), Some("2026-03-14T09:26:53"), "{format:?}");
        }
    }
}

#[test]
fn facts() {
    let picture = quarters();
    for (bytes, format) in
        [(jpeg(&picture), Format::Jpeg), (png(&picture), Format::Png), (webp(&picture), Format::WebP)]
    {
        let facts = check(&bytes).unwrap();
        assert_eq!((facts.format, facts.width, facts.height), (format, 64, 48));
        assert_eq!((facts.orientation.exif(), facts.taken_at), (1, None));
    }
    let no_date = with_exif(&picture, ImageFormat::Jpeg, 1, "0000:00:00 00:00:00");
    assert_eq!(check(&no_date).unwrap().taken_at, None);
}

#[test]
fn two_sizes() {
    let noise =
        RgbImage::from_fn(3000, 2000, |x, y| image::Rgb([(x * 7 + y * 13) as u8, (x * y) as u8, (x ^ y) as u8]));
    let developed = develop(&jpeg(&noise)).unwrap();
    let screen = image::load_from_memory(&developed.screen).unwrap();
    let thumb = image::load_from_memory(&developed.thumb).unwrap();
    assert_eq!((screen.width(), screen.height()), (SCREEN_SIDE, 1365));
    assert_eq!((thumb.width(), thumb.height()), (480, 320));
    assert!(developed.thumb.len() <= THUMB_BYTES, "{} bytes", developed.thumb.len());

    let small = develop(&jpeg(&quarters())).unwrap();
    assert_eq!(image::load_from_memory(&small.thumb).unwrap().width(), 64, "a small picture is not blown up");
    let sent = outgoing(&jpeg(&noise), 100).unwrap();
    assert_eq!(image::load_from_memory(&sent).unwrap().width(), 100);
}

#[test]
fn see_through_is_shown_on_white() {
    let red = RgbaImage::from_fn(40, 40, |x, _| image::Rgba([200, 0, 0, if x < 20 { 255 } else { 0 }]));
    let grey = GrayAlphaImage::from_fn(40, 40, |x, _| image::LumaA([90, if x < 20 { 255 } else { 0 }]));
    for (picture, solid) in [(DynamicImage::from(red), [200, 0, 0]), (DynamicImage::from(grey), [90, 90, 90])] {
        let shown = shown(&build::encoded(&picture, ImageFormat::Png));
        check_same(&shown, &RgbImage::from_fn(40, 40, |x, _| image::Rgb(if x < 20 { solid } else { [255; 3] })));
    }
}

#[test]
fn sixteen_bits_become_eight() {
    let deep = DynamicImage::from(quarters()).into_rgb16();
    check_same(&shown(&build::encoded(&deep.into(), ImageFormat::Png)), &quarters());
}

#[test]
fn kinds_of_jpeg() {
    let picture = quarters();
    check_same(&shown(&jpeg_with(&picture, |encoder| encoder.set_progressive(true))), &picture);
    check_same(&shown(&jpeg_with(&picture, |encoder| encoder.set_restart_interval(3))), &picture);
    let grey = DynamicImage::from(picture.clone()).into_luma8();
    let shown_grey = shown(&build::encoded(&grey.clone().into(), ImageFormat::Jpeg));
    check_same(&shown_grey, &DynamicImage::from(grey).into_rgb8());
}

/// Red, green and blue stored as they are, which an Adobe segment with transform 0 says.
#[test]
fn untransformed_colours() {
    let picture = quarters();
    // The encoder is told that the three samples are luminance and colour differences already, so it leaves them alone.
    let mut bytes = Vec::new();
    Encoder::new(&mut bytes, 95).encode(picture.as_raw(), 64, 48, ColorType::Ycbcr).unwrap();
    let said = with_segment(&bytes, 0xEE, b"Adobe\0\x64\0\0\0\0\0");
    check_same(&shown(&said), &picture);
}

/// Four inks. Adobe's programs store them inverted and say so by a segment of theirs; without it full ink is 255.
#[test]
fn four_inks() {
    let picture = quarters();
    let inks: Vec<u8> =
        picture.pixels().flat_map(|pixel| [255 - pixel[0], 255 - pixel[1], 255 - pixel[2], 0]).collect();
    let mut adobe = Vec::new();
    Encoder::new(&mut adobe, 95).encode(&inks, 64, 48, ColorType::Cmyk).unwrap();
    assert!(segments(&adobe).contains(&0xEE), "the encoder says that it stores inverted inks");
    check_same(&shown(&adobe), &picture);

    // The same picture, inks the other way round and nothing said.
    let inverted: Vec<u8> = inks.iter().map(|ink| 255 - ink).collect();
    let mut plain = Vec::new();
    Encoder::new(&mut plain, 95).encode(&inverted, 64, 48, ColorType::Cmyk).unwrap();
    check_same(&shown(&build::without_segment(&plain, 0xEE)), &picture);
}

#[test]
fn wide_gamut_becomes_srgb() {
    let picture = RgbImage::from_pixel(32, 32, image::Rgb([200, 100, 50]));
    let p3 = moxcms::ColorProfile::new_display_p3().encode().unwrap();
    for format in [ImageFormat::Jpeg, ImageFormat::Png, ImageFormat::WebP] {
        // The figures: see the test of the same name in colour.rs.
        check_same(
            &shown(&build::with_profile(&picture, format, &p3)),
            &RgbImage::from_pixel(32, 32, image::Rgb([215, 93, 31])),
        );
    }
}

#[test]
fn refused() {
    check_refused(b"", "photo-empty");
    check_refused(b"hello", "photo-unknown-format");
    check_refused(&vec![0; MAX_BYTES + 1], "photo-too-large");
    check_refused(b"\xFF\xD8\xFF", "photo-incomplete");
    check_refused(b"\xFF\xD8\xFF\xD9", "photo-broken");
    check_refused(b"\x89PNG\r\n\x1A\n", "photo-incomplete");
    check_refused(b"RIFF\x04\0\0\0WEBP", "photo-incomplete");
}

/// Headers that claim more than they hold: refused before anything is allocated for the pixels.
#[test]
fn bombs() {
    let mut bytes = png(&quarters());
    bytes[16..24].copy_from_slice(&[0, 0, 0xEA, 0x60, 0, 0, 0xEA, 0x60]);
    let crc = build::crc(&bytes[12..29]);
    bytes[29..33].copy_from_slice(&crc.to_be_bytes());
    check_refused(&bytes, "photo-too-many-pixels");

    let mut bytes = jpeg(&quarters());
    let frame = bytes.windows(2).position(|pair| pair == [0xFF, 0xC0]).unwrap();
    bytes[frame + 5..frame + 9].copy_from_slice(&[0xFF; 4]);
    check_refused(&bytes, "photo-too-many-pixels");
    bytes[frame + 4] = 12;
    check_refused(&bytes, "photo-deep-jpeg");
    bytes[frame + 4] = 8;
    bytes[frame + 1] = 0xC9;
    check_refused(&bytes, "photo-rare-jpeg");

    let mut bytes = webp(&quarters());
    bytes[21..25].copy_from_slice(&[0xFE, 0xBF, 0xFF, 0x0F]);
    check_refused(&bytes, "photo-too-many-pixels");
}

/// Cut anywhere, a picture is refused; only the last few bytes, which hold the end mark, may be missing. The same with
/// the end mark put back, as repair programs do.
#[test]
fn cut_off() {
    let picture = build::busy();
    let plain = jpeg(&picture);
    for bytes in [plain.clone(), jpeg_with(&picture, |encoder| encoder.set_restart_interval(2))] {
        let cut = |length: usize| bytes[..length].to_vec();
        let ended = |length: usize| [&bytes[..length], &[0xFF, 0xD9]].concat();
        let zeros = |length: usize| [&bytes[..length], &vec![0; bytes.len() - length]].concat();
        for length in (3..bytes.len() - 24).step_by(7) {
            assert!(check(&cut(length)).is_err(), "cut to {length} of {}", bytes.len());
            assert!(check(&ended(length)).is_err(), "cut to {length} of {} and ended", bytes.len());
        }
        for length in (3..bytes.len() - 80).step_by(7) {
            assert!(check(&zeros(length)).is_err(), "zeros from {length} of {}", bytes.len());
        }
        assert!(check(&cut(bytes.len() - 2)).is_ok(), "only the end mark is missing");
    }
    for bytes in [jpeg_with(&picture, |encoder| encoder.set_progressive(true)), png(&picture), webp(&picture)] {
        for length in (13..bytes.len() - 24).step_by(7) {
            assert!(check(&bytes[..length]).is_err(), "cut to {length} of {}", bytes.len());
        }
    }
    assert_eq!(check(&plain[..plain.len() / 2]).unwrap_err().code(), "photo-incomplete");
}

/// Nothing that a program noted leaves the shop: of the application segments only the resolution, of the others none.
#[test]
fn nothing_leaks() {
    let picture = quarters();
    let jpeg = with_exif(&picture, ImageFormat::Jpeg, 6, "2026:03:14 09:26:53");
    let jpeg = with_segment(&jpeg, 0xE1, b"http://ns.adobe.com/xap/1.0/\0<x:xmpmeta/>");
    let jpeg = with_segment(&jpeg, 0xED, b"Photoshop 3.0\0 secret");
    let jpeg = with_segment(&jpeg, 0xFE, b"secret");
    assert!(segments(&jpeg).contains(&0xE1) && segments(&jpeg).contains(&0xFE), "there is something to leak");
    let png = with_exif(&picture, ImageFormat::Png, 6, "2026:03:14 09:26:53");
    for bytes in [jpeg, png] {
        let developed = develop(&bytes).unwrap();
        for out in [outgoing(&bytes, 2048).unwrap(), developed.screen, developed.thumb] {
            let noted: Vec<u8> =
                segments(&out).into_iter().filter(|marker| matches!(marker, 0xE1..=0xEF | 0xFE)).collect();
            assert!(noted.is_empty(), "segments {noted:X?}");
            for word in [&b"Exif"[..], b"GPS", b"adobe", b"secret", b"ICC_PROFILE", b"2026"] {
                assert!(!out.windows(word.len()).any(|window| window == word), "{:?}", word.escape_ascii().to_string());
            }
            assert_eq!(image::load_from_memory(&out).unwrap().width(), 48, "upright");
        }
    }
}

/// Junk, comments and broken notes around good pixels do not matter.
#[test]
fn lenient() {
    let picture = quarters();
    let good = jpeg(&picture);
    check_same(&shown(&[&good[..20], b"junk", &good[20..]].concat()), &picture);
    check_same(&shown(&[&good[..], b"a second picture"].concat()), &picture);
    check_same(&shown(&with_segment(&good, 0xE1, b"Exif\0\0II*\0\xFF\xFF\xFF\xFF")), &picture);
    check_same(&shown(&with_segment(&good, 0xE2, b"ICC_PROFILE\0\x01\x09broken")), &picture);
    check_same(&shown(&with_segment(&good, 0xEE, b"Adobe")), &picture);
    let whole = png(&picture);
    check_same(&shown(&whole[..whole.len() - 12]), &picture);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// Random bytes behind each magic.
    #[test]
    fn random_bytes_are_answered(magic in 0..4_usize, bytes in proptest::collection::vec(any::<u8>(), 0..2000)) {
        let magics: [&[u8]; 4] = [b"", b"\xFF\xD8\xFF", b"\x89PNG\r\n\x1A\n", b"RIFF\xD0\x07\0\0WEBPVP8 "];
        let start = Instant::now();
        let _ = develop(&[magics[magic], &bytes].concat());
        prop_assert!(start.elapsed() < Duration::from_secs(2));
    }

    /// Good pictures with a few bytes changed.
    #[test]
    fn damaged_pictures_are_answered(
        kind in 0..5_usize,
        damage in proptest::collection::vec((any::<proptest::sample::Index>(), any::<u8>()), 1..8),
    ) {
        let picture = quarters();
        let mut bytes = match kind {
            0 => jpeg(&picture),
            1 => jpeg_with(&picture, |encoder| encoder.set_progressive(true)),
            2 => png(&picture),
            3 => webp(&picture),
            _ => with_exif(&picture, ImageFormat::Jpeg, 6, "2026:03:14 09:26:53"),
        };
        for (at, byte) in damage {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        let start = Instant::now();
        let _ = develop(&bytes);
        prop_assert!(start.elapsed() < Duration::from_secs(5));
    }
}
