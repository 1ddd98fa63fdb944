//! The paper as an accessible PDF, set by Typst from `template/blocks.typ`.

use std::collections::BTreeSet;

use rayon::prelude::*;
use serde_json::json;
use typst::diag::SourceDiagnostic;
use typst::foundations::{Array, Bytes, Dict, IntoValue, Smart};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};
use wearbook_core::document::{Paper, PaperSize};
use wearbook_core::job::PhotoId;
use wearbook_core::under_way::{Stopped, UnderWay};

use crate::content::{Content, Pictures, pictures};
use crate::mail;
use crate::picture::Printable;
use crate::world::{Form, PaperWorld};

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
    pub size: PaperSize,
    /// For the archive: PDF/A-2a (ISO 19005-2) besides PDF/UA-1.
    pub archive: bool,
    /// How large pictures may be.
    pub pictures: Resolution,
}

/// Why a paper could not be set.
#[derive(Debug, thiserror::Error)]
pub enum NotSet {
    /// With what the typesetter said: a fault of this program, not of the paper.
    #[error("The report could not be set. What the typesetter said: {0}")]
    Refused(String),
    /// Whoever waited for it no longer does.
    #[error(transparent)]
    Stopped(#[from] Stopped),
}

/// Where the bytes of a picture come from; asked from several threads at once.
pub type Source<'a> = &'a (dyn Fn(&PhotoId) -> Option<Vec<u8>> + Sync);

/// Sets a paper.
///
/// Pictures are asked for once each: JPEG, PNG or WebP, upright. A JPEG that is small enough goes into the file
/// unchanged; no other is finer than 300 to the inch. One that is missing or can't be decoded
/// leaves a frame that says so. The same paper and pictures give the same bytes.
///
/// The file conforms to PDF/UA-1 (ISO 14289-1). Letters that no embedded font has are looked for in the system's fonts;
/// those that none has are shown as � and named in a notice on the paper.
///
/// # Errors
/// [`NotSet`], also if the file can't be made fit for the archive.
pub fn pdf(paper: &Paper, print: Print, pictures: Source<'_>, way: &UnderWay) -> Result<Vec<u8>, NotSet> {
    let sides = mail::sides(paper);
    let side = |photo: &PhotoId| sides.get(photo).copied().unwrap_or(mail::ON_A_SCREEN);
    let content = Content::new(paper, &printable(print.pictures, paper, pictures, &side, way)?);
    let set = set(print, &content, way).or_else(|refusal| {
        way.go_on()?;
        // A picture can be sound enough to be looked at and yet not fit for the file; better a report without
        // pictures than none.
        if content.pictures.is_empty() { Err(refusal) } else { set(print, &Content::without_pictures(paper), way) }
    });
    // The typesetter remembers everything, decoded pictures too; a phone can't afford that.
    typst::comemo::evict(0);
    set
}

/// Fetches the pictures of a paper and makes them fit, each with at most so many pixels on its long side; all at once,
/// for nearly all the time goes there.
///
/// # Errors
/// [`Stopped`].
pub(crate) fn printable(
    resolution: Resolution,
    paper: &Paper,
    source: Source<'_>,
    side: &(dyn Fn(&PhotoId) -> u32 + Sync),
    way: &UnderWay,
) -> Result<Pictures, Stopped> {
    let share = mail::share(paper);
    let photos: BTreeSet<&PhotoId> = pictures(paper).map(|picture| &picture.photo).collect();
    // To set it is the last.
    way.expect(photos.len() + 1);
    let fit = |photo: &PhotoId| {
        let bytes = source(photo)?;
        let bytes = if resolution == Resolution::Mail { mail::fitted(bytes, side(photo), share) } else { bytes };
        Some((photo.clone(), Printable::check(bytes)?))
    };
    photos
        .into_par_iter()
        .filter_map(|photo| way.go_on().map(|()| fit(photo)).and_then(|fit| way.step().map(|()| fit)).transpose())
        .collect()
}

/// Lays content out in a form.
pub(crate) fn laid_out(
    form: Form,
    size: PaperSize,
    content: &Content,
    way: &UnderWay,
) -> Result<PagedDocument, NotSet> {
    let mut world = PaperWorld::new(form, inputs(size, content), content.fonts.as_ref(), way);
    for (nth, picture) in content.pictures.iter().enumerate() {
        let name = format!("picture-{nth}.{}", picture.ending);
        world.put(&format!("picture-{nth}.svg"), Bytes::from_string(picture.wrapped(&name)));
        world.put(&name, picture.bytes.clone());
    }
    let set = typst::compile(&world).output;
    way.step()?;
    set.map_err(|refusals| refused(&refusals))
}

fn set(print: Print, content: &Content, way: &UnderWay) -> Result<Vec<u8>, NotSet> {
    file(&laid_out(Form::Paper, print.size, content, way)?, print.archive)
}

/// Writes out what was laid out, for the archive or not.
pub(crate) fn file(document: &PagedDocument, archive: bool) -> Result<Vec<u8>, NotSet> {
    let asked: &[PdfStandard] = if archive { &[PdfStandard::Ua_1, PdfStandard::A_2a] } else { &[PdfStandard::Ua_1] };
    let asked = PdfStandards::new(asked).map_err(|why| NotSet::Refused(why.message().to_string()))?;
    let file = typst_pdf::pdf(document, &options(asked));
    // What was asked for the archive must be fit for it; all else is better handed over than not.
    let file =
        if archive { file } else { file.or_else(|_| typst_pdf::pdf(document, &options(PdfStandards::default()))) };
    file.map_err(|refusals| refused(&refusals))
}

fn options(standards: PdfStandards) -> PdfOptions {
    PdfOptions { creator: Smart::Custom(Some("Wearbook".into())), standards, ..PdfOptions::default() }
}

fn inputs(size: PaperSize, content: &Content) -> Dict {
    let size = match size {
        PaperSize::A4 => "a4",
        PaperSize::Letter => "us-letter",
    };
    let paper = json!({ "size": size, "content": content.paper });
    let drawings: Array = content.drawings.iter().map(|svg| Bytes::from_string(svg.clone()).into_value()).collect();
    let mut inputs = Dict::new();
    inputs.insert("paper".into(), Bytes::from_string(paper.to_string()).into_value());
    inputs.insert("drawings".into(), drawings.into_value());
    inputs
}

fn refused(refusals: &[SourceDiagnostic]) -> NotSet {
    let messages: Vec<&str> = refusals.iter().map(|refusal| refusal.message.as_str()).collect();
    NotSet::Refused(messages.join("; "))
}
