//! Labels as an accessible PDF, on sheets to be cut up or on a roll, one after the other.

use serde_json::{Value, json};
use wearbook_core::document::{Label, LabelStock, Labels, PaperSize, SheetField};
use wearbook_core::under_way::UnderWay;

use crate::clean::{breakable, line, shortened};
use crate::content::{Content, replace};
use crate::direction::isolated;
use crate::drawing;
use crate::fonts::fonts_for;
use crate::pdf::{NotSet, file, laid_out};
use crate::symbol::Symbol;
use crate::world::Form;

/// Longest name of a piece, in characters.
const PIECE: usize = 60;
/// Longest text that tells whose engine it is, in characters: one line on a roll, two on a sheet, where there is room.
const JOB_LINE: (usize, usize) = (30, 60);

/// Sets labels, each with its code drawn and in letters. On sheets they fill one after the other, on the first from the first field
/// that is free; on a roll each has its page.
///
/// The file conforms to PDF/UA-1 (ISO 14289-1); a letter that no font has is shown as �.
///
/// # Errors
/// [`NotSet`], which is a fault of this program.
pub fn labels(labels: &Labels, stock: LabelStock, first: SheetField, size: PaperSize) -> Result<Vec<u8>, NotSet> {
    let drawings: Result<Vec<String>, NotSet> =
        labels.labels.iter().map(|label| Symbol::of(&label.code).map(|symbol| drawing::code(&symbol))).collect();
    let mut content = json!({
        "title": line(&format!("{} {}", labels.title, labels.subtitle)),
        "date": [labels.date.year(), labels.date.month(), labels.date.day()],
        "on-roll": stock == LabelStock::Roll,
        "used": first.used(),
        "labels": labels.labels.iter().enumerate().map(|(nth, label)| tag(label, nth, stock)).collect::<Vec<_>>(),
    });
    let found = fonts_for(&content.to_string());
    replace(&mut content, &found.missing);
    let content = Content { paper: content, pictures: vec![], drawings: drawings?, fonts: found.store };
    let set = laid_out(Form::Labels, size, &content, &UnderWay::default()).and_then(|document| file(&document, false));
    typst::comemo::evict(0);
    set
}

fn tag(label: &Label, drawing: usize, stock: LabelStock) -> Value {
    let (on_a_roll, on_a_sheet) = JOB_LINE;
    let most = if stock == LabelStock::Roll { on_a_roll } else { on_a_sheet };
    let code = label.code.in_groups();
    json!({
        "piece": isolated(&breakable(&shortened(&line(&label.piece), PIECE))),
        "job": label.job.iter().map(|typed| isolated(&breakable(&shortened(&line(typed), most)))).collect::<Vec<_>>(),
        "alt": format!("Code {code}"),
        "code": code,
        "drawing": drawing,
    })
}
