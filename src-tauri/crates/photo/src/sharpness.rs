//! How sharp a picture is, so that of two that show the same the better one is taken.

use crate::pixels::{Layout, Pixels};
use crate::refusal::Refusal;
use crate::resize::smaller;

/// The long side at which it is judged, in pixels: what 80 mm of paper hold at 300 to the inch.
const SIDE: u32 = 1024;

/// The standard deviation of the Laplacian of the luma, in tenths of a grey level, of the picture at the size of print: 0
/// for an even one; only for comparing pictures of the same thing.
///
/// Source: the variance of the Laplacian as a measure of focus, J. L. Pech-Pacheco et al., “Diatom autofocusing in
/// brightfield microscopy: a comparative study”, 15th International Conference on Pattern Recognition, 2000.
pub(crate) fn sharpness(picture: &Pixels) -> Result<u16, Refusal> {
    let small = smaller(picture, SIDE)?;
    let Pixels { width, layout, samples, .. } = small.as_ref().unwrap_or(picture);
    let luma: Vec<i32> = samples.chunks_exact(layout.bytes()).map(|pixel| grey(*layout, pixel)).collect();
    let rows: Vec<&[i32]> = luma.chunks_exact(*width as usize).collect();
    let (mut count, mut sum, mut squares) = (0_i64, 0_i64, 0_i64);
    for three in rows.windows(3) {
        let [above, row, below] = three else { continue };
        for ((middle, up), down) in row.windows(3).zip(above.iter().skip(1)).zip(below.iter().skip(1)) {
            let [left, here, right] = middle else { continue };
            let value = i64::from(left + right + up + down - 4 * here);
            count += 1;
            sum += value;
            squares += value * value;
        }
    }
    if count == 0 {
        return Ok(0);
    }
    let (count, sum, squares) = (count as f64, sum as f64, squares as f64);
    let deviation = (squares / count - (sum / count).powi(2)).max(0.0).sqrt();
    Ok((10.0 * deviation).round() as u16)
}

/// Luma by Recommendation ITU-R BT.601, in whole grey levels.
fn grey(layout: Layout, pixel: &[u8]) -> i32 {
    match (layout, pixel) {
        (Layout::Rgb | Layout::Rgba, [r, g, b, ..]) => {
            (299 * i32::from(*r) + 587 * i32::from(*g) + 114 * i32::from(*b)) / 1000
        }
        (_, [grey, ..]) => i32::from(*grey),
        (_, []) => 0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Stripes so many pixels wide.
    fn stripes(wide: u32) -> Pixels {
        let sample = |at: u32| if (at % 400 / wide).is_multiple_of(2) { 40 } else { 200 };
        Pixels { width: 400, height: 300, layout: Layout::Grey, samples: (0..120_000).map(sample).collect() }
    }

    /// The same, each sample the mean of those up to `reach` beside it.
    fn blurred(sharp: &Pixels, reach: usize) -> Pixels {
        let mean = |at: usize| {
            let near = &sharp.samples[at.saturating_sub(reach)..(at + reach + 1).min(sharp.samples.len())];
            (near.iter().map(|sample| usize::from(*sample)).sum::<usize>() / near.len()) as u8
        };
        Pixels { samples: (0..sharp.samples.len()).map(mean).collect(), ..sharp.clone() }
    }

    #[test]
    fn the_more_a_picture_is_blurred_the_less_sharp_it_is() {
        let sharp = stripes(20);
        let found: Vec<u16> =
            [0, 1, 2, 4, 8].map(|reach| sharpness(&blurred(&sharp, reach)).unwrap()).into_iter().collect();
        assert!(found.is_sorted_by(|sharper, blurrier| sharper > blurrier), "{found:?}");
        let even = Pixels { width: 40, height: 30, layout: Layout::Rgb, samples: vec![90; 3600] };
        assert_eq!(sharpness(&even).unwrap(), 0);
    }

    /// Stripes one pixel wide of 0 and 100: the Laplacian is +200 on one and −200 on the next, its deviation 200 levels.
    #[test]
    fn by_hand() {
        let samples = (0..100_u32).map(|at| if (at % 10).is_multiple_of(2) { 0 } else { 100 }).collect();
        let pixels = Pixels { width: 10, height: 10, layout: Layout::Grey, samples };
        assert_eq!(sharpness(&pixels).unwrap(), 2000);
    }

    #[test]
    fn the_smallest_pictures_have_none() {
        let pixels = Pixels { width: 2, height: 2, layout: Layout::Grey, samples: vec![0, 200, 200, 0] };
        assert_eq!(sharpness(&pixels).unwrap(), 0);
    }
}
