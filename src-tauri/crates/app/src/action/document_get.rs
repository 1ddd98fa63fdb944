//! A paper for the customer.

use serde::Deserialize;
use wearbook_core::assess::assess;
use wearbook_core::document::{Paper, Shop, condition_report, size_sheet, size_table};
use wearbook_core::job::{Job, PhotoId};
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
}

/// The paper.
pub type Reply = File;

/// Writes a paper from the job as it is now, dated today.
///
/// # Errors
/// `no-such-job`; `report` if the paper can't be set; what the store says.
pub fn act(book: &Wearbook, Arguments { job, document }: Arguments) -> Result<Reply, Error> {
    let today = book.clock.today();
    let (edits, settings) =
        book.store.read(|ledger| Ok::<_, Error>((ledger.edits(job)?, Settings::load(ledger)?)))?;
    let job = Job::fold(&edits);
    let shop = Shop { name: settings.shop_name, address: settings.shop_address };
    let assessment = assess(&job);
    let (bytes, mime, ending) = match document {
        Document::ReportPdf => {
            (pdf(book, &condition_report(&job, &assessment, today, &shop))?, "application/pdf", "pdf")
        }
        Document::ReportText => {
            let paper = condition_report(&job, &assessment, today, &shop);
            (wearbook_report::text(&paper).into_bytes(), "text/plain; charset=utf-8", "txt")
        }
        Document::SizesPdf => {
            (pdf(book, &size_sheet(&job, &assessment, today, &shop))?, "application/pdf", "sizes.pdf")
        }
        Document::SizesCsv => {
            let table = wearbook_report::csv(&size_table(&assessment));
            let bytes = table.map_err(|error| Error::new("report", error.to_string()))?;
            (bytes, "text/csv; charset=utf-8", "sizes.csv")
        }
    };
    Ok(File { bytes, mime, file_name: Some(view::file_name(&job, today, ending)) })
}

/// The long side of a picture on paper, in pixels: sharp at the size at which it is printed.
const PAPER_SIDE: u32 = 1280;

fn pdf(book: &Wearbook, paper: &Paper) -> Result<Vec<u8>, Error> {
    // A picture that is missing leaves a frame that says so: the rest of the report must be able to leave.
    let mut picture = |photo: &PhotoId| {
        let screen = book.shown(photo, ShownSize::Screen).ok()?;
        wearbook_photo::outgoing(&screen, PAPER_SIDE).ok()
    };
    wearbook_report::pdf(paper, &mut picture).map_err(|error| Error::new("report", error.to_string()))
}
