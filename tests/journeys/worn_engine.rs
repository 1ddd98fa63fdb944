//! An invented engine with some of everything on record, and a picture to add to it.

use std::io::Cursor;

use image::{ImageFormat, Rgb, RgbImage};
use serde_json::{Value, json};
use wearbook_app::{Answer, Wearbook};

use crate::failure::{Outcome, fail};

/// A small photograph-like JPEG.
pub(crate) fn picture() -> Outcome<Vec<u8>> {
    picture_of(2)
}

/// The same with its brightness spread over more lines or fewer.
pub(crate) fn picture_of(lines: u32) -> Outcome<Vec<u8>> {
    let image = RgbImage::from_fn(640, 480, |x, y| {
        let shade = |n: u32| u8::try_from(n % 256).unwrap_or(0);
        Rgb([shade(x / 3), shade(y / lines), shade(x + y)])
    });
    let mut jpeg = Cursor::new(Vec::new());
    image.write_to(&mut jpeg, ImageFormat::Jpeg)?;
    Ok(jpeg.into_inner())
}

/// Enters the engine into the book.
pub(crate) fn enter(book: &Wearbook) -> Outcome {
    let view = act(book, "job_create", json!({}), None)?;
    let job = view.get("job").cloned().unwrap_or_default();
    let catalogue = act(book, "catalogue", json!({}), None)?;
    let arrangement = catalogue.pointer("/arrangements/0/arrangement").cloned().unwrap_or_default();
    let changes = json!([
        { "do": "fill", "field": "customer", "text": "A. Harrow" },
        { "do": "fill", "field": "machine", "text": "Dredger winch" },
        { "do": "arrange", "arrangement": arrangement },
        { "do": "note-mark", "place": { "main-cap": 1 },
          "mark": { "text": "1", "marking": "found", "side": "left", "points": "front" } },
        { "do": "tag", "part": "main-shell.1.lower", "tag": "scoring", "grade": 3, "zones": ["front-crown", "middle-crown"] },
        { "do": "tag", "part": "main-shell.2.lower", "tag": "embedded-debris", "grade": 2, "zones": ["middle-crown"] },
        { "do": "tag", "part": "main-shell.3.lower", "tag": "embedded-debris", "grade": 4, "zones": [] },
        { "do": "tag", "part": "rod-shell.1.upper", "tag": "scoring", "grade": 1, "zones": ["rear-crown"] },
        { "do": "tag", "part": "tappet.2.intake.1", "tag": "pitting", "grade": 2, "zones": ["foot-ring"] },
        { "do": "clean", "part": "main-shell.1.upper" },
        { "do": "clean", "part": "main-journal.1" },
        { "do": "measure", "reading": { "part": "main-journal.1", "quantity": "diameter",
          "spot": { "station": "front", "direction": "a" }, "value": "2.2483 in" } },
        { "do": "measure", "reading": { "part": "main-journal.1", "quantity": "diameter",
          "spot": { "station": "front", "direction": "b" }, "value": "2.2481 in" } },
        { "do": "measure", "reading": { "part": "main-journal.1", "quantity": "diameter",
          "spot": { "station": "rear", "direction": "a" }, "value": "2.2843 in" } },
        { "do": "remark", "part": "main-shell.1.lower", "text": "Scratches run all the way round." },
        { "do": "overrule", "part": "tappet.2.intake.1", "outcome": "replace", "reason": "New ones are on the shelf." },
    ]);
    act(book, "edits_append", json!({ "job": job, "changes": changes }), None)?;
    act(book, "photo_add", json!({ "job": job, "part": "main-shell.1.lower" }), Some(picture()?))?;
    let settings = json!({ "shop_name": "Bench and Bore", "shop_address": "", "last_screen": format!("#/job/{}/plan", job.as_str().unwrap_or_default()) });
    act(book, "settings_set", json!({ "settings": settings }), None)?;
    Ok(())
}

/// A line of the shop's prices, in hundredths of its currency.
pub(crate) fn price(kind: &str, work: &str, part: u32, machining: u32) -> Value {
    json!({ "of": { "kind": kind, "work": work }, "part": part, "machining": machining })
}

/// Does an action on the book itself, before the page is opened.
pub(crate) fn act(book: &Wearbook, name: &str, arguments: Value, bytes: Option<Vec<u8>>) -> Outcome<Value> {
    match book.act(name, arguments, bytes)? {
        Answer::Json(json) => Ok(serde_json::from_str(&json)?),
        Answer::Bytes { .. } => fail(format!("{name} answered with bytes.")),
    }
}
