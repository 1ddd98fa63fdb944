//! A paper for the customer.

use serde::Deserialize;
use wearbook_core::document::{
    Desk, Extent, LabelStock, Paper, PaperSize, Pieces, SheetField, Shop, closing_sheet, condition_report,
    customers_page, evidence_sheet, goes_back, labels, machine_shop, message, parts_counter, size_sheet, size_table,
    strip_down_order, work_list, work_list_table,
};
use wearbook_core::job::{ListKind, PhotoId};
use wearbook_core::under_way::UnderWay;
use wearbook_report::{Print, Resolution};
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
    /// Of a report: how much of it; the short one, if not said.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Extent>"))]
    pub extent: Extent,
    /// Of a list: which; the order, if not said.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub list: Option<ListKind>,
    /// Of labels: on what; sheets, if not said.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<LabelStock>"))]
    pub stock: LabelStock,
    /// Of labels: of which pieces; of all, if not said.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Pieces>"))]
    pub pieces: Pieces,
    /// Of labels on sheets: the first field that is free; that of a whole sheet, if not said.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<SheetField>"))]
    pub field: SheetField,
    /// What it is printed on; A4, if not said.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<PaperSize>"))]
    pub paper: PaperSize,
    /// What for; to be mailed, if not said.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Purpose>"))]
    pub purpose: Purpose,
    /// A number by which to ask how far it is.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub way: Option<u32>,
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
    /// The customer's page, to print or send.
    CustomersPdf,
    /// The same as one web page in one file.
    CustomersHtml,
    /// The same as a picture, for a telephone.
    CustomersPng,
    /// The same as a message of a few lines.
    CustomersText,
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
    /// The machine shop's page, to go with the pieces.
    MachineShopPdf,
    /// The parts counter's page.
    PartsCounterPdf,
    /// Labels for bags and tags, to print.
    LabelsPdf,
    /// What the customer agrees to before anything is opened.
    StripDownOrderPdf,
    /// What goes back to a customer who refused the work.
    GoesBackPdf,
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

/// The paper.
pub type Reply = File;

/// Writes a paper from the job as it is now, dated today.
///
/// # Errors
/// `no-such-job`; `nothing-to-print` if there are no such labels, or none yet; `report` if the paper can't be set; `stopped`; what the store says.
pub fn act(
    book: &Wearbook,
    Arguments { job: id, document, extent, list, stock, pieces, field, paper, purpose, way }: Arguments,
) -> Result<Reply, Error> {
    let way = &*book.ways.begin(way);
    let today = book.clock.today();
    let settings = book.store.read(Settings::load)?;
    let (job, assessment) = book.look(id, |open| {
        let assessment = open.assessment();
        (open.log.job().clone(), assessment)
    })?;
    let shop = Shop {
        name: settings.shop_name,
        address: settings.shop_address,
        phone: settings.shop_phone,
        conditions: settings.shop_conditions,
    };
    let desk = Desk { job: &job, assessment: &assessment, date: today, shop: &shop };
    let kind = list.unwrap_or(ListKind::Order);
    let print = print(paper, purpose);
    let pdf = |written: Paper| Ok::<_, Error>((pdf(book, &written, print, way)?, PDF));
    let text = |written: Paper| (wearbook_report::text(&written).into_bytes(), TEXT);
    let csv = |rows: Vec<Vec<String>>| Ok::<_, Error>((csv(&rows)?, CSV));
    let ((bytes, form), what) = match document {
        Document::ReportPdf => (pdf(condition_report(&desk, extent))?, String::new()),
        Document::ReportText => (text(condition_report(&desk, extent)), String::new()),
        Document::CustomersPdf => (pdf(customers_page(&desk))?, "your-engine.".into()),
        Document::CustomersHtml => ((html(book, &customers_page(&desk), way)?, HTML), "your-engine.".into()),
        Document::CustomersPng => ((png(book, &customers_page(&desk), way)?, PNG), "your-engine.".into()),
        Document::CustomersText => ((message(&desk).join("\n").into_bytes(), TEXT), "your-engine.".into()),
        Document::SizesPdf => (pdf(size_sheet(&desk))?, "sizes.".into()),
        Document::SizesCsv => (csv(size_table(&assessment))?, "sizes.".into()),
        Document::ListPdf => (pdf(work_list(&desk, kind))?, list_name(kind)),
        Document::ListText => (text(work_list(&desk, kind)), list_name(kind)),
        Document::ListCsv => (csv(work_list_table(&assessment, kind))?, list_name(kind)),
        Document::ClosingPdf => (pdf(closing_sheet(&desk))?, "closing.".into()),
        Document::MachineShopPdf => (pdf(machine_shop(&desk))?, "machine-shop.".into()),
        Document::PartsCounterPdf => (pdf(parts_counter(&desk))?, "parts-counter.".into()),
        Document::LabelsPdf => {
            let labels = labels(&desk, id.start(), pieces);
            if labels.labels.is_empty() {
                let why = if job.arrangement.is_some() { pieces.none() } else { NO_LABELS };
                return Err(Error::new("nothing-to-print", why));
            }
            ((wearbook_report::labels(&labels, stock, field, paper)?, PDF), "labels.".into())
        }
        Document::StripDownOrderPdf => (pdf(strip_down_order(&desk))?, "strip-down-order.".into()),
        Document::GoesBackPdf => (pdf(goes_back(&desk))?, "what-goes-back.".into()),
        Document::EvidencePdf => (pdf(evidence_sheet(&desk))?, "evidence.".into()),
    };
    let (mime, extension) = form;
    Ok(File { bytes, mime, file_name: Some(view::file_name(&job, today, &format!("{what}{extension}"))) })
}

const PDF: (&str, &str) = ("application/pdf", "pdf");
const HTML: (&str, &str) = ("text/html; charset=utf-8", "html");
const PNG: (&str, &str) = ("image/png", "png");
const TEXT: (&str, &str) = ("text/plain; charset=utf-8", "txt");
const CSV: (&str, &str) = ("text/csv; charset=utf-8", "csv");

const NO_LABELS: &str =
    "There are no labels before it is known how the engine is laid out: enter the arrangement on the intake sheet.";

/// Before the ending of the file's name: "order.".
fn list_name(kind: ListKind) -> String {
    format!("{}.", kind.title().to_lowercase())
}

fn csv(rows: &[Vec<String>]) -> Result<Vec<u8>, Error> {
    wearbook_report::csv(rows).map_err(|error| Error::new("report", error.to_string()))
}

/// The long side of a picture on paper, in pixels: sharp at the size at which it is printed.
const PAPER_SIDE: u32 = 1280;

fn print(size: PaperSize, purpose: Purpose) -> Print {
    Print {
        size,
        archive: purpose == Purpose::Archive,
        pictures: if purpose == Purpose::Print { Resolution::Full } else { Resolution::Mail },
    }
}

fn pdf(book: &Wearbook, paper: &Paper, print: Print, way: &UnderWay) -> Result<Vec<u8>, Error> {
    Ok(wearbook_report::pdf(paper, print, &|photo| picture(book, photo, print.pictures), way)?)
}

fn png(book: &Wearbook, paper: &Paper, way: &UnderWay) -> Result<Vec<u8>, Error> {
    Ok(wearbook_report::png(paper, &|photo| picture(book, photo, Resolution::Mail), way)?)
}

fn html(book: &Wearbook, paper: &Paper, way: &UnderWay) -> Result<Vec<u8>, Error> {
    Ok(wearbook_report::html(paper, &|photo| picture(book, photo, Resolution::Mail), way)
        .map_err(wearbook_report::NotSet::from)?
        .into_bytes())
}

/// A picture that is missing leaves a frame that says so: the rest of the paper must be able to leave.
fn picture(book: &Wearbook, photo: &PhotoId, resolution: Resolution) -> Option<Vec<u8>> {
    let screen = book.shown(photo, ShownSize::Screen).ok()?;
    // To be mailed it is made smaller yet: once is enough. What is shown carries no camera data either.
    match resolution {
        Resolution::Mail => Some(screen),
        Resolution::Full => wearbook_photo::outgoing(&screen, PAPER_SIDE).ok(),
    }
}
