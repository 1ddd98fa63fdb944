//! Which way up: the EXIF orientation, and turning pixels by it.

use crate::pixels::Pixels;

/// How the stored pixels must be turned to stand upright: the eight values of the EXIF tag 0x0112.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Orientation(u8);

impl Orientation {
    /// The pixels are stored upright.
    pub const AS_STORED: Self = Self(1);

    /// The orientation for a value from a file. Values that EXIF does not define (0, or above 8) mean "as stored".
    pub fn from_exif(value: u32) -> Self {
        match u8::try_from(value) {
            Ok(value @ 1..=8) => Self(value),
            _ => Self::AS_STORED,
        }
    }

    /// The EXIF value, 1 to 8.
    pub fn exif(self) -> u8 {
        self.0
    }

    /// Whether turning upright exchanges width and height.
    pub fn swaps_sides(self) -> bool {
        self.0 >= 5
    }

    /// Whether, after rows and columns have been exchanged if need be, left and right are to be exchanged.
    fn mirrors(self) -> bool {
        matches!(self.0, 2 | 3 | 6 | 7)
    }

    /// Whether, after rows and columns have been exchanged if need be, top and bottom are to be exchanged.
    fn flips(self) -> bool {
        matches!(self.0, 3 | 4 | 7 | 8)
    }
}

/// Turns a picture upright.
pub(crate) fn upright(pixels: Pixels, orientation: Orientation) -> Pixels {
    if orientation == Orientation::AS_STORED {
        return pixels;
    }
    let samples = match pixels.layout.bytes() {
        1 => turn::<1>(&pixels, orientation),
        3 => turn::<3>(&pixels, orientation),
        _ => turn::<4>(&pixels, orientation),
    };
    let (width, height) =
        if orientation.swaps_sides() { (pixels.height, pixels.width) } else { (pixels.width, pixels.height) };
    Pixels { width, height, samples, ..pixels }
}

/// Turns pixels of `N` bytes. Every orientation is an exchange of rows and columns, or none, and then two mirrors, or
/// none.
fn turn<const N: usize>(pixels: &Pixels, orientation: Orientation) -> Vec<u8> {
    let (all, _) = pixels.samples.as_chunks::<N>();
    let width = pixels.width as usize;
    let rows: Vec<&[[u8; N]]> = all.chunks_exact(width.max(1)).collect();
    let row_count = if orientation.swaps_sides() { width } else { rows.len() };
    let mut turned = Vec::with_capacity(pixels.samples.len());
    for step in 0..row_count {
        let index = if orientation.flips() { row_count - 1 - step } else { step };
        if orientation.swaps_sides() {
            append(&mut turned, rows.iter().filter_map(|row| row.get(index)), orientation.mirrors());
        } else if let Some(row) = rows.get(index) {
            append(&mut turned, row.iter(), orientation.mirrors());
        }
    }
    turned
}

fn append<'a, const N: usize>(to: &mut Vec<u8>, row: impl DoubleEndedIterator<Item = &'a [u8; N]>, mirror: bool) {
    if mirror {
        row.rev().for_each(|pixel| to.extend_from_slice(pixel));
    } else {
        row.for_each(|pixel| to.extend_from_slice(pixel));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pixels::Layout;

    /// The stored picture is `123/456`. The expected ones follow from the definition of the tag (EXIF 2.3, 4.6.4, tag
    /// 0x0112), which says which visible edges the first stored row and column are: for 6, the right-hand side and the
    /// top.
    #[track_caller]
    fn check(exif: u32, expected: (u32, u32, &[u8])) {
        let stored = Pixels { width: 3, height: 2, layout: Layout::Grey, samples: b"123456".to_vec() };
        let shown = upright(stored, Orientation::from_exif(exif));
        assert_eq!((shown.width, shown.height, shown.samples.as_slice()), expected, "orientation {exif}");
    }

    #[test]
    fn eight_orientations_and_two_that_do_not_exist() {
        check(1, (3, 2, b"123456"));
        check(2, (3, 2, b"321654"));
        check(3, (3, 2, b"654321"));
        check(4, (3, 2, b"456123"));
        check(5, (2, 3, b"142536"));
        check(6, (2, 3, b"415263"));
        check(7, (2, 3, b"635241"));
        check(8, (2, 3, b"362514"));
        check(0, (3, 2, b"123456"));
        check(9, (3, 2, b"123456"));
        check(262, (3, 2, b"123456"));
    }

    #[test]
    fn colour_pixels_stay_whole() {
        let stored = Pixels { width: 2, height: 1, layout: Layout::Rgb, samples: b"abcdef".to_vec() };
        assert_eq!(upright(stored, Orientation::from_exif(8)).samples, b"defabc");
    }
}
