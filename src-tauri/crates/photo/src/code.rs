//! Reading codes out of a picture: symbols of ISO/IEC 18004, as they stand on labels.

use std::cmp::Reverse;
use std::collections::BTreeSet;

use rxing::common::cpp_essentials::ConcentricPattern;
use rxing::common::{DetectorRXingResult, HybridBinarizer};
use rxing::qrcode::cpp_port::decoder::Decode;
use rxing::qrcode::cpp_port::detector::{FindFinderPatterns, GenerateFinderPatternSets, SampleQR};
use rxing::{BinaryBitmap, Luma8LuminanceSource};

use crate::decode::{decode, never_panics};
use crate::develop::print;
use crate::pixels::{Layout, Pixels};
use crate::refusal::Refusal;
use crate::resize::smaller;

/// The long sides at which a picture is searched, in pixels: large for a small code, then smaller, which takes away noise and
/// the blur of the lens.
const SIDES: [u32; 3] = [1600, 800, 400];
/// The smallest module that is looked for, in pixels.
const LEAST_MODULE: u32 = 2;
/// The corners of codes that are looked at, the largest first: those of more codes than fit a picture.
const MOST_CORNERS: usize = 150;
/// The sets of three corners that are tried, the likeliest first.
const MOST_SYMBOLS: usize = 1500;

/// The texts of all codes that can be read in a picture; none if there are none. How a code is turned makes no difference.
///
/// # Errors
/// As [`crate::check`].
pub fn codes(bytes: &[u8]) -> Result<BTreeSet<String>, Refusal> {
    let picture = decode(bytes)?;
    never_panics(|| {
        let [largest, ..] = SIDES;
        let mut grey = grey(print(picture, largest)?);
        for side in SIDES {
            grey = smaller(&grey, side)?.unwrap_or(grey);
            let found = search(&grey);
            if !found.is_empty() {
                return Ok(found);
            }
        }
        Ok(BTreeSet::new())
    })
}

/// The library's steps one by one, since a picture full of what looks like the corners of codes would keep it for minutes.
fn search(grey: &Pixels) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    let Ok(source) = Luma8LuminanceSource::new(grey.samples.clone(), grey.width, grey.height) else { return found };
    let bitmap = BinaryBitmap::new(HybridBinarizer::new(source));
    let matrix = bitmap.get_black_matrix();
    let mut corners = FindFinderPatterns(matrix, true, LEAST_MODULE);
    corners.sort_by_key(|corner| Reverse(corner.size));
    corners.truncate(MOST_CORNERS);
    let mut used: Vec<ConcentricPattern> = vec![];
    for set in GenerateFinderPatternSets(&mut corners).iter().take(MOST_SYMBOLS) {
        let here = [set.tl, set.tr, set.bl];
        if here.iter().any(|corner| used.contains(corner)) {
            continue;
        }
        let Ok(sampled) = SampleQR(matrix, set) else { continue };
        if let Ok(symbol) = Decode(sampled.getBits())
            && symbol.isValid()
        {
            found.insert(symbol.text());
            used.extend(here);
        }
    }
    found
}

/// How bright it is (ITU-R BT.601, in parts of 256).
fn grey(pixels: Pixels) -> Pixels {
    let Pixels { width, height, layout, samples } = pixels.on_white();
    let samples = match layout {
        Layout::Grey => samples,
        _ => {
            let (colours, _) = samples.as_chunks::<3>();
            let brightness = |&[r, g, b]: &[u8; 3]| (77 * u32::from(r) + 150 * u32::from(g) + 29 * u32::from(b)) >> 8;
            colours.iter().map(|colour| brightness(colour).min(255) as u8).collect()
        }
    };
    Pixels { width, height, layout: Layout::Grey, samples }
}
