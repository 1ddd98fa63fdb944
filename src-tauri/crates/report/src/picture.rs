//! Pictures from outside, checked before the typesetter sees them.

use typst::foundations::Bytes;
use typst::visualize::{ExchangeFormat, RasterImage};

/// Largest picture file taken, in bytes. The app passes pictures of some hundred kilobytes.
const MOST_BYTES: usize = 32 << 20;
/// A strip narrower than this is shown with a margin rather than as a line.
const NARROWEST: f64 = 0.4;
/// Wider than this likewise.
const WIDEST: f64 = 3.0;

/// A picture that can be printed.
#[derive(Debug, Clone)]
pub(crate) struct Printable {
    /// The file as it came; a JPEG goes into the PDF unchanged.
    pub(crate) bytes: Bytes,
    /// What the file is.
    pub(crate) format: ExchangeFormat,
    /// Width over height of the frame that it gets.
    pub(crate) ratio: f64,
}

impl Printable {
    /// Takes a JPEG, PNG or WebP file that can be decoded; none otherwise.
    pub(crate) fn check(bytes: Vec<u8>) -> Option<Self> {
        if bytes.len() > MOST_BYTES {
            return None;
        }
        let format = ExchangeFormat::detect(&bytes).filter(|format| *format != ExchangeFormat::Gif)?;
        let bytes = Bytes::new(bytes);
        // The typesetter remembers the decoded picture, so looking at it here costs nothing twice.
        let image = RasterImage::plain(bytes.clone(), format).ok()?;
        let ratio = f64::from(image.width()) / f64::from(image.height().max(1));
        Some(Self { bytes, format, ratio: ratio.clamp(NARROWEST, WIDEST) })
    }

    /// The format's name in the template.
    pub(crate) fn format_name(&self) -> &'static str {
        match self.format {
            ExchangeFormat::Png => "png",
            ExchangeFormat::Jpg => "jpg",
            ExchangeFormat::Gif => "gif",
            ExchangeFormat::Webp => "webp",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn encoded(width: u32, height: u32, format: image::ImageFormat) -> Vec<u8> {
        let mut file = std::io::Cursor::new(Vec::new());
        image::DynamicImage::new_rgb8(width, height).write_to(&mut file, format).unwrap();
        file.into_inner()
    }

    #[track_caller]
    fn ratio(bytes: Vec<u8>, expected: Option<f64>) {
        assert_eq!(Printable::check(bytes).map(|picture| picture.ratio), expected);
    }

    #[test]
    fn pictures_are_taken_and_all_else_is_not() {
        ratio(encoded(40, 20, image::ImageFormat::Jpeg), Some(2.0));
        ratio(encoded(40, 20, image::ImageFormat::Png), Some(2.0));
        ratio(encoded(40, 20, image::ImageFormat::WebP), Some(2.0));
        ratio(encoded(1000, 1, image::ImageFormat::Png), Some(WIDEST));
        ratio(encoded(1, 1000, image::ImageFormat::Png), Some(NARROWEST));
        ratio(vec![], None);
        ratio(b"<svg xmlns='http://www.w3.org/2000/svg' width='1' height='1'/>".to_vec(), None);
        ratio(encoded(40, 20, image::ImageFormat::Png)[..40].to_vec(), None);
        ratio(vec![0xff, 0xd8, 0xff, 0xe0], None);
    }
}
