//! A spec sheet in a file of its own, and onto the shelf.

use serde::{Deserialize, Serialize};
use wearbook_core::job::{Change, Job, OnSheet};
use wearbook_core::sheet::Sheet;
use wearbook_store::ShelfKind;

use crate::shelf::{Shelf, json};
use crate::{Error, File, Settings, Wearbook};

/// What `format` says.
const FORMAT: &str = "wearbook-sheet";
/// The newest form that this program reads, and the one it writes.
const VERSION: u32 = 1;
/// The largest file: a thousand lines fit several times.
const MAX_BYTES: usize = 2 * 1024 * 1024;

/// The content of a `.json` file with one spec sheet.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct SheetFile {
    format: String,
    version: u32,
    sheet: Sheet,
}

pub(crate) fn write(sheet: Sheet) -> Result<File, Error> {
    let letters = |c: char| if c.is_alphanumeric() { c } else { ' ' };
    let plain: String = sheet.head.name.chars().map(letters).take(60).collect();
    let name = plain.split_whitespace().collect::<Vec<_>>().join(" ");
    let file = SheetFile { format: FORMAT.into(), version: VERSION, sheet };
    let mut bytes = serde_json::to_vec_pretty(&file).map_err(|error| Error::new("answer", error.to_string()))?;
    bytes.push(b'\n');
    Ok(File { bytes, mime: "application/json", file_name: Some(format!("{name}.sheet.json")) })
}

pub(crate) fn read(bytes: &[u8]) -> Result<Sheet, Error> {
    let refuse = |why: String| Err(Error::new("sheet-refused", why));
    if bytes.len() > MAX_BYTES {
        return refuse("This file has more than 2 MB, which no spec sheet has.".into());
    }
    #[derive(Deserialize)]
    struct Form {
        format: String,
        version: u32,
    }
    match serde_json::from_slice::<Form>(bytes) {
        Ok(form) if form.format != FORMAT => {
            refuse(format!("This file holds no spec sheet: its “format” should be “{FORMAT}”."))
        }
        Ok(form) if form.version > VERSION => {
            refuse("This spec sheet was written by a newer version of this program: install the newer version.".into())
        }
        Ok(_) => match serde_json::from_slice::<SheetFile>(bytes) {
            Ok(file) => Ok(file.sheet),
            Err(error) => refuse(format!("The spec sheet in this file can’t be read: {error}.")),
        },
        Err(_) => refuse("This file holds no spec sheet: choose one that was exported from a shelf.".into()),
    }
}

/// Checks a sheet and puts it on the shelf.
pub(crate) fn keep(book: &Wearbook, sheet: &Sheet) -> Result<Shelf, Error> {
    let name = sheet.head.name.trim();
    if name.is_empty() {
        return Err(Error::change("The spec sheet has no name: give it one under which the shop will find it."));
    }
    let shop = Job::default().speaking(book.store.read(Settings::load)?.terms);
    shop.check(&Change::OnSheet(OnSheet::UseSheet { sheet: Box::new(sheet.clone()) }))?;
    book.store.write(|ledger| {
        Shelf::room(Shelf::load(ledger)?.sheets.len())?;
        ledger.keep_on_shelf(ShelfKind::Sheet, name, &json(sheet)?, book.clock.now_millis())?;
        Shelf::load(ledger)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn refused(text: &str, because: &str) {
        let error = read(text.as_bytes()).unwrap_err();
        assert!(error.message.contains(because), "{}", error.message);
    }

    #[test]
    fn a_sheet_comes_back_as_it_went() {
        let sheet: Sheet = serde_json::from_value(serde_json::json!({
            "head": { "name": "Bench: no. 4", "unit": "millimetre" },
            "lines": [{ "of": { "kind": "crankshaft", "quantity": "end-float" }, "limit": "0.2 mm" }],
        }))
        .unwrap();
        let file = write(sheet.clone()).unwrap();
        assert_eq!(file.file_name.as_deref(), Some("Bench no 4.sheet.json"));
        assert_eq!(read(&file.bytes).unwrap(), sheet);
    }

    #[test]
    fn what_is_no_sheet_is_refused() {
        refused("", "holds no spec sheet");
        refused(r#"{"format": "wearbook-job", "version": 1}"#, "should be “wearbook-sheet”");
        refused(r#"{"format": "wearbook-sheet", "version": 2}"#, "newer version");
        refused(
            r#"{"format": "wearbook-sheet", "version": 1, "sheet": {"head": {"name": "", "unit": "cubit"}}}"#,
            "cubit",
        );
        let misprint = r#"{"format": "wearbook-sheet", "version": 1, "sheet": {"head": {"name": "A"}, "lines": [
            {"of": {"kind": "main-journal", "quantity": "diameter"}, "min": "2.996 in = 76.124 mm"}]}}"#;
        refused(misprint, "disagree");
    }
}
