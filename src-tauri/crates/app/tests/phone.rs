//! What the page asks of a device, over a device of which the test decides what it does: the cases of
//! `crates/phone/cases.json`, and a photo on its way from the camera into its job.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::io::Cursor;
use std::path::Path;
use std::sync::Mutex;

use image::{ImageFormat, Rgb, RgbImage};
use serde_json::{Value, json};
use tempfile::TempDir;
use wearbook_app::phone::{Can, NoPhone, Parcel, Phone, Refused, answer};
use wearbook_app::{Answer, Error, Wearbook};

/// A device that does as the test says.
#[derive(Debug, Default)]
struct Device {
    /// What the camera writes.
    writes: Option<Vec<u8>>,
    chosen: bool,
    says: Option<Refused>,
    parcels: Mutex<Vec<Parcel>>,
}

impl Device {
    fn said(&self) -> Result<(), Refused> {
        self.says.map_or(Ok(()), Err)
    }
}

impl Phone for Device {
    fn can(&self) -> Can {
        Can { take_photo: true, share: true, keep_awake: true, tick: true }
    }
    fn take_photo(&self, file: &Path, room: u64) -> Result<(), Refused> {
        assert!(room > 0 && file.is_absolute());
        if let Some(bytes) = &self.writes {
            std::fs::write(file, bytes).unwrap();
        }
        self.said()
    }
    fn share(&self, parcel: &Parcel) -> Result<bool, Refused> {
        self.said()?;
        self.parcels.lock().unwrap().push(parcel.clone());
        Ok(self.chosen)
    }
    fn keep_awake(&self, _: bool) -> Result<(), Refused> {
        self.said()
    }
    fn tick(&self) -> Result<(), Refused> {
        self.said()
    }
}

struct Shop {
    book: Wearbook,
    dir: TempDir,
    job: Value,
}

impl Shop {
    fn open() -> Self {
        let dir = tempfile::tempdir().unwrap();
        let book = Wearbook::open(&dir.path().join("data")).unwrap();
        let mut shop = Self { book, dir, job: Value::Null };
        shop.job = shop.act("job_create", json!({}))["job"].clone();
        let arrangement = shop.act("catalogue", json!({}))["arrangements"][0]["arrangement"].clone();
        let arrange = json!({ "do": "arrange", "arrangement": arrangement });
        shop.act("edits_append", json!({ "job": shop.job, "changes": [arrange] }));
        shop
    }

    fn try_act(&self, name: &str, arguments: Value) -> Result<Value, Error> {
        match self.book.act(name, arguments, None)? {
            Answer::Json(json) => Ok(serde_json::from_str(&json).unwrap()),
            Answer::Bytes { .. } => panic!("{name} answered bytes"),
        }
    }

    #[track_caller]
    fn act(&self, name: &str, arguments: Value) -> Value {
        self.try_act(name, arguments).unwrap()
    }

    fn ask(&self, device: &dyn Phone, command: &str, arguments: Value) -> Result<Value, Error> {
        answer(&self.book, device, &self.dir.path().join("outbox"), command, arguments)
    }

    #[track_caller]
    fn begin(&self) -> Value {
        self.act("shot_begin", json!({ "job": self.job, "part": "main-shell.3.lower" }))["shot"].clone()
    }

    fn photos(&self) -> Vec<Value> {
        let view = self.act("job_open", json!({ "job": self.job }));
        let parts = view["assessment"]["parts"].as_array().unwrap().clone();
        let shell = parts.into_iter().find(|part| part["part"] == "main-shell.3.lower").unwrap();
        shell["photos"].as_array().unwrap().clone()
    }
}

fn cases(subject: &str) -> Vec<Value> {
    let all: Value = serde_json::from_str(include_str!("../../phone/cases.json")).unwrap();
    all[subject].as_array().unwrap().clone()
}

fn picture() -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    RgbImage::from_fn(600, 400, |x, y| Rgb([x as u8, y as u8, 90])).write_to(&mut bytes, ImageFormat::Jpeg).unwrap();
    bytes.into_inner()
}

/// Either the answer or the code of the refusal.
fn told(answer: Result<Value, Error>) -> Value {
    answer.unwrap_or_else(|error| {
        assert!(error.message.ends_with(['.', '?']), "{}", error.message);
        json!({ "code": error.code })
    })
}

fn expected(case: &Value) -> Value {
    if case["answer"].is_null() { json!({ "code": case["code"] }) } else { case["answer"].clone() }
}

fn says(case: &Value) -> Option<Refused> {
    case["says"].as_str().map(Refused::from_code)
}

#[test]
fn what_is_asked_wrongly_is_refused_by_its_code() {
    let shop = Shop::open();
    for case in cases("requests") {
        let answered = shop.ask(&Device::default(), case["command"].as_str().unwrap(), case["arguments"].clone());
        let code = answered.err().map(|error| error.code);
        assert_eq!(json!(code), case["code"], "{}", case["because"]);
    }
}

#[test]
fn the_file_tells_what_came_of_the_camera() {
    for case in cases("camera") {
        let shop = Shop::open();
        let shot = shop.begin();
        let whole = picture();
        let writes = match case["file"].as_str().unwrap() {
            "whole" => Some(whole),
            "half" => Some(whole[..whole.len() / 2].to_vec()),
            "empty" => Some(vec![]),
            _ => None,
        };
        let device = Device { writes, says: says(&case), ..Device::default() };
        let answered = told(shop.ask(&device, "take_photo", json!({ "shot": shot })));
        assert_eq!(answered, expected(&case), "{}", case["because"]);
        let list = shop.act("shot_list", json!({}));
        let states: Vec<&Value> = list.as_array().unwrap().iter().map(|shot| &shot["taken"]).collect();
        match case["code"].as_str() {
            Some("camera-open") => assert_eq!(states, [&json!(false)], "{}", case["because"]),
            _ if case["answer"] == "taken" => assert_eq!(states, [&json!(true)], "{}", case["because"]),
            _ => assert!(states.is_empty(), "{}: {list}", case["because"]),
        }
    }
}

#[test]
fn a_photo_goes_from_the_camera_into_its_job_and_is_offered_no_more() {
    let shop = Shop::open();
    shop.act(
        "edits_append",
        json!({ "job": shop.job, "changes": [{ "do": "fill", "field": "customer", "text": "A. Harrow" }] }),
    );
    let shot = shop.begin();
    let second = json!({ "job": shop.job, "part": "piston.1" });
    assert_eq!(shop.try_act("shot_begin", second).unwrap_err().code, "shot-waiting");
    let device = Device { writes: Some(picture()), ..Device::default() };
    assert_eq!(shop.ask(&device, "take_photo", json!({ "shot": shot })).unwrap(), "taken");
    let again = shop.ask(&device, "take_photo", json!({ "shot": shot })).unwrap_err();
    assert_eq!(again.code, "no-such-shot", "the camera may not write over it");

    let offered = shop.act("shot_list", json!({}))[0].clone();
    assert_eq!((&offered["label"], &offered["customer"]), (&json!("Main 3, lower shell"), &json!("A. Harrow")));
    shop.act("photo_take_in", json!({ "shot": shot }));
    assert_eq!(shop.photos().len(), 1);
    assert_eq!(shop.act("shot_list", json!({})), json!([]));
    let left = std::fs::read_dir(shop.dir.path().join("data/files/shots")).unwrap().count();
    assert_eq!(left, 0, "the camera’s file is still there");
    assert_eq!(shop.try_act("photo_take_in", json!({ "shot": shot })).unwrap_err().code, "no-such-shot");
    assert_eq!(shop.photos().len(), 1, "a second tap took it in twice");
}

#[test]
fn a_photo_that_was_taken_when_the_program_ended_is_offered_at_the_next_start_until_it_is_put_away() {
    let shop = Shop::open();
    let shot = shop.begin();
    let file = shop.dir.path().join(format!("data/files/shots/{}.jpg", shot.as_str().unwrap()));
    std::fs::write(file, picture()).unwrap();
    let Shop { dir, job, book } = shop;
    drop(book);

    for _ in 0..2 {
        let book = Wearbook::open(&dir.path().join("data")).unwrap();
        book.settle().unwrap();
        let Answer::Json(list) = book.act("shot_list", json!({}), None).unwrap() else { panic!("no list") };
        let list: Value = serde_json::from_str(&list).unwrap();
        assert_eq!((&list[0]["taken"], &list[0]["job"], list.as_array().unwrap().len()), (&json!(true), &job, 1));
    }
    let shop = Shop { book: Wearbook::open(&dir.path().join("data")).unwrap(), dir, job };
    assert_eq!(shop.act("shot_drop", json!({ "shot": shot })), json!([]));
    assert_eq!(shop.photos().len(), 0);
}

#[test]
fn a_photo_is_asked_for_only_of_what_can_have_one() {
    let shop = Shop::open();
    for of in [json!({ "part": "main-shell.9.lower" }), json!({}), json!({ "ancillary": "0".repeat(12) })] {
        let mut of = of;
        of["job"] = shop.job.clone();
        let code = shop.try_act("shot_begin", of.clone()).unwrap_err().code;
        assert!(matches!(code, "change-refused" | "arguments-refused"), "{of}: {code}");
    }
    assert_eq!(shop.act("shot_list", json!({})), json!([]));
}

#[test]
fn a_camera_of_which_nobody_heard_can_be_said_to_be_closed() {
    let shop = Shop::open();
    let shot = shop.begin();
    assert_eq!(shop.act("shot_end", json!({ "shot": shot })), json!([]), "it wrote nothing");
    let shot = shop.begin();
    std::fs::write(shop.dir.path().join(format!("data/files/shots/{}.jpg", shot.as_str().unwrap())), picture())
        .unwrap();
    assert_eq!(shop.act("shot_end", json!({ "shot": shot }))[0]["taken"], true);
}

#[test]
fn what_is_shared_lies_in_the_outbox_under_its_name() {
    for case in cases("sheet") {
        let shop = Shop::open();
        let chosen = case["chosen"].as_bool().unwrap();
        let device = Device { chosen, says: says(&case), ..Device::default() };
        let list = |document: &str| {
            json!({ "by": "document_get", "with": {
            "job": shop.job, "document": document, "list": "order" } })
        };
        let asked = json!({ "files": [list("list-csv"), list("list-csv"), list("list-text")], "title": "Order" });
        let answered = told(shop.ask(&device, "share", asked));
        assert_eq!(answered, expected(&case), "{}", case["because"]);
        let parcels = device.parcels.lock().unwrap();
        for Parcel { files, mime, title, .. } in parcels.iter() {
            assert_eq!((mime.as_str(), title.as_str(), files.len()), ("text/*", "Order", 3));
            let is_there = |file: &std::path::PathBuf| {
                file.starts_with(shop.dir.path().join("outbox")) && file.metadata().unwrap().len() > 0
            };
            assert!(files.iter().all(is_there), "{files:?}");
        }
        assert_eq!(parcels.len(), usize::from(case["says"].is_null()), "{}", case["because"]);
    }
}

#[test]
fn a_device_without_any_of_it_says_so() {
    let shop = Shop::open();
    let can = shop.ask(&NoPhone, "can", json!({})).unwrap();
    assert!(can.as_object().unwrap().values().all(|can| *can == false), "{can}");
    let code = |command: &str, arguments: Value| shop.ask(&NoPhone, command, arguments).unwrap_err().code;
    assert_eq!(code("share", json!({ "text": "Ready." })), "no-share");
    assert_eq!(code("keep_awake", json!({ "on": true })), "not-here");
    assert_eq!(code("tick", json!({})), "not-here");
    let shot = shop.begin();
    assert_eq!(code("take_photo", json!({ "shot": shot })), "no-camera");
    assert_eq!(shop.act("shot_list", json!({})), json!([]), "no camera will ever close");
}
