//! Pictures made to fit into a file that can be mailed.

use std::collections::BTreeMap;
use std::io::Cursor;

use image::ImageReader;
use wearbook_core::document::Paper;
use wearbook_core::job::PhotoId;

use crate::content::{pictures, printed};

/// What a report may weigh to be mailed, in bytes: many mail servers refuse more than a few megabytes, and mail makes
/// four bytes of three.
pub(crate) const MOST: usize = 5_000_000;
/// What fonts, drawings and text weigh at most, in bytes; the test with 120 photos holds it.
const WITHOUT_PICTURES: usize = 900_000;
/// A picture is never made smaller than this for it, in bytes: nobody could judge by it.
const LEAST: usize = 12_000;
/// The long side of a picture on a screen at most, in pixels: as wide as the customer's page is as a picture.
pub(crate) const ON_A_SCREEN: u32 = 1000;

/// How many bytes each picture of a paper may have.
pub(crate) fn share(paper: &Paper) -> usize {
    ((MOST - WITHOUT_PICTURES) / pictures(paper).count().max(1)).max(LEAST)
}

/// The long side of each picture at most, in pixels: 300 to the inch at the largest size at which it is printed.
pub(crate) fn sides(paper: &Paper) -> BTreeMap<&PhotoId, u32> {
    let mut sides = BTreeMap::new();
    for (picture, side) in printed(paper) {
        let own: &mut u32 = sides.entry(&picture.photo).or_default();
        *own = side.max(*own);
    }
    sides
}

/// The picture within its share and no larger than it is printed; as it is where it fits, or where it can't be read.
pub(crate) fn fitted(bytes: Vec<u8>, side: u32, share: usize) -> Vec<u8> {
    let fits =
        || bytes.len() <= share && bytes.starts_with(&JPEG_START) && long_side(&bytes).is_some_and(|own| own <= side);
    if fits() {
        return bytes;
    }
    wearbook_photo::outgoing_within(&bytes, side, share).unwrap_or(bytes)
}

/// Read off the head of the file.
fn long_side(bytes: &[u8]) -> Option<u32> {
    let reader = ImageReader::new(Cursor::new(bytes)).with_guessed_format().ok()?;
    reader.into_dimensions().ok().map(|(width, height)| width.max(height))
}

/// The marker that begins every JPEG file (ITU-T T.81, table B.1: SOI).
const JPEG_START: [u8; 2] = [0xff, 0xd8];

#[cfg(test)]
mod tests {
    use super::*;
    use image::{ImageFormat, RgbImage};
    use wearbook_core::date::Date;
    use wearbook_core::document::Reader;
    use wearbook_core::document::{Block, Image, Picture, Shown};

    /// Grain, which is the hardest to write small.
    fn picture(width: u32, height: u32, format: ImageFormat) -> Vec<u8> {
        let mut grain = 1_u32;
        let pixels = RgbImage::from_fn(width, height, |_, _| {
            grain = grain.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            image::Rgb([(grain >> 24) as u8; 3])
        });
        let mut file = Cursor::new(Vec::new());
        pixels.write_to(&mut file, format).unwrap();
        file.into_inner()
    }

    fn size(bytes: &[u8]) -> (u32, u32) {
        let picture = image::load_from_memory(bytes).unwrap();
        (picture.width(), picture.height())
    }

    #[test]
    fn what_fits_stays_and_what_does_not_is_made_to_fit() {
        let photo = picture(1600, 1200, ImageFormat::Jpeg);
        assert_eq!(fitted(photo.clone(), 1600, photo.len()), photo, "not a byte is changed");
        assert_eq!(size(&fitted(photo.clone(), 945, photo.len())).0, 945, "no finer than it is printed");
        for share in [400_000, 150_000, 60_000] {
            let small = fitted(photo.clone(), 1600, share);
            assert!(small.len() <= share, "{} of {share}", small.len());
            let (width, height) = size(&small);
            assert!(width >= 400 && width * 3 == height * 4, "{width} × {height}");
        }
        let least = fitted(photo, 1600, 1);
        assert_eq!(size(&least), (400, 300), "never so coarse that nobody could judge by it");
    }

    #[test]
    fn a_picture_is_as_fine_as_its_largest_print() {
        let nth = |nth: u8| PhotoId::try_from(format!("{nth:064x}")).unwrap();
        let picture = |n| Picture { photo: nth(n), alt: String::new(), markups: vec![] };
        let shown = |n| Shown { image: Image::Photo(picture(n)), sentence: String::new() };
        let photos = |of: &[u8], small| Block::Photos { shown: of.iter().map(|n| shown(*n)).collect(), small };
        let paper = Paper {
            title: String::new(),
            subtitle: String::new(),
            subject: String::new(),
            reader: Reader::Customer(String::new()),
            date: Date::EPOCH,
            blocks: vec![photos(&[1], false), photos(&[1, 2], true)],
        };
        assert_eq!(sides(&paper), [(&nth(1), 945), (&nth(2), 470)].into());
    }

    #[test]
    fn other_forms_become_jpeg_and_what_is_no_picture_stays() {
        assert!(fitted(picture(40, 30, ImageFormat::Png), 945, 100_000).starts_with(&JPEG_START));
        assert_eq!(fitted(b"not a picture".to_vec(), 945, 1), b"not a picture");
    }

    #[test]
    fn the_more_pictures_the_less_each_but_never_too_little() {
        let paper = |count: usize| {
            let nth = |nth| format!("{nth:064x}").try_into().unwrap();
            let picture = |n| Picture { photo: nth(n), alt: String::new(), markups: vec![] };
            let shown = (0..count).map(|n| Shown { image: Image::Photo(picture(n)), sentence: String::new() });
            let block = Block::Photos { shown: shown.collect(), small: true };
            Paper {
                title: String::new(),
                subtitle: String::new(),
                subject: String::new(),
                reader: Reader::Customer(String::new()),
                date: Date::EPOCH,
                blocks: vec![block],
            }
        };
        assert!(share(&paper(1)) > share(&paper(10)));
        assert!(share(&paper(120)) * 120 < MOST);
        assert_eq!(share(&paper(5_000)), LEAST);
    }
}
