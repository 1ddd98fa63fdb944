//! Pictures from outside, checked before the typesetter sees them, and wrapped so that it passes them on untouched.

use std::io::Cursor;

use image::{ImageFormat, ImageReader};
use typst::foundations::Bytes;
use wearbook_core::job::Markup;

use crate::drawing;

/// Largest picture file taken, in bytes. The app passes pictures of some hundred kilobytes.
const MOST_BYTES: usize = 32 << 20;
/// A frame is not narrower than this share of its height; a narrower picture gets a margin.
const NARROWEST: f64 = 0.4;
/// Nor wider.
const WIDEST: f64 = 3.0;

/// A picture that can be printed.
#[derive(Debug, Clone)]
pub(crate) struct Printable {
    /// The file as it came; a JPEG goes into the PDF unchanged.
    pub(crate) bytes: Bytes,
    /// The usual ending of such a file's name.
    pub(crate) ending: &'static str,
    /// Width and height in pixels.
    size: (u32, u32),
    /// What is drawn over it, as elements of a drawing of its size.
    over: String,
}

impl Printable {
    /// Takes a whole JPEG, PNG or WebP file; none otherwise.
    pub(crate) fn check(bytes: Vec<u8>) -> Option<Self> {
        if bytes.len() > MOST_BYTES {
            return None;
        }
        let reader = || ImageReader::new(Cursor::new(&bytes)).with_guessed_format().ok();
        let (ending, whole) = match reader()?.format()? {
            // Only the head is read: to decode sixty photos takes seconds on a phone, and the app has just made them.
            ImageFormat::Jpeg => ("jpg", bytes.ends_with(&JPEG_END)),
            ImageFormat::Png => ("png", reader()?.decode().is_ok()),
            ImageFormat::WebP => ("webp", reader()?.decode().is_ok()),
            _ => return None,
        };
        let size = reader()?.into_dimensions().ok()?;
        whole.then(|| Self { bytes: Bytes::new(bytes), ending, size, over: String::new() })
    }

    /// The same with something drawn over it.
    pub(crate) fn with(mut self, markups: &[Markup]) -> Self {
        let (width, height) = self.size;
        self.over = drawing::markups(markups, (f64::from(width), f64::from(height)));
        self
    }

    /// What kind of file it is, for a web page.
    pub(crate) fn mime(&self) -> &'static str {
        match self.ending {
            "png" => "image/png",
            "webp" => "image/webp",
            _ => "image/jpeg",
        }
    }

    /// Width over height of its frame.
    pub(crate) fn ratio(&self) -> f64 {
        let (width, height) = self.size;
        (f64::from(width) / f64::from(height.max(1))).clamp(NARROWEST, WIDEST)
    }

    /// A drawing of the picture under the given name, with what is drawn over it.
    ///
    /// The typesetter decodes a picture that it is given as such and keeps it so, 9 MB for one of 2048 × 1536 pixels;
    /// a picture within a drawing it hands through to the PDF.
    pub(crate) fn wrapped(&self, name: &str) -> String {
        let (width, height) = self.size;
        let size = format!(r#"width="{width}" height="{height}""#);
        let over = &self.over;
        format!(r#"<svg xmlns="http://www.w3.org/2000/svg" {size}><image {size} href="{name}"/>{over}</svg>"#)
    }
}

/// The marker that ends every whole JPEG file (ITU-T T.81, table B.1: EOI).
const JPEG_END: [u8; 2] = [0xff, 0xd9];

#[cfg(test)]
mod tests {
    use super::*;

    fn encoded(width: u32, height: u32, format: ImageFormat) -> Vec<u8> {
        let mut file = Cursor::new(Vec::new());
        image::DynamicImage::new_rgb8(width, height).write_to(&mut file, format).unwrap();
        file.into_inner()
    }

    #[track_caller]
    fn ratio(bytes: Vec<u8>, expected: Option<f64>) {
        assert_eq!(Printable::check(bytes).map(|picture| picture.ratio()), expected);
    }

    #[test]
    fn pictures_are_taken_and_all_else_is_not() {
        ratio(encoded(40, 20, ImageFormat::Jpeg), Some(2.0));
        ratio(encoded(40, 20, ImageFormat::Png), Some(2.0));
        ratio(encoded(40, 20, ImageFormat::WebP), Some(2.0));
        ratio(encoded(1000, 1, ImageFormat::Png), Some(WIDEST));
        ratio(encoded(1, 1000, ImageFormat::Png), Some(NARROWEST));
        ratio(vec![], None);
        ratio(b"<svg xmlns='http://www.w3.org/2000/svg' width='1' height='1'/>".to_vec(), None);
        ratio(encoded(40, 20, ImageFormat::Png)[..40].to_vec(), None);
        ratio(encoded(40, 20, ImageFormat::Jpeg)[..200].to_vec(), None);
        ratio(vec![0xff, 0xd8, 0xff, 0xe0, 0xff, 0xd9], None);
    }
}
