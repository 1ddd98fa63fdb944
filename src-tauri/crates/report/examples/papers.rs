//! Writes every paper of every input as files, to be looked at and to be compared with those of an earlier state
//! (`scripts/papers`): jobs as they come in, names in other scripts, very many photos, none.
//!
//! `cargo run -p wearbook-report --example papers -- OUTDIR [INPUT]`

#[path = "../../core/tests/data/mod.rs"]
mod data;
#[path = "../../core/tests/entered/mod.rs"]
mod entered;
#[path = "../tests/inputs/mod.rs"]
mod inputs;
#[path = "../tests/jobs/mod.rs"]
mod jobs;

use std::error::Error;
use std::fs;
use std::path::Path;

use inputs::{INPUTS, Input, input};
use jobs::written;
use wearbook_core::document::{
    Extent, LabelStock, Paper, PaperSize, Pieces, SheetField, closing_sheet, condition_report, customers_page,
    evidence_sheet, goes_back, labels, machine_shop, message, parts_counter, size_sheet, strip_down_order, work_list,
};
use wearbook_core::job::ListKind;
use wearbook_core::label::JobStart;
use wearbook_core::under_way::UnderWay;
use wearbook_report::{Print, html, pdf, png, text};

fn main() -> Result<(), Box<dyn Error>> {
    let out = std::env::args().nth(1).ok_or("Say where to write: papers OUTDIR")?;
    let only = std::env::args().nth(2);
    for name in INPUTS.into_iter().filter(|name| only.as_deref().is_none_or(|only| only == *name)) {
        let input = input(name);
        let folder = Path::new(&out).join(input.name);
        fs::create_dir_all(&folder)?;
        papers(&folder, &input)?;
    }
    Ok(())
}

fn papers(folder: &Path, Input { job, photos, .. }: &Input) -> Result<(), Box<dyn Error>> {
    let source = |id: &_| photos.get(id).cloned();
    let way = UnderWay::default();
    let page = written(job, customers_page);
    fs::write(folder.join("customers-page.html"), html(&page, &source, &way)?)?;
    fs::write(folder.join("customers-page.png"), png(&page, &source, &way)?)?;
    fs::write(folder.join("customers-page.txt"), written(job, message).join("\n"))?;
    let write = |name: &str, paper: &Paper, print: Print| -> Result<(), Box<dyn Error>> {
        fs::write(folder.join(format!("{name}.pdf")), pdf(paper, print, &source, &way)?)?;
        Ok(fs::write(folder.join(format!("{name}.pdf.txt")), text(paper))?)
    };
    let a4 = Print::default();
    let letter = Print { size: PaperSize::Letter, ..a4 };
    write("customers-page", &page, a4)?;
    write("customers-page-letter", &page, letter)?;
    write("short-report", &written(job, |desk| condition_report(desk, Extent::Short)), letter)?;
    write("full-report", &written(job, |desk| condition_report(desk, Extent::Full)), a4)?;
    write("closing", &written(job, closing_sheet), a4)?;
    write("evidence", &written(job, evidence_sheet), a4)?;
    write("sizes", &written(job, size_sheet), a4)?;
    write("machine-shop", &written(job, machine_shop), a4)?;
    write("parts-counter", &written(job, parts_counter), a4)?;
    write("strip-down-order", &written(job, strip_down_order), a4)?;
    write("goes-back", &written(job, goes_back), a4)?;
    write("machine-shop-letter", &written(job, machine_shop), letter)?;
    write("short-report-a4", &written(job, |desk| condition_report(desk, Extent::Short)), a4)?;
    write("put-right", &written(job, |desk| work_list(desk, ListKind::PutRight)), a4)?;
    let labels = written(job, |desk| labels(desk, JobStart::of(7 << 100), Pieces::default()));
    let on_sheets = wearbook_report::labels(&labels, LabelStock::default(), SheetField::default(), PaperSize::A4)?;
    Ok(fs::write(folder.join("labels.pdf"), on_sheets)?)
}
