//! The paper as an accessible PDF, set by Typst from `template.typ`.

use serde_json::json;
use typst::diag::SourceDiagnostic;
use typst::foundations::{Array, Bytes, Datetime, Dict, IntoValue, Smart};
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};
use wearbook_core::document::Paper;
use wearbook_core::job::PhotoId;

use crate::content::Content;
use crate::world::Desk;

/// What the paper is printed on.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Sheet {
    /// 210 mm × 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 in × 11 in.
    Letter,
}

/// Why a paper could not be set.
#[derive(Debug, thiserror::Error)]
pub enum ReportError {
    /// The date on the paper does not exist.
    #[error("The paper's date, {0}-{1}-{2}, is not in the calendar: it should be a day such as 2024-3-9.")]
    Date(i32, u8, u8),
    /// The typesetter refused; a fault of this program, not of the paper.
    #[error("The report could not be set. What the typesetter said: {0}")]
    Setting(String),
}

/// Sets a paper on A4 sheets.
///
/// Pictures are asked for once each: JPEG, PNG or WebP, upright. A JPEG goes into the file unchanged; one of 1280
/// pixels on its longer side is sharp at the printed size. One that is missing or can't be decoded leaves a frame that
/// says so. The same paper and pictures give the same bytes.
///
/// The file conforms to PDF/UA-1 (ISO 14289-1) unless the text holds letters that no embedded font has, such as
/// Chinese ones; then it is tagged all the same, and the letters can be copied out of it but are printed as boxes.
///
/// # Errors
/// [`ReportError::Date`] for a date that does not exist.
pub fn pdf(paper: &Paper, pictures: &mut dyn FnMut(&PhotoId) -> Option<Vec<u8>>) -> Result<Vec<u8>, ReportError> {
    pdf_on(Sheet::A4, paper, pictures)
}

/// Sets a paper as [`pdf`] does, on sheets of a given size.
///
/// # Errors
/// As for [`pdf`].
pub fn pdf_on(
    sheet: Sheet,
    paper: &Paper,
    pictures: &mut dyn FnMut(&PhotoId) -> Option<Vec<u8>>,
) -> Result<Vec<u8>, ReportError> {
    let (year, month, day) = paper.date;
    if !(1..=9999).contains(&year) || Datetime::from_ymd(year, month, day).is_none() {
        return Err(ReportError::Date(year, month, day));
    }
    let content = Content::new(paper, pictures);
    let set = set(sheet, &content).or_else(|refusal| {
        // A picture can be sound enough to be looked at and yet not fit for the file; better a report without
        // pictures than none.
        if content.pictures.is_empty() { Err(refusal) } else { set(sheet, &Content::without_pictures(paper)) }
    });
    // The typesetter remembers everything, decoded pictures too; a phone can't afford that.
    typst::comemo::evict(0);
    set
}

fn set(sheet: Sheet, content: &Content) -> Result<Vec<u8>, ReportError> {
    let mut desk = Desk::new(inputs(sheet, content));
    for (nth, picture) in content.pictures.iter().enumerate() {
        let name = format!("picture-{nth}.{}", picture.ending);
        desk.put(&format!("picture-{nth}.svg"), Bytes::from_string(picture.wrapped(&name)));
        desk.put(&name, Bytes::new(picture.bytes.clone()));
    }
    let document = typst::compile(&desk).output.map_err(|refusals| refused(&refusals))?;
    let accessible =
        PdfStandards::new(&[PdfStandard::Ua_1]).map_err(|why| ReportError::Setting(why.message().to_string()))?;
    typst_pdf::pdf(&document, &options(accessible))
        .or_else(|_| typst_pdf::pdf(&document, &options(PdfStandards::default())))
        .map_err(|refusals| refused(&refusals))
}

fn options(standards: PdfStandards) -> PdfOptions {
    PdfOptions { creator: Smart::Custom(Some("Wearbook".into())), standards, ..PdfOptions::default() }
}

fn inputs(sheet: Sheet, content: &Content) -> Dict {
    let paper = json!({ "sheet": if sheet == Sheet::A4 { "a4" } else { "us-letter" }, "content": content.paper });
    let drawings: Array = content.drawings.iter().map(|svg| Bytes::from_string(svg.clone()).into_value()).collect();
    let mut inputs = Dict::new();
    inputs.insert("paper".into(), Bytes::from_string(paper.to_string()).into_value());
    inputs.insert("drawings".into(), drawings.into_value());
    inputs
}

fn refused(refusals: &[SourceDiagnostic]) -> ReportError {
    let messages: Vec<&str> = refusals.iter().map(|refusal| refusal.message.as_str()).collect();
    ReportError::Setting(messages.join("; "))
}
