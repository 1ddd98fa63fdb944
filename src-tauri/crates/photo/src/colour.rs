//! Colours as screens and printers expect them: sRGB. Phones store wide-gamut colours with a profile that says so.

use moxcms::{ColorProfile, DataColorSpace, TransformOptions};

use crate::limits::MAX_PROFILE_BYTES;
use crate::pixels::{Layout, Pixels};

/// Converts a picture to sRGB by its ICC profile. Without a profile, with one that can't be read or that does not fit
/// the pixels, the colours are taken as sRGB already: a part can be judged in slightly wrong colours, but not unseen.
pub(crate) fn to_srgb(pixels: Pixels, profile: Option<&[u8]>) -> Pixels {
    let Some(profile) = profile else { return pixels };
    match converted(&pixels, profile) {
        Some(samples) => Pixels { samples, ..pixels },
        None => pixels,
    }
}

fn converted(pixels: &Pixels, profile: &[u8]) -> Option<Vec<u8>> {
    let layout = match pixels.layout {
        // A grey profile differs from sRGB by its tone curve only, which no phone uses.
        Layout::Grey => return None,
        Layout::Rgb => moxcms::Layout::Rgb,
        Layout::Rgba => moxcms::Layout::Rgba,
    };
    if profile.len() > MAX_PROFILE_BYTES {
        return None;
    }
    let from = ColorProfile::new_from_slice(profile).ok()?;
    if from.color_space != DataColorSpace::Rgb {
        return None;
    }
    let srgb = ColorProfile::new_srgb();
    let transform = from.create_transform_8bit(layout, &srgb, layout, TransformOptions::default()).ok()?;
    let mut samples = vec![0; pixels.samples.len()];
    transform.transform(&pixels.samples, &mut samples).ok()?;
    Some(samples)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn one(rgb: [u8; 3]) -> Pixels {
        Pixels { width: 1, height: 1, layout: Layout::Rgb, samples: rgb.to_vec() }
    }

    #[track_caller]
    fn check(profile: &[u8], from: [u8; 3], expected: [u8; 3]) {
        let found = to_srgb(one(from), Some(profile)).samples;
        let near = found.iter().zip(expected).all(|(found, expected)| found.abs_diff(expected) <= 2);
        assert!(near, "{from:?} became {found:?} and not {expected:?}");
    }

    /// Display P3 to sRGB, computed from the primaries in SMPTE EG 432-1 and IEC 61966-2-1: P3 (200, 100, 50) is
    /// linear (0.5776, 0.1274, 0.0319) and becomes linear sRGB (0.6788, 0.1085, 0.0137).
    #[test]
    fn wide_gamut_becomes_srgb() {
        let p3 = ColorProfile::new_display_p3().encode().unwrap();
        check(&p3, [128, 128, 128], [128, 128, 128]);
        check(&p3, [200, 100, 50], [215, 93, 31]);
    }

    #[test]
    fn srgb_stays() {
        check(&ColorProfile::new_srgb().encode().unwrap(), [200, 100, 50], [200, 100, 50]);
    }

    #[test]
    fn a_broken_profile_is_passed_over() {
        let mut p3 = ColorProfile::new_display_p3().encode().unwrap();
        p3.truncate(200);
        check(&p3, [200, 100, 50], [200, 100, 50]);
        check(b"", [200, 100, 50], [200, 100, 50]);
        check(&[0xAA; 4096], [200, 100, 50], [200, 100, 50]);
    }
}
