//! `photo check` and `photo outgoing`: a single picture.

use std::io::Write;
use std::path::Path;

use serde_json::{Value, json};
use wearbook_photo::{Facts, MAX_BYTES, MAX_SIDE};

use crate::failure::Failure;
use crate::file;

/// Prints one line of JSON. A refused picture ends the program with 2.
pub(crate) fn check(picture: &Path) -> Result<(), Failure> {
    let bytes = file::read(picture, MAX_BYTES as u64)?;
    match wearbook_photo::check(&bytes) {
        Ok(facts) => print(&accepted(&facts)),
        Err(refusal) => {
            print(&json!({ "accepted": false, "code": refusal.code(), "message": refusal.message() }))?;
            Err(Failure::Refused)
        }
    }
}

/// Writes what would leave the shop, as large as the picture is.
pub(crate) fn outgoing(from: &Path, to: &Path) -> Result<(), Failure> {
    let bytes = file::read(from, MAX_BYTES as u64)?;
    match wearbook_photo::outgoing(&bytes, MAX_SIDE) {
        Ok(clean) => file::write(to, &clean),
        Err(refusal) => {
            eprintln!("{}", refusal.message());
            Err(Failure::Refused)
        }
    }
}

fn accepted(facts: &Facts) -> Value {
    let format = facts.format.name().to_lowercase();
    json!({ "accepted": true, "format": format, "width": facts.width, "height": facts.height })
}

fn print(line: &Value) -> Result<(), Failure> {
    writeln!(std::io::stdout(), "{line}").map_err(Failure::Output)
}
