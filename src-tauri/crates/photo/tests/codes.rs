//! Labels printed, photographed and read back.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "clippy.toml lets tests do so, but not the functions that they share"
)]

mod camera;

use std::collections::BTreeSet;
use std::io::Cursor;
use std::time::{Duration, Instant};

use camera::{Chance, Shot, label, photograph};
use image::{GrayImage, ImageFormat, Luma};

/// Pictures of each kind.
const EACH: u64 = 40;

/// As a phone held over the bench takes it, with nothing wrong.
const PLAIN: Shot = Shot {
    module: 6.0,
    turn: 0.0,
    tilt: 0.0,
    towards: 0.0,
    blur: 0.6,
    shake: 0.0,
    light: 0.9,
    shadow: 1.0,
    noise: 3.0,
};

/// How many of some pictures are read; none may be read as anything else.
#[track_caller]
fn read(name: &str, shot: impl Fn(&mut Chance) -> Shot) -> u64 {
    let mut right = 0;
    for nth in 0..EACH {
        let mut chance = Chance::new(nth);
        let text = chance.text();
        let printed = label(&text, &mut chance);
        let shot = shot(&mut chance);
        let picture = photograph(&printed, shot, (800, 600), &mut chance);
        let found = wearbook_photo::codes(&picture).unwrap();
        assert!(found.is_empty() || found == BTreeSet::from([text.clone()]), "{found:?} for {text}: {shot:?}");
        right += u64::from(!found.is_empty());
    }
    println!("{name}: {right} of {EACH}");
    right
}

fn any_turn(chance: &mut Chance) -> Shot {
    Shot { turn: chance.between(0.0, 360.0), module: chance.between(4.0, 8.0), ..PLAIN }
}

fn any_tilt(chance: &mut Chance) -> Shot {
    Shot { tilt: chance.between(0.0, 45.0), towards: chance.between(0.0, 360.0), ..any_turn(chance) }
}

#[test]
fn turned() {
    assert!(read("turned", any_turn) >= 39);
}

#[test]
fn tilted() {
    assert!(read("tilted by up to 45°", any_tilt) >= 38);
}

#[test]
fn blurred() {
    let shot = |chance: &mut Chance| Shot {
        blur: chance.between(0.6, 2.2),
        shake: chance.between(0.0, 4.0),
        ..any_turn(chance)
    };
    assert!(read("out of focus and shaken", shot) >= 37);
}

#[test]
fn half_lit() {
    let shot = |chance: &mut Chance| Shot {
        light: chance.between(0.2, 0.8),
        shadow: chance.between(0.25, 0.8),
        ..any_turn(chance)
    };
    assert!(read("half in the shadow", shot) >= 39);
}

#[test]
fn from_afar() {
    let shot = |chance: &mut Chance| Shot { module: chance.between(2.5, 4.0), ..any_turn(chance) };
    assert!(read("2.5 to 4 pixels a module", shot) >= 34);
}

#[test]
fn all_at_once() {
    let shot = |chance: &mut Chance| Shot {
        tilt: chance.between(0.0, 35.0),
        blur: chance.between(0.6, 1.5),
        shake: chance.between(0.0, 2.5),
        light: chance.between(0.3, 0.9),
        shadow: chance.between(0.4, 1.0),
        noise: chance.between(3.0, 12.0),
        ..any_tilt(chance)
    };
    assert!(read("all of it at once", shot) >= 37);
}

/// A picture of brightnesses, as a PNG.
fn drawn(side: u32, bright: impl Fn(u32, u32) -> u8) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    GrayImage::from_fn(side, side, |x, y| Luma([bright(x, y)])).write_to(&mut bytes, ImageFormat::Png).unwrap();
    bytes.into_inner()
}

#[test]
fn no_picture_takes_long_or_reads_as_a_code() {
    let finder = |x: u32, y: u32| {
        let ring = x.abs_diff(4).max(y.abs_diff(4));
        if ring == 2 || ring > 3 { 255 } else { 0 }
    };
    let noise = |x: u32, y: u32| (x.wrapping_mul(0x9e37_79b9) ^ y.wrapping_mul(0x85eb_ca6b)).wrapping_mul(x ^ 77) as u8;
    let pictures = [
        ("small finder patterns all over", drawn(1600, |x, y| finder(x % 9, y % 9))),
        ("finder patterns all over", drawn(1600, |x, y| finder(x / 2 % 9, y / 2 % 9))),
        ("larger ones", drawn(1600, |x, y| finder(x / 4 % 9, y / 4 % 9))),
        ("rings", drawn(1600, |x, y| (x.abs_diff(800).max(y.abs_diff(800)) / 7 % 2 * 255) as u8)),
        ("noise", drawn(1600, noise)),
        ("a chessboard", drawn(1600, |x, y| ((x / 3 + y / 3) % 2 * 255) as u8)),
        ("black", drawn(6000, |_, _| 0)),
        ("one pixel", drawn(1, |_, _| 0)),
        ("a few pixels", drawn(7, finder)),
    ];
    for (name, picture) in pictures {
        let began = Instant::now();
        let found = wearbook_photo::codes(&picture).unwrap();
        println!("{name}: {:?}", began.elapsed());
        assert!(found.is_empty(), "{name}: {found:?}");
        assert!(began.elapsed() < Duration::from_secs(10), "{name} took {:?}", began.elapsed());
    }
}

#[test]
fn two_labels_in_one_picture_are_both_read() {
    let mut chance = Chance::new(7);
    let texts = [chance.text(), chance.text()];
    let [left, right] = texts.clone().map(|text| label(&text, &mut chance));
    let mut both = GrayImage::from_pixel(left.width() + right.width() + 40, left.height() + 80, Luma([120]));
    image::imageops::replace(&mut both, &left, 10, 40);
    image::imageops::replace(&mut both, &right, i64::from(left.width()) + 30, 40);
    let mut bytes = Cursor::new(Vec::new());
    both.write_to(&mut bytes, ImageFormat::Png).unwrap();
    assert_eq!(wearbook_photo::codes(&bytes.into_inner()).unwrap(), BTreeSet::from(texts));
}

#[test]
fn what_is_no_picture_is_refused_as_ever() {
    assert_eq!(wearbook_photo::codes(b"%PDF-1.7").unwrap_err().code(), "photo-pdf");
}
