//! Labels as other programs see them (pdfinfo, pdftotext, pdftoppm, qpdf, where these are installed), and read back from the
//! printed sheet.

#![allow(clippy::unwrap_used, reason = "clippy.toml lets tests unwrap, but not the functions that they share")]

#[path = "outside/said.rs"]
mod said;

use std::collections::BTreeSet;
use std::path::Path;

use said::{said, squeezed};
use wearbook_core::assess::assess;
use wearbook_core::date::Date;
use wearbook_core::document::{Desk, LabelStock, Labels, PaperSize, Pieces, SheetField, Shop, labels};
use wearbook_core::engine::Arrangement;
use wearbook_core::job::{Job, TextField};
use wearbook_core::label::JobStart;

/// The labels of a V8 whose owner writes at length, in two scripts.
fn v8() -> Labels {
    let machine = "Pump set “Ostra”, مضخة, of the water works in the upper valley #panic(\"read as code\")";
    let texts = [(TextField::Customer, "Haldor Brenvik & daughters".to_owned()), (TextField::Machine, machine.into())];
    let job = Job { arrangement: Some(Arrangement::vee(8)), texts: texts.into(), ..Job::default() };
    let desk = Desk { job: &job, assessment: &assess(&job), date: Date::EPOCH, shop: &Shop::default() };
    labels(&desk, JobStart::of(0x5bd1_e995_77aa_0031 << 64), Pieces::All)
}

#[track_caller]
fn check(stock: LabelStock, size: PaperSize, pages: usize, measures: &str) -> Vec<u8> {
    let labels = v8();
    let pdf = wearbook_report::labels(&labels, stock, SheetField::default(), size).unwrap();
    assert_eq!(
        pdf,
        wearbook_report::labels(&labels, stock, SheetField::default(), size).unwrap(),
        "the same labels gave other bytes"
    );
    if let Some(info) = said("pdfinfo", &["FILE"], &pdf) {
        for words in ["Title: Labels", "Tagged: yes", &format!("Pages: {pages}"), measures] {
            assert!(squeezed(&info).contains(&squeezed(words)), "“{words}” is not in {info}");
        }
    }
    if let Some(metadata) = said("pdfinfo", &["-meta", "FILE"], &pdf) {
        assert!(metadata.contains("<pdfuaid:part>1<"), "no mark of PDF/UA-1: {metadata}");
    }
    if let Some(text) = said("pdftotext", &["-raw", "FILE", "-"], &pdf) {
        let text = squeezed(&text);
        for label in &labels.labels {
            let told = squeezed(&format!("{} Haldor Brenvik & daughters", label.piece));
            assert!(text.contains(&told), "“{told}” is not there");
            assert!(text.contains(&label.code.to_string()), "the code of {} is not there", label.piece);
        }
    }
    if let Some(objects) = said("qpdf", &["--json", "FILE"], &pdf) {
        let told = objects.matches("\"/Alt\": \"u:Code W").count();
        assert_eq!(told, labels.labels.len(), "each code is told to those who can't see it");
    }
    pdf
}

#[test]
fn sheets_are_filled_and_rolls_run_on() {
    let count = v8().labels.len();
    let sheets = count.div_ceil(24);
    check(LabelStock::Sheet, PaperSize::A4, sheets, "Page size: 595.276 x 841.89 pts (A4)");
    check(LabelStock::Sheet, PaperSize::Letter, sheets, "Page size: 612 x 792 pts");
    // 62 mm by 29 mm.
    check(LabelStock::Roll, PaperSize::A4, count, "Page size: 175.748 x 82.2047 pts");
}

/// A begun sheet is used up: the first label stands on the field that was asked for, and what is left goes on the next sheet.
#[test]
fn a_begun_sheet_is_used_up() {
    let labels = Labels { labels: v8().labels.into_iter().take(3).collect(), ..v8() };
    let from = |field: u8| {
        let field = SheetField::try_from(field).unwrap();
        wearbook_report::labels(&labels, LabelStock::Sheet, field, PaperSize::A4).unwrap()
    };
    for (field, pages) in [(1, 1), (22, 1), (23, 2)] {
        let Some(info) = said("pdfinfo", &["FILE"], &from(field)) else { return };
        assert!(squeezed(&info).contains(&squeezed(&format!("Pages: {pages}"))), "from field {field}: {info}");
    }
    // Field 11 is the second of the fourth row: 10 mm and a third of 190 mm from the left, three labels of 34 mm from the top.
    let Some(layout) = said("pdftotext", &["-bbox", "FILE", "-"], &from(11)) else { return };
    let word = layout.lines().find(|line| line.contains("<word ")).unwrap();
    let at = |name: &str| -> f64 {
        let value = word.split(&format!("{name}=\"")).nth(1).unwrap();
        value.split('"').next().unwrap().parse::<f64>().unwrap() * 25.4 / 72.0
    };
    let (x, y) = (at("xMin"), at("yMin"));
    assert!((73.3..80.0).contains(&x) && (114.5..148.5).contains(&y), "{word}");
}

/// What a printer at 300 dots to the inch makes of it is read back, a whole sheet or one label.
#[track_caller]
fn reads_back(stock: LabelStock, size: PaperSize, first: usize) {
    let labels = v8();
    let pdf = wearbook_report::labels(&labels, stock, SheetField::default(), size).unwrap();
    let out = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("labels-{stock:?}-{size:?}"));
    let picture = out.with_extension("png");
    let arguments = ["-r", "300", "-gray", "-png", "-singlefile", "FILE", out.to_str().unwrap()];
    if said("pdftoppm", &arguments, &pdf).is_none() {
        return;
    }
    let found = wearbook_photo::codes(&std::fs::read(&picture).unwrap()).unwrap();
    std::fs::remove_file(&picture).unwrap();
    let printed: BTreeSet<String> = labels.labels.iter().take(first).map(|label| label.code.to_string()).collect();
    assert_eq!(found, printed);
}

#[test]
fn every_printed_code_is_read_back() {
    reads_back(LabelStock::Sheet, PaperSize::A4, 24);
    reads_back(LabelStock::Sheet, PaperSize::Letter, 24);
    reads_back(LabelStock::Roll, PaperSize::A4, 1);
}
