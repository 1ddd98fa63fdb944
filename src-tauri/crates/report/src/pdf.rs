//! The paper as an accessible PDF, set by Typst from `template.typ`.

use std::collections::BTreeSet;

use rayon::prelude::*;
use serde_json::json;
use typst::diag::SourceDiagnostic;
use typst::foundations::{Array, Bytes, Datetime, Dict, IntoValue, Smart};
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};
use wearbook_core::document::Paper;
use wearbook_core::job::PhotoId;

use crate::content::{Content, Pictures, pictures};
use crate::mail;
use crate::picture::Printable;
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

/// How large pictures may be.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Resolution {
    /// So that the file can be mailed: below 5 MB, whatever the number of pictures.
    #[default]
    Mail,
    /// As they are given.
    Full,
}

/// How a paper is printed.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Print {
    /// On what.
    pub sheet: Sheet,
    /// For the archive: PDF/A-2a (ISO 19005-2) besides PDF/UA-1.
    pub archive: bool,
    /// How large pictures may be.
    pub pictures: Resolution,
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

/// Where the bytes of a picture come from; asked from several threads at once.
pub type Source<'a> = &'a (dyn Fn(&PhotoId) -> Option<Vec<u8>> + Sync);

/// Sets a paper on A4 sheets, to be mailed.
///
/// Pictures are asked for once each: JPEG, PNG or WebP, upright. A JPEG that is small enough goes into the file
/// unchanged; one of 1280 pixels on its longer side is sharp at the printed size. One that is missing or can't be decoded
/// leaves a frame that says so. The same paper and pictures give the same bytes.
///
/// The file conforms to PDF/UA-1 (ISO 14289-1). Letters that no embedded font has are looked for in the system's fonts;
/// those that none has are shown as � and named in a notice on the paper.
///
/// # Errors
/// [`ReportError::Date`] for a date that does not exist.
pub fn pdf(paper: &Paper, pictures: Source<'_>) -> Result<Vec<u8>, ReportError> {
    pdf_as(Print::default(), paper, pictures)
}

/// Sets a paper as [`pdf`] does, on sheets of a given size.
///
/// # Errors
/// As for [`pdf`].
pub fn pdf_on(sheet: Sheet, paper: &Paper, pictures: Source<'_>) -> Result<Vec<u8>, ReportError> {
    pdf_as(Print { sheet, ..Print::default() }, paper, pictures)
}

/// Sets a paper as [`pdf`] does, in a given way.
///
/// # Errors
/// As for [`pdf`]; [`ReportError::Setting`] also if the file can't be made fit for the archive.
pub fn pdf_as(print: Print, paper: &Paper, pictures: Source<'_>) -> Result<Vec<u8>, ReportError> {
    let (year, month, day) = paper.date;
    if !(1..=9999).contains(&year) || Datetime::from_ymd(year, month, day).is_none() {
        return Err(ReportError::Date(year, month, day));
    }
    let content = Content::new(paper, &printable(print.pictures, paper, pictures));
    let set = set(print, &content).or_else(|refusal| {
        // A picture can be sound enough to be looked at and yet not fit for the file; better a report without
        // pictures than none.
        if content.pictures.is_empty() { Err(refusal) } else { set(print, &Content::without_pictures(paper)) }
    });
    // The typesetter remembers everything, decoded pictures too; a phone can't afford that.
    typst::comemo::evict(0);
    set
}

/// Fetches the pictures of a paper and makes them fit, side by side: nearly all the time goes there.
fn printable(resolution: Resolution, paper: &Paper, source: Source<'_>) -> Pictures {
    let share = mail::share(paper);
    let photos: BTreeSet<&PhotoId> = pictures(paper).map(|picture| &picture.photo).collect();
    let fetched = photos.into_par_iter().filter_map(|photo| {
        let bytes = source(photo)?;
        let bytes = if resolution == Resolution::Mail { mail::fitted(bytes, share) } else { bytes };
        Some((photo.clone(), Printable::check(bytes)?))
    });
    fetched.collect()
}

fn set(print: Print, content: &Content) -> Result<Vec<u8>, ReportError> {
    let mut desk = Desk::new(inputs(print.sheet, content), content.fonts.as_ref());
    for (nth, picture) in content.pictures.iter().enumerate() {
        let name = format!("picture-{nth}.{}", picture.ending);
        desk.put(&format!("picture-{nth}.svg"), Bytes::from_string(picture.wrapped(&name)));
        desk.put(&name, picture.bytes.clone());
    }
    let document = typst::compile(&desk).output.map_err(|refusals| refused(&refusals))?;
    let asked: &[PdfStandard] =
        if print.archive { &[PdfStandard::Ua_1, PdfStandard::A_2a] } else { &[PdfStandard::Ua_1] };
    let asked = PdfStandards::new(asked).map_err(|why| ReportError::Setting(why.message().to_string()))?;
    let file = typst_pdf::pdf(&document, &options(asked));
    // What was asked for the archive must be fit for it; all else is better handed over than not.
    let file = if print.archive {
        file
    } else {
        file.or_else(|_| typst_pdf::pdf(&document, &options(PdfStandards::default())))
    };
    file.map_err(|refusals| refused(&refusals))
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
