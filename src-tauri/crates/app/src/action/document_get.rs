//! A paper for the customer.

use serde::{Deserialize, Serialize};
use wearbook_core::assess::assess_with;
use wearbook_core::document::{
    Extent, Paper, Shop, closing_sheet, condition_report, evidence_sheet, size_sheet, size_table, work_list, work_list_table,
};
use wearbook_core::job::{Job, PhotoId};
use wearbook_core::job::ListKind;
use wearbook_report::{Print, Resolution, Sheet};
use wearbook_store::{JobId, ShownSize};

use crate::{Error, File, Settings, Wearbook, view};

/// Which paper of which job.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The job.
    pub job: JobId,
    /// The paper.
    pub document: Document,
    /// Of a report: how much of it; all, if not said.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Extent>"))]
    pub extent: Extent,
    /// Of a list: which; the order, if not said.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub list: Option<ListKind>,
    /// On which sheets; A4, if not said.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<PaperSize>"))]
    pub paper: PaperSize,
    /// What for; to be mailed, if not said.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Purpose>"))]
    pub purpose: Purpose,
}

/// The papers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Document {
    /// The condition report, to print or send.
    ReportPdf,
    /// The same as plain text, to paste into a message.
    ReportText,
    /// The sheet of the rebuild's sizes, to print or send.
    SizesPdf,
    /// All figures as a table for a spreadsheet.
    SizesCsv,
    /// One list, to print or send.
    ListPdf,
    /// One list as plain text.
    ListText,
    /// One list as a table for a spreadsheet.
    ListCsv,
    /// The closing sheet.
    ClosingPdf,
    /// The evidence for the machine shop, to print or send.
    EvidencePdf,
}

/// What it is printed on.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum PaperSize {
    /// 210 mm × 297 mm.
    #[default]
    A4,
    /// 8.5 in × 11 in.
    Letter,
}

/// What a PDF is for.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Purpose {
    /// To be mailed: below 5 MB.
    #[default]
    Mail,
    /// To be kept for decades: PDF/A, below 5 MB.
    Archive,
    /// To be printed, with pictures as large as they are kept.
    Print,
}

impl PaperSize {
    /// Its written form.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
        }
    }

    /// The one of this written form; A4 if there is none.
    pub(crate) fn named(name: &str) -> Self {
        if name == Self::Letter.name() { Self::Letter } else { Self::A4 }
    }
}

/// The paper.
pub type Reply = File;

/// Writes a paper from the job as it is now, dated today.
///
/// # Errors
/// `no-such-job`; `report` if the paper can't be set; what the store says.
pub fn act(
    book: &Wearbook,
    Arguments { job: id, document, extent, list, paper, purpose }: Arguments,
) -> Result<Reply, Error> {
    let today = book.clock.today();
    let (edits, settings) = book.store.read(|ledger| Ok::<_, Error>((ledger.edits(id)?, Settings::load(ledger)?)))?;
    let job = Job::fold(&edits);
    let shop = Shop { name: settings.shop_name, address: settings.shop_address };
    let assessment = book.open_job.look(id, |memo| assess_with(&job, memo));
    let kind = list.unwrap_or(ListKind::Order);
    let print = print(paper, purpose);
    let report = || condition_report(&job, &assessment, today, &shop, extent);
    let list = || work_list(&job, &assessment, today, &shop, kind);
    let (bytes, form, what) = match document {
        Document::ReportPdf => (pdf(book, &report(), print)?, PDF, String::new()),
        Document::ReportText => (text(&report()), TEXT, String::new()),
        Document::SizesPdf => (pdf(book, &size_sheet(&job, &assessment, today, &shop), print)?, PDF, "sizes.".into()),
        Document::SizesCsv => (csv(&size_table(&assessment))?, CSV, "sizes.".into()),
        Document::ListPdf => (pdf(book, &list(), print)?, PDF, list_name(kind)),
        Document::ListText => (text(&list()), TEXT, list_name(kind)),
        Document::ListCsv => (csv(&work_list_table(&assessment, kind))?, CSV, list_name(kind)),
        Document::ClosingPdf => {
            (pdf(book, &closing_sheet(&job, &assessment, today, &shop), print)?, PDF, "closing.".into())
        }
        Document::EvidencePdf => {
            (pdf(book, &evidence_sheet(&job, &assessment, today, &shop), print)?, PDF, "evidence.".into())
        }
    };
    let (mime, extension) = form;
    Ok(File { bytes, mime, file_name: Some(view::file_name(&job, today, &format!("{what}{extension}"))) })
}

const PDF: (&str, &str) = ("application/pdf", "pdf");
const TEXT: (&str, &str) = ("text/plain; charset=utf-8", "txt");
const CSV: (&str, &str) = ("text/csv; charset=utf-8", "csv");

/// Before the ending of the file's name: "order.".
fn list_name(kind: ListKind) -> String {
    format!("{}.", kind.title().to_lowercase())
}

fn text(paper: &Paper) -> Vec<u8> {
    wearbook_report::text(paper).into_bytes()
}

fn csv(rows: &[Vec<String>]) -> Result<Vec<u8>, Error> {
    wearbook_report::csv(rows).map_err(|error| Error::new("report", error.to_string()))
}

/// The long side of a picture on paper, in pixels: sharp at the size at which it is printed.
const PAPER_SIDE: u32 = 1280;

fn print(paper: PaperSize, purpose: Purpose) -> Print {
    Print {
        sheet: match paper {
            PaperSize::A4 => Sheet::A4,
            PaperSize::Letter => Sheet::Letter,
        },
        archive: purpose == Purpose::Archive,
        pictures: if purpose == Purpose::Print { Resolution::Full } else { Resolution::Mail },
    }
}

fn pdf(book: &Wearbook, paper: &Paper, print: Print) -> Result<Vec<u8>, Error> {
    // A picture that is missing leaves a frame that says so: the rest of the report must be able to leave.
    let picture = |photo: &PhotoId| {
        let screen = book.shown(photo, ShownSize::Screen).ok()?;
        // To be mailed it is made smaller yet: once is enough. What is shown carries no camera data either.
        if print.pictures == Resolution::Mail { Some(screen) } else { wearbook_photo::outgoing(&screen, PAPER_SIDE).ok() }
    };
    wearbook_report::pdf_as(print, paper, &picture).map_err(|error| Error::new("report", error.to_string()))
}
