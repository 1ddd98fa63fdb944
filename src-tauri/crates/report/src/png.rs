//! The customer's page as a picture, set anew on a narrow sheet so that it reads on a telephone.

use image::codecs::png::{CompressionType, FilterType, PngEncoder};
use image::{ExtendedColorType, ImageEncoder};
use typst_render::{RenderOptions, render};
use wearbook_core::document::Paper;
use wearbook_core::under_way::UnderWay;

use crate::content::Content;
use crate::mail::ON_A_SCREEN;
use crate::pdf::{NotSet, Print, Source, laid_out, printable};
use crate::world::Form;

/// Pixels to the point: the sheet of 360 points comes out 1080 pixels wide.
const SCALE: f64 = 3.0;

/// Sets the customer's page of a paper as a PNG, 1080 pixels wide and as high as it has to be.
///
/// # Errors
/// [`NotSet`].
pub fn png(paper: &Paper, pictures: Source<'_>, way: &UnderWay) -> Result<Vec<u8>, NotSet> {
    let print = Print::default();
    let content = Content::new(paper, &printable(print.pictures, paper, pictures, &|_| ON_A_SCREEN, way)?);
    let set = laid_out(Form::Picture, print.size, &content, way).and_then(|document| {
        let page = document.pages().first().ok_or_else(|| NotSet::Refused("no page".into()))?;
        let options = RenderOptions { pixel_per_pt: SCALE.into(), ..RenderOptions::default() };
        let pixels = render(page, &options);
        // The page has a white ground, so no pixel lets anything through.
        let opaque: Vec<u8> = pixels.pixels().iter().flat_map(|own| [own.red(), own.green(), own.blue()]).collect();
        let mut file = Vec::new();
        PngEncoder::new_with_quality(&mut file, CompressionType::Default, FilterType::Adaptive)
            .write_image(&opaque, pixels.width(), pixels.height(), ExtendedColorType::Rgb8)
            .map_err(|error| NotSet::Refused(error.to_string()))?;
        Ok(file)
    });
    typst::comemo::evict(0);
    set
}
