//! Making pictures smaller.

use fast_image_resize::images::{Image, ImageRef};
use fast_image_resize::{FilterType, PixelType, ResizeAlg, ResizeOptions, Resizer};

use crate::pixels::{Layout, Pixels};
use crate::refusal::Refusal;

/// The picture with its long side at most `max_side` pixels; `None` when it is no larger than that already.
///
/// # Errors
/// Only if the pixels do not fit their size, which decoded pixels do.
pub(crate) fn smaller(pixels: &Pixels, max_side: u32) -> Result<Option<Pixels>, Refusal> {
    let Some((width, height)) = fit(pixels.width, pixels.height, max_side) else { return Ok(None) };
    let kind = match pixels.layout {
        Layout::Grey => PixelType::U8,
        Layout::Rgb => PixelType::U8x3,
        Layout::Rgba => PixelType::U8x4,
    };
    let does_not_fit = |_| Refusal::broken("its pixels do not fit its size");
    let from = ImageRef::new(pixels.width, pixels.height, &pixels.samples, kind).map_err(does_not_fit)?;
    let mut to = Image::new(width, height, kind);
    let options = ResizeOptions::new().resize_alg(ResizeAlg::Convolution(FilterType::CatmullRom));
    Resizer::new().resize(&from, &mut to, &options).map_err(|_| Refusal::broken("its pixels can't be made smaller"))?;
    Ok(Some(Pixels { width, height, layout: pixels.layout, samples: to.into_vec() }))
}

/// The size with the long side `max_side` and the same proportions; `None` when the picture is no larger.
fn fit(width: u32, height: u32, max_side: u32) -> Option<(u32, u32)> {
    let (long, max_side) = (width.max(height), max_side.max(1));
    if long <= max_side {
        return None;
    }
    let scaled = |side: u32| {
        let rounded = (u64::from(side) * u64::from(max_side) + u64::from(long) / 2) / u64::from(long);
        u32::try_from(rounded).unwrap_or(max_side).clamp(1, max_side)
    };
    Some((scaled(width), scaled(height)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes() {
        assert_eq!(fit(4000, 3000, 2048), Some((2048, 1536)));
        assert_eq!(fit(3000, 4000, 480), Some((360, 480)));
        assert_eq!(fit(20_000, 1, 480), Some((480, 1)));
        assert_eq!(fit(480, 20, 480), None);
        assert_eq!(fit(3, 2, 0), Some((1, 1)));
    }

    #[test]
    fn an_even_picture_stays_even() {
        for layout in [Layout::Grey, Layout::Rgb, Layout::Rgba] {
            let pixels = Pixels { width: 50, height: 20, layout, samples: vec![200; 1000 * layout.bytes()] };
            let small = smaller(&pixels, 25).unwrap().unwrap();
            assert_eq!((small.width, small.height), (25, 10));
            assert!(small.samples.iter().all(|sample| sample.abs_diff(200) <= 1), "{layout:?}");
        }
    }
}
