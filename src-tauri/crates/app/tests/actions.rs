//! The actions as a consumer sees them: names, JSON, bytes.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::io::Cursor;
use std::sync::atomic::{AtomicU64, Ordering};

use image::{ImageFormat, Rgb, RgbImage};
use serde_json::{Value, json};
use tempfile::TempDir;
use wearbook_app::{ACTIONS, Answer, Clock, Error, FixedClock, Wearbook};
use wearbook_core::date::Date;
use wearbook_core::label::Code;
use wearbook_report::Symbol;
use wearbook_store::{JobId, Store, StoreError};

struct Shop {
    book: Wearbook,
    dir: TempDir,
}

const CLOCK: FixedClock = FixedClock { millis: 1_900_000_000_000, today: Date::new(2030, 3, 17).unwrap() };

/// A clock that goes on by a second whenever it is asked: what is later in a test is later in the shop.
#[derive(Debug, Default)]
struct Ticking(AtomicU64);

impl Clock for Ticking {
    fn now_millis(&self) -> u64 {
        CLOCK.millis + 1_000 * self.0.fetch_add(1, Ordering::Relaxed)
    }

    fn today(&self) -> Date {
        CLOCK.today
    }
}

fn open_shop() -> Shop {
    open_shop_with(CLOCK)
}

fn open_shop_with(clock: impl Clock + 'static) -> Shop {
    let dir = tempfile::tempdir().unwrap();
    let book = Wearbook::open_with_clock(dir.path(), clock).unwrap();
    Shop { book, dir }
}

impl Shop {
    #[track_caller]
    fn ask(&self, name: &str, arguments: Value) -> Value {
        json_of(self.book.act(name, arguments, None).unwrap())
    }

    #[track_caller]
    fn give(&self, name: &str, arguments: Value, bytes: &[u8]) -> Value {
        json_of(self.book.act(name, arguments, Some(bytes.to_vec())).unwrap())
    }

    /// A file as the page sends it, in pieces.
    #[track_caller]
    fn arrive(&self, bytes: &[u8]) -> Value {
        let arrival = self.ask("arrival_begin", json!({ "name": "a.wearbook" }))["arrival"].clone();
        let (first, second) = bytes.split_at(bytes.len() / 2);
        self.give("arrival_add", json!({ "arrival": arrival, "at": 0 }), first);
        self.give("arrival_add", json!({ "arrival": arrival, "at": first.len() }), second);
        arrival
    }

    #[track_caller]
    fn take_in(&self, bytes: &[u8]) -> Value {
        self.ask("archive_import", json!({ "arrival": self.arrive(bytes) }))
    }

    #[track_caller]
    fn fetch(&self, name: &str, arguments: Value) -> (Vec<u8>, &'static str, Option<String>) {
        match self.book.act(name, arguments, None).unwrap() {
            Answer::Bytes { bytes, mime, file_name } => (bytes, mime, file_name),
            Answer::Json(json) => panic!("{name} answered JSON: {json}"),
        }
    }

    #[track_caller]
    fn refuse(&self, name: &str, arguments: Value, bytes: Option<&[u8]>, code: &str) -> String {
        let Error { code: found, message } = self.book.act(name, arguments, bytes.map(<[u8]>::to_vec)).unwrap_err();
        assert_eq!(found, code, "{message}");
        assert!(message.starts_with(|c: char| !c.is_lowercase()) && message.ends_with(['.', '?']), "{message}");
        message
    }

    /// A new job with an in-line four and a customer.
    fn job(&self) -> Value {
        let job = self.ask("job_create", json!({}))["job"].clone();
        let arrangement = self.ask("catalogue", json!({}))["arrangements"][0]["arrangement"].clone();
        let changes = json!([
            { "do": "fill", "field": "customer", "text": "A. Customer" },
            { "do": "arrange", "arrangement": arrangement },
        ]);
        self.ask("edits_append", json!({ "job": job, "changes": changes }));
        job
    }

    #[track_caller]
    fn append(&self, job: &Value, change: Value) -> Value {
        self.ask("edits_append", json!({ "job": job, "changes": [change] }))
    }
}

#[track_caller]
fn json_of(answer: Answer) -> Value {
    match answer {
        Answer::Json(json) => serde_json::from_str(&json).unwrap(),
        Answer::Bytes { .. } => panic!("bytes where JSON was expected"),
    }
}

fn jpeg(shade: u8) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    RgbImage::from_pixel(600, 400, Rgb([shade, 90, 90])).write_to(&mut bytes, ImageFormat::Jpeg).unwrap();
    bytes.into_inner()
}

/// The same picture with a remark in its file, as cameras leave some.
fn with_comment(jpeg: &[u8], remark: &[u8]) -> Vec<u8> {
    let length = u16::try_from(remark.len() + 2).unwrap().to_be_bytes();
    [&jpeg[..2], &[0xFF, 0xFE], &length, remark, &jpeg[2..]].concat()
}

#[test]
fn what_takes_a_while_can_be_asked_about_and_stopped() {
    let shop = open_shop();
    let job = shop.job();
    assert_eq!(shop.ask("way_get", json!({ "way": 7 })), Value::Null);
    shop.fetch("document_get", json!({ "job": job, "document": "report-pdf", "way": 7 }));
    assert_eq!(shop.ask("way_get", json!({ "way": 7 })), Value::Null, "it is over");
    let asked = json!({ "job": job, "document": "report-pdf", "way": 8 });
    let stopped = std::thread::scope(|both| {
        let made = both.spawn(|| shop.book.act("document_get", asked, None));
        while !made.is_finished() {
            shop.ask("way_stop", json!({ "way": 8 }));
        }
        made.join().unwrap()
    });
    assert_eq!(stopped.unwrap_err().code, "stopped");
}

#[test]
fn the_main_job_from_taking_in_to_handing_over() {
    let shop = open_shop();
    let job = shop.job();
    let part = "main-shell.3.lower";
    let view = shop.give("photo_add", json!({ "job": job, "part": part }), &jpeg(10));
    assert_eq!(view["assessment"]["progress"]["photos"], 1);
    let view =
        shop.append(&job, json!({ "do": "tag", "part": part, "tag": "scoring", "grade": 3, "zones": ["front-crown"] }));
    assert_eq!(view["assessment"]["progress"]["looked"], 1);
    assert_eq!(view["plan"]["sections"][0]["title"], "Crankshaft, rods and pistons");
    assert_eq!(view["texts"], json!({ "customer": "A. Customer" }));
    assert_eq!(shop.ask("job_open", json!({ "job": job })), view);

    let list = shop.ask("job_list", json!({}))["open"]["lines"].clone();
    assert_eq!(list[0]["customer"], "A. Customer");
    assert_eq!(
        (&list[0]["looked"], &list[0]["photos"], &list[0]["changed_at"]),
        (&json!(1), &json!(1), &json!(CLOCK.millis))
    );
    assert_eq!(list[0]["parts"], view["assessment"]["progress"]["parts"]);

    let (pdf, mime, name) = shop.fetch("document_get", json!({ "job": job, "document": "report-pdf" }));
    assert!(pdf.starts_with(b"%PDF-"));
    assert_eq!((mime, name.as_deref()), ("application/pdf", Some("2030-03-17 A Customer.pdf")));
    let (text, _, name) = shop.fetch("document_get", json!({ "job": job, "document": "report-text" }));
    assert!(String::from_utf8(text).unwrap().contains("Main 3, lower shell"));
    assert_eq!(name.as_deref(), Some("2030-03-17 A Customer.txt"));
}

#[test]
fn pictures_come_in_three_sizes_and_the_original_untouched() {
    let shop = open_shop();
    let job = shop.job();
    let original = jpeg(20);
    let view = shop.give("photo_add", json!({ "job": job, "part": "piston.1" }), &original);
    let photo =
        view["assessment"]["parts"].as_array().unwrap().iter().find(|p| p["part"] == "piston.1").unwrap()["photos"][0]
            .clone();
    let get = |size: &str| shop.fetch("photo_get", json!({ "photo": photo, "size": size }));
    assert_eq!(get("original").0, original);
    let (thumb, mime, _) = get("thumb");
    assert_eq!((image::load_from_memory(&thumb).unwrap().width(), mime), (480, "image/jpeg"));
    let screen = get("screen").0;
    // What is derived may be lost: it is made again.
    std::fs::remove_dir_all(shop.dir.path().join("shown")).unwrap();
    assert_eq!((get("thumb").0, get("screen").0), (thumb, screen));
    let missing = "0".repeat(64);
    for size in ["thumb", "screen", "original"] {
        shop.refuse("photo_get", json!({ "photo": missing, "size": size }), None, "no-such-photo");
    }
    shop.refuse("photo_get", json!({ "photo": "../../wearbook.db", "size": "original" }), None, "arguments-refused");
}

#[test]
fn the_next_look_is_told_when_it_is_asked_for() {
    let shop = open_shop();
    let job = shop.job();
    let shells = ["main-shell.1.lower", "main-shell.2.lower"];
    for shell in shells {
        shop.append(&job, json!({ "do": "tag", "part": shell, "tag": "scoring", "grade": 2, "zones": [] }));
    }
    let look = shop.ask("job_next_look", json!({ "job": job }));
    assert!(look["sentence"].is_string() && !shells.map(Value::from).contains(&look["part"]), "{look}");
    // Once it is taken, another is asked for.
    shop.append(&job, json!({ "do": "clean", "part": look["part"] }));
    assert_ne!(shop.ask("job_next_look", json!({ "job": job }))["part"], look["part"]);
    let blank = shop.ask("job_create", json!({}))["job"].clone();
    assert_eq!(shop.ask("job_next_look", json!({ "job": blank })), Value::Null, "without an engine");
}

#[test]
fn undo_and_redo_are_edits() {
    let shop = open_shop();
    let job = shop.job();
    let view = shop.append(&job, json!({ "do": "clean", "part": "piston.1" }));
    let clean = view["last_edit"].clone();
    assert_eq!(view["redo"], Value::Null);
    let undone = shop.append(&job, json!({ "do": "undo", "edit": clean }));
    assert_eq!(undone["assessment"]["progress"]["looked"], 0);
    let redone = shop.append(&job, json!({ "do": "undo", "edit": undone["redo"] }));
    assert_eq!(redone["assessment"]["progress"]["looked"], 1);
    assert_eq!((&redone["last_edit"], &redone["redo"]), (&clean, &Value::Null));

    let history = shop.ask("job_history", json!({ "job": job }));
    let lines = history.as_array().unwrap();
    assert_eq!(lines.len(), 5);
    let line = lines.iter().find(|line| line["edit"] == clean).unwrap();
    assert_eq!(line["sentence"], "Piston 1: looked at and clean");
    assert_eq!((&line["undone"], &line["undoable"], &line["at"]), (&json!(false), &json!(true), &json!(CLOCK.millis)));
}

#[test]
fn changes_that_do_not_fit_are_refused_all_together() {
    let shop = open_shop();
    let job = shop.job();
    let good = json!({ "do": "clean", "part": "piston.1" });
    let refuse = |change: Value| {
        shop.refuse("edits_append", json!({ "job": job, "changes": [good, change] }), None, "change-refused")
    };
    assert!(refuse(json!({ "do": "clean", "part": "piston.9" })).contains("no piston 9"));
    refuse(json!({ "do": "undo", "edit": "019ac2f1d3e8-0004-5f3a90c1b2d4e6f8" }));
    refuse(json!({ "do": "add-photo", "part": "piston.1", "photo": "0".repeat(64) }));
    let many = vec![good.clone(); 501];
    shop.refuse("edits_append", json!({ "job": job, "changes": many }), None, "change-refused");
    let view = shop.ask("job_open", json!({ "job": job }));
    assert_eq!(view["assessment"]["progress"]["looked"], 0, "half of a refused append was kept");
}

/// The rest must be able to leave, and that it left without them is said.
#[test]
fn photos_that_an_archive_lacks_are_counted() {
    let shop = open_shop();
    let job = shop.job();
    for shade in [30, 200] {
        shop.give("photo_add", json!({ "job": job, "part": "piston.1" }), &jpeg(shade));
    }
    let left_out = || {
        shop.fetch("archive_export", json!({ "job": job }));
        shop.ask("archive_kept", json!({ "job": job }))["left_out"].clone()
    };
    assert_eq!(left_out(), 0);
    let folders = std::fs::read_dir(shop.dir.path().join("photos")).unwrap();
    let files: Vec<_> = folders
        .flat_map(|folder| std::fs::read_dir(folder.unwrap().path()).unwrap())
        .map(|file| file.unwrap())
        .collect();
    std::fs::write(files[0].path(), b"torn").unwrap();
    assert_eq!(left_out(), 1);
    std::fs::remove_file(files[1].path()).unwrap();
    assert_eq!(left_out(), 2);
}

#[test]
fn what_came_with_the_engine_has_its_picture() {
    let shop = open_shop();
    let job = shop.job();
    let view = shop.append(&job, json!({ "do": "add-ancillary", "item": { "what": "Starter" } }));
    let item = view["ancillaries"][0]["edit"].clone();
    let view = shop.give("photo_add", json!({ "job": job, "ancillary": item }), &jpeg(50));
    let photo = view["ancillaries"][0]["photo"].clone();
    assert!(shop.fetch("photo_get", json!({ "photo": photo, "size": "thumb" })).0.len() > 100);
    for of in [json!({ "job": job }), json!({ "job": job, "ancillary": item, "part": "piston.1" })] {
        shop.refuse("photo_add", of, Some(&jpeg(51)), "change-refused");
    }
    let unknown = json!({ "do": "photograph-ancillary", "item": item, "photo": "0".repeat(64) });
    shop.refuse("edits_append", json!({ "job": job, "changes": [unknown] }), None, "change-refused");
}

#[test]
fn a_strip_down_is_ordered_answered_and_refused() {
    let shop = open_shop();
    let job = shop.job();
    let view = shop.append(
        &job,
        json!({ "do": "use-prices", "prices": { "currency": "EUR", "tax": { "rate": 1900 },
        "strip_down": { "strip_down": 40_000, "in_boxes": 3_000 } } }),
    );
    let order = view["strip_down"]["to_order"].clone();
    let view = shop.append(&job, json!({ "do": "order-strip-down", "order": order, "made": "2030-03-17" }));
    assert_eq!(view["strip_down"]["lines"][0]["sum"], json!({ "net": 40_000, "tax": 7_600, "gross": 47_600 }));
    let edit = view["strip_down"]["ordered"]["edit"].clone();
    let answer = json!({ "order": edit, "agreed": true, "name": "A. Customer" });
    shop.append(&job, json!({ "do": "answer-strip-down", "answer": answer }));
    let view = shop.append(&job, json!({ "do": "refuse", "goes_back": "in-boxes" }));
    assert_eq!(view["refusal"]["goes_back"], "in-boxes");
    assert_eq!(shop.ask("job_list", json!({}))["open"]["lines"][0]["refused"], true);
    for (document, name) in [("strip-down-order-pdf", "strip-down-order"), ("goes-back-pdf", "what-goes-back")] {
        let (pdf, _, file) = shop.fetch("document_get", json!({ "job": job, "document": document }));
        assert!(pdf.starts_with(b"%PDF-"));
        assert_eq!(file, Some(format!("2030-03-17 A Customer.{name}.pdf")));
    }
}

#[test]
fn a_refused_picture_leaves_nothing() {
    let shop = open_shop();
    let job = shop.job();
    let add = |part: &str, bytes: &[u8], code: &str| {
        shop.refuse("photo_add", json!({ "job": job, "part": part }), Some(bytes), code)
    };
    add("piston.1", b"%PDF-1.7", "photo-pdf");
    add("piston.9", &jpeg(30), "change-refused");
    let elsewhere = json!({ "job": "0".repeat(32), "part": "piston.1" });
    shop.refuse("photo_add", elsewhere, Some(&jpeg(30)), "no-such-job");
    assert_eq!(std::fs::read_dir(shop.dir.path().join("photos")).unwrap().count(), 0);
    assert_eq!(shop.ask("job_history", json!({ "job": job })).as_array().unwrap().len(), 2);
}

#[test]
fn an_archive_goes_to_another_shop_and_comes_back_the_same() {
    let (here, there) = (open_shop(), open_shop());
    let job = here.job();
    here.give("photo_add", json!({ "job": job, "part": "piston.1" }), &jpeg(40));
    let (archive, mime, name) = here.fetch("archive_export", json!({ "job": job }));
    assert_eq!((mime, name.as_deref()), ("application/zip", Some("2030-03-17 A Customer.wearbook")));
    for _ in 0..2 {
        assert_eq!(there.take_in(&archive)["jobs"], json!([job]));
    }
    assert!(there.fetch("archive_export", json!({ "job": job })).0 == archive);
    assert_eq!(there.ask("job_open", json!({ "job": job })), here.ask("job_open", json!({ "job": job })));
    let arrival = there.arrive(b"PK no archive");
    there.refuse("archive_import", json!({ "arrival": arrival }), None, "archive-refused");
    there.refuse("archive_import", json!({ "arrival": arrival }), None, "no-such-arrival");
}

#[test]
fn files_opened_from_outside_wait_until_they_are_taken_in() {
    let (here, there) = (open_shop(), open_shop());
    let job = here.job();
    let (archive, _, name) = here.fetch("archive_export", json!({ "job": job }));
    let name = name.unwrap();
    let path = here.dir.path().join(&name);
    std::fs::write(&path, &archive).unwrap();
    there.arrive(b"half of what the page sends");
    there.book.arrive(&path).unwrap();
    there.book.arrive_copied("lent.wearbook".as_ref(), &mut archive.as_slice()).unwrap();
    there.book.arrive("/nowhere/gone.wearbook".as_ref()).unwrap();
    let waiting = there.ask("arrival_list", json!({}));
    let named: Vec<&Value> = waiting.as_array().unwrap().iter().map(|arrival| &arrival["name"]).collect();
    assert_eq!(named, [&json!(name), &json!("lent.wearbook"), &json!("gone.wearbook")]);
    for n in 0..2 {
        let taken = there.ask("archive_import", json!({ "arrival": waiting[n]["arrival"] }));
        assert_eq!(taken["jobs"], json!([job]));
    }
    assert!(path.exists(), "the owner’s own file is gone");
    let why = there.refuse("archive_import", json!({ "arrival": waiting[2]["arrival"] }), None, "archive-refused");
    assert!(why.starts_with("The file gone.wearbook can’t be read"), "{why}");
    assert_eq!(there.ask("arrival_list", json!({})), json!([]));
    there.ask("arrival_drop", json!({ "arrival": 77 }));
    // What the page had begun is gone at the next start; nothing else was left.
    assert_eq!(std::fs::read_dir(there.dir.path().join("arrivals")).unwrap().count(), 1);
    there.book.settle().unwrap();
    assert_eq!(std::fs::read_dir(there.dir.path().join("arrivals")).unwrap().count(), 0);
}

#[test]
fn what_is_given_away_is_the_picture_and_nothing_else() {
    let (here, there) = (open_shop(), open_shop());
    let job = here.job();
    let telling = with_comment(&jpeg(40), b"Camera 4711");
    here.give("photo_add", json!({ "job": job, "part": "piston.1" }), &telling);
    let tells = |archive: &[u8]| archive.windows(11).any(|bytes| bytes == b"Camera 4711");
    let (own, ..) = here.fetch("archive_export", json!({ "job": job }));
    let (given, ..) = here.fetch("archive_export", json!({ "job": job, "give_away": true }));
    assert!(tells(&own) && !tells(&given));
    there.take_in(&given);
    let photo = wearbook_store::photo_id(&telling);
    let (shown, ..) = there.fetch("photo_get", json!({ "photo": photo, "size": "thumb" }));
    assert!(shown.starts_with(&[0xFF, 0xD8]));
    // The photo itself comes later, and holds from then on.
    there.take_in(&own);
    assert!(tells(&there.fetch("archive_export", json!({ "job": job })).0));
}

#[test]
fn a_backup_takes_what_changed_and_the_shop_is_made_anew_of_all_of_them() {
    let (shop, folder) = (open_shop(), tempfile::tempdir().unwrap());
    let job = shop.job();
    shop.refuse("backup_make", json!({}), None, "backup-refused");
    assert_eq!(shop.book.choose_backup(Some(&shop.dir.path().join("photos"))).unwrap_err().code, "backup-refused");
    assert_eq!(shop.book.choose_backup(Some("/nowhere".as_ref())).unwrap_err().code, "backup-refused");
    shop.book.choose_backup(Some(folder.path())).unwrap();
    shop.give("photo_add", json!({ "job": job, "part": "piston.1" }), &jpeg(40));
    let told = |jobs: u8, photos: u8| json!({ "jobs": jobs, "photos": photos, "lacking": 0, "left_out": 0 });
    assert_eq!(shop.ask("backup_make", json!({})), told(1, 1));
    assert_eq!(shop.ask("backup_make", json!({})), told(0, 0));
    let other = shop.job();
    shop.give("photo_add", json!({ "job": job, "part": "piston.2" }), &jpeg(50));
    assert_eq!(shop.ask("backup_make", json!({})), told(2, 1));
    assert_eq!(shop.ask("backup_get", json!({}))["failed"], Value::Null);

    let anew = open_shop();
    let mut taken = anew.book.restore(folder.path(), None).unwrap();
    taken.jobs.sort_by_key(|job| json!(job).to_string());
    let mut both = [&job, &other].map(Clone::clone);
    both.sort_by_key(Value::to_string);
    assert_eq!((json!(taken.jobs), taken.elsewhere, taken.unread), (json!(both), 0, vec![]));
    for one in both {
        let one = json!({ "job": one });
        assert_eq!(anew.ask("job_open", one.clone()), shop.ask("job_open", one.clone()));
        assert!(anew.fetch("archive_export", one.clone()).0 == shop.fetch("archive_export", one).0);
    }

    // One that the disk has damaged is told by name; the rest comes, and what it held is saved again.
    let mut files: Vec<_> = std::fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    std::fs::write(&files[0], b"rust").unwrap();
    let third = open_shop();
    let taken = third.book.restore(folder.path(), None).unwrap();
    assert!(taken.unread[0].starts_with("Wearbook backup 20") && taken.jobs.len() == 2, "{taken:?}");
    assert_eq!(shop.ask("backup_make", json!({})), told(1, 1));
    std::fs::remove_dir_all(folder.path()).unwrap();
    shop.refuse("backup_make", json!({}), None, "not-saved");
    assert!(shop.ask("job_list", json!({}))["backup_failed"].is_string());
}

#[test]
fn a_week_without_a_backup_is_told_if_anything_came() {
    const DAY: u64 = 24 * 60 * 60 * 1000;
    let (dir, folder) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let on_day = |days: u64, act: &dyn Fn(&Shop)| {
        let clock = FixedClock { millis: CLOCK.millis + days * DAY, today: CLOCK.today };
        let shop =
            Shop { book: Wearbook::open_with_clock(dir.path(), clock).unwrap(), dir: tempfile::tempdir().unwrap() };
        act(&shop);
        shop.ask("job_list", json!({}))["backup_due"].clone()
    };
    let nothing = |_: &Shop| {};
    let job = |shop: &Shop| drop(shop.job());
    let back_up = |shop: &Shop| {
        shop.book.choose_backup(Some(folder.path())).unwrap();
        shop.ask("backup_make", json!({}));
    };
    assert_eq!(on_day(0, &nothing), Value::Null);
    assert_eq!(on_day(30, &nothing), Value::Null, "there is nothing to lose");
    assert_eq!(on_day(30, &job), Value::Null);
    assert_eq!(on_day(37, &nothing), Value::Null);
    assert_eq!(on_day(38, &nothing), json!(CLOCK.millis + 30 * DAY));
    assert_eq!(on_day(38, &back_up), Value::Null);
    assert_eq!(on_day(60, &nothing), Value::Null, "nothing came since");
    assert_eq!(on_day(60, &job), json!(CLOCK.millis + 38 * DAY));
}

#[test]
fn a_job_is_put_away_and_comes_back() {
    let shop = open_shop();
    let job = shop.job();
    let one = json!({ "job": job });
    shop.refuse("job_put_away", one.clone(), None, "not-archived");
    let (archive, ..) = shop.fetch("archive_export", one.clone());
    shop.ask("archive_kept", one.clone());
    shop.ask("job_put_away", one.clone());
    assert_eq!(shop.ask("job_list", json!({}))["open"]["found"], 0);
    shop.refuse("job_open", one.clone(), None, "no-such-job");
    assert_eq!(shop.ask("job_away", json!({}))[0]["customer"], "A. Customer");
    let arrival = shop.arrive(&archive);
    shop.refuse("archive_import", json!({ "arrival": arrival }), None, "job-put-away");
    shop.ask("job_bring_back", one.clone());
    assert_eq!(shop.ask("job_list", json!({}))["open"]["found"], 1);
    shop.ask("job_put_away", one);
    assert_eq!(shop.ask("archive_import", json!({ "arrival": arrival, "back": true }))["jobs"], json!([job]));
    assert_eq!(shop.ask("job_away", json!({})), json!([]));
}

#[test]
fn what_no_entry_may_be_is_counted_and_the_rest_is_taken_in() {
    let shop = open_shop();
    let id = |n: u8| format!("00000000000{n}-0000-0000000000000001");
    let fill =
        |n: u8, text: &str| json!({ "id": id(n), "change": { "do": "fill", "field": "customer", "text": text } });
    let close = json!({ "id": id(3), "change": { "do": "close", "closed": true } });
    let edits = json!([fill(1, "Ada"), fill(2, &"x".repeat(10_001)), close, fill(4, "Later")]);
    let file = json!({ "format": "wearbook-job", "version": 1, "job": "7".repeat(32), "edits": edits });
    let taken = shop.take_in(file.to_string().as_bytes());
    assert_eq!(taken["refused"], json!([{ "reason": "A text of more than 10000 characters.", "count": 1 }]));
    let one = json!({ "job": taken["jobs"][0] });
    assert_eq!(shop.ask("job_open", one.clone())["texts"]["customer"], "Ada");
    let history = shop.ask("job_history", one);
    assert_eq!((&history[0]["no_effect"], &history[0]["undoable"]), (&json!({ "why": "closed" }), &json!(false)));
}

#[test]
fn a_picture_in_an_archive_is_held_to_the_same_rules_as_one_from_a_camera() {
    use std::io::Write;
    let shop = open_shop();
    let bytes = b"%PDF-1.7 dressed up";
    let mut zip = zip::ZipWriter::new(Cursor::new(Vec::new()));
    let options = zip::write::SimpleFileOptions::default();
    zip.start_file("job.json", options).unwrap();
    write!(zip, r#"{{"format": "wearbook-job", "version": 1, "job": "{}", "edits": []}}"#, "7".repeat(32)).unwrap();
    zip.start_file(format!("photos/{}.jpg", wearbook_store::photo_id(bytes).as_str()), options).unwrap();
    zip.write_all(bytes).unwrap();
    let archive = zip.finish().unwrap().into_inner();
    let message = shop.refuse("archive_import", json!({ "arrival": shop.arrive(&archive) }), None, "archive-refused");
    assert!(message.contains("PDF"), "{message}");
    assert_eq!(shop.ask("job_list", json!({}))["open"], json!({ "lines": [], "found": 0 }));
}

#[test]
fn settings_are_kept_and_missing_ones_are_empty() {
    let shop = open_shop();
    let terms = json!({ "tappet": "british", "end-float": "british", "piston-pin": "american" });
    let empty = json!({ "shop_name": "", "shop_address": "", "shop_phone": "", "shop_conditions": "", "last_screen": "", "paper": "a4", "terms": terms,
        "look": "device", "text_size": 100, "keys": true });
    assert_eq!(shop.ask("settings_get", json!({})), empty);
    let terms = json!({ "tappet": "american", "end-float": "american", "piston-pin": "british" });
    let set = json!({ "shop_name": "Bench and Bore", "shop_address": "1 Lane\nTown", "shop_phone": "0100 200", "shop_conditions": "Two years on our work.", "last_screen": "#/jobs",
        "paper": "letter", "terms": terms, "look": "dark", "text_size": 150, "keys": false });
    assert_eq!(shop.ask("settings_set", json!({ "settings": set })), set);
    let Shop { book, dir } = shop;
    drop(book);
    let shop = Shop { book: Wearbook::open_with_clock(dir.path(), CLOCK).unwrap(), dir };
    assert_eq!(shop.ask("settings_get", json!({})), set);
    let long = json!({ "shop_name": "x".repeat(1001) });
    shop.refuse("settings_set", json!({ "settings": long }), None, "setting-refused");
    shop.refuse("settings_set", json!({ "settings": { "text_size": 900 } }), None, "setting-refused");
}

/// Every text in it that is for people: ids stand under their own names.
fn texts(name: &str, value: &Value) -> Vec<String> {
    match value {
        Value::String(text)
            if ["words", "name", "short", "label", "sentence"].contains(&name) || text.contains(' ') =>
        {
            vec![text.to_lowercase()]
        }
        Value::Array(values) => values.iter().flat_map(|value| texts(name, value)).collect(),
        Value::Object(fields) => fields.iter().flat_map(|(name, value)| texts(name, value)).collect(),
        _ => vec![],
    }
}

#[test]
fn all_that_is_told_is_told_in_the_words_that_the_shop_chose() {
    let shop = open_shop();
    let job = shop.ask("job_create", json!({}))["job"].clone();
    let arrangement = shop.ask("catalogue", json!({}))["arrangements"][0]["arrangement"].clone();
    let changes =
        json!([{ "do": "arrange", "arrangement": arrangement }, { "do": "clean", "part": "tappet.1.intake.1" }]);
    let holds = |told: &Value, word: &str| texts("", told).iter().any(|text| text.contains(word));
    let told = shop.ask("edits_append", json!({ "job": job, "changes": changes }));
    assert!(holds(&told, "tappet") && !holds(&told, "lifter"));
    shop.ask("settings_set", json!({ "settings": { "terms": { "tappet": "american", "end-float": "american" } } }));
    for (action, arguments) in
        [("job_open", json!({ "job": job })), ("job_history", json!({ "job": job })), ("catalogue", json!({}))]
    {
        let mut told = shop.ask(action, arguments);
        if action == "catalogue" {
            // The choice itself names both.
            told["terms"] = Value::Null;
        }
        assert!(holds(&told, "lifter"), "{action}");
        for left in ["tappet", "end float", "{"] {
            let found: Vec<String> = texts("", &told).into_iter().filter(|text| text.contains(left)).collect();
            assert!(found.is_empty(), "{action}: {found:?}");
        }
    }
}

#[test]
fn the_catalogue_names_every_zone_of_every_kind() {
    let catalogue = open_shop().ask("catalogue", json!({}));
    for kind in catalogue["kinds"].as_array().unwrap() {
        let map = kind["zone_map"].as_str().unwrap();
        assert!(catalogue["zone_maps"][map].is_array(), "{map} is missing");
    }
    assert_eq!(catalogue["zone_maps"]["shell"].as_array().unwrap().len(), 10);
    assert_eq!(catalogue["tags"][0]["grades"].as_array().unwrap().len(), 4);
}

#[test]
fn the_shelf_keeps_instruments_sheets_and_prices() {
    let shop = open_shop();
    let instrument = json!({
        "id": "mic-1", "name": "Micrometer", "kind": "micrometer", "resolution": "0.001 mm", "uncertainty": "0.003 mm",
    });
    assert_eq!(shop.ask("instrument_keep", json!({ "instrument": instrument }))["instruments"][0]["id"], "mic-1");
    let line = json!({ "of": { "kind": "bore", "quantity": "diameter" }, "min": "92.00 mm", "max": "92.02 mm" });
    let sheet = json!({ "head": { "name": "Engine A", "unit": "millimetre" }, "lines": [line] });
    shop.ask("sheet_keep", json!({ "sheet": sheet }));
    let (file, mime, name) = shop.fetch("sheet_export", json!({ "name": "Engine A" }));
    assert_eq!((mime, name.as_deref()), ("application/json", Some("Engine A.sheet.json")));
    assert_eq!(shop.ask("sheet_drop", json!({ "name": "Engine A" }))["sheets"], json!([]));
    assert_eq!(shop.give("sheet_import", json!({}), &file)["sheets"][0]["head"]["name"], "Engine A");
    let swapped = json!({ "of": { "kind": "bore", "quantity": "diameter" }, "min": "92.02 mm", "max": "92.00 mm" });
    let wrong = json!({ "head": { "name": "B" }, "lines": [swapped] });
    assert!(shop.refuse("sheet_keep", json!({ "sheet": wrong }), None, "change-refused").contains("swapped"));
    shop.refuse("sheet_export", json!({ "name": "B" }), None, "no-such-sheet");
    let prices = json!({ "currency": "EUR", "hour": 6800, "tax": { "rate": 1900 }, "prices": [] });
    assert_eq!(shop.ask("prices_keep", json!({ "prices": prices }))["prices"]["hour"], 6800);
    assert_eq!(shop.ask("instrument_drop", json!({ "id": "mic-1" }))["instruments"], json!([]));
    // A shop that is opened again finds it all.
    let Shop { book, dir } = shop;
    drop(book);
    let again = Wearbook::open_with_clock(dir.path(), CLOCK).unwrap();
    let shelf = json_of(again.act("shelf_get", json!({}), None).unwrap());
    assert_eq!((shelf["sheets"].as_array().unwrap().len(), &shelf["prices"]["currency"]), (1, &json!("EUR")));
}

#[test]
fn prices_are_learnt_from_jobs_and_papers_of_every_kind_leave() {
    let shop = open_shop();
    let job = shop.job();
    assert_eq!(shop.ask("prices_learnt", json!({})), json!([]));
    shop.append(&job, json!({ "do": "use-prices", "prices": { "currency": "EUR" } }));
    let price = json!({ "of": { "kind": "piston", "work": "replace" }, "part": 9000 });
    shop.append(&job, json!({ "do": "set-price", "price": price }));
    let learnt = shop.ask("prices_learnt", json!({}));
    assert_eq!((&learnt[0]["price"]["part"], &learnt[0]["jobs"]), (&json!(9000), &json!(1)));
    let pdfs = ["report-pdf", "sizes-pdf", "list-pdf", "closing-pdf", "evidence-pdf"];
    for document in pdfs {
        let asked = json!({ "job": job, "document": document, "paper": "letter", "extent": "short" });
        assert!(shop.fetch("document_get", asked).0.starts_with(b"%PDF-"), "{document}");
    }
    for (purpose, archived) in [("mail", false), ("print", false), ("archive", true)] {
        let asked = json!({ "job": job, "document": "report-pdf", "purpose": purpose });
        let pdf = shop.fetch("document_get", asked).0;
        assert_eq!(pdf.windows(15).any(|bytes| bytes == b"<pdfaid:part>2<"), archived, "{purpose}");
    }
    for list in ["look-again", "machine-shop", "order", "rebuild-here", "clean", "put-right"] {
        let (csv, mime, _) = shop.fetch("document_get", json!({ "job": job, "document": "list-csv", "list": list }));
        assert!(csv.starts_with("\u{feff}Quantity,What".as_bytes()) && mime.starts_with("text/csv"));
        shop.fetch("document_get", json!({ "job": job, "document": "list-text", "list": list }));
    }
    assert!(shop.fetch("document_get", json!({ "job": job, "document": "sizes-csv" })).0.len() > 20);
}

#[test]
fn a_suggested_price_names_the_job_it_comes_from() {
    let shop = open_shop_with(Ticking::default());
    let price = |part: u32| json!({ "do": "set-price", "price": { "of": { "kind": "piston", "work": "replace" }, "part": part } });
    let charge = |customer: &str, part: u32| {
        let job = shop.job();
        shop.append(&job, json!({ "do": "fill", "field": "customer", "text": customer }));
        shop.append(&job, json!({ "do": "use-prices", "prices": { "currency": "EUR" } }));
        let view = shop.append(&job, price(part));
        (job, view["last_edit"].clone())
    };
    charge("B. Early", 9_000);
    let (late, edit) = charge("C. Late", 9_500);
    let learnt = |shop: &Shop| shop.ask("prices_learnt", json!({}))[0].clone();
    let latest = learnt(&shop);
    assert_eq!(
        (&latest["price"]["part"], &latest["from"], &latest["jobs"]),
        (&json!(9_500), &json!("C. Late"), &json!(2))
    );
    shop.append(&late, json!({ "do": "undo", "edit": edit }));
    let earlier = learnt(&shop);
    assert_eq!(
        (&earlier["price"]["part"], &earlier["from"], &earlier["jobs"]),
        (&json!(9_000), &json!("B. Early"), &json!(1))
    );
}

#[test]
fn what_is_remembered_of_a_job_changes_no_answer() {
    let shop = open_shop();
    let jobs = [shop.job(), shop.job()];
    let parts = ["main-shell.3.lower", "rod-shell.2.upper", "tappet.1.intake.1", "main-shell.2.lower"];
    for (round, part) in parts.into_iter().enumerate() {
        for job in &jobs[..1 + round % 2] {
            let seen = shop.append(job, json!({ "do": "tag", "part": part, "tag": "scoring", "grade": 3 }));
            let copy = tempfile::tempdir().unwrap();
            for name in ["wearbook.db", "wearbook.db-wal"] {
                std::fs::copy(shop.dir.path().join(name), copy.path().join(name)).unwrap();
            }
            let fresh = Wearbook::open_with_clock(copy.path(), CLOCK).unwrap();
            assert_eq!(json_of(fresh.act("job_open", json!({ "job": job }), None).unwrap()), seen, "{part}");
        }
    }
}

#[test]
fn there_is_a_job_to_look_around_in() {
    let shop = open_shop_with(Ticking::default());
    let job = shop.ask("job_demo", json!({ "way": 3 }))["job"].clone();
    let view = shop.ask("job_open", json!({ "job": job }));
    assert!(view["assessment"]["progress"]["photos"].as_u64() > Some(10), "{}", view["assessment"]["progress"]);
    assert_eq!(view["assessment"]["notices"], json!([]));
    assert_eq!(shop.ask("job_list", json!({}))["open"]["found"], 1);
}

#[test]
fn jobs_are_found_by_what_was_typed_and_come_in_order() {
    let shop = open_shop_with(Ticking::default());
    let fill = |job: &Value, field: &str, text: &str| {
        shop.append(job, json!({ "do": "fill", "field": field, "text": text }));
    };
    let jobs: Vec<Value> = (0..3).map(|_| shop.job()).collect();
    for (job, (machine, number)) in jobs.iter().zip([("Saw bench", "A-1"), ("Zoë's baler", "a 1"), ("Pump", "B-2")]) {
        fill(job, "machine", machine);
        fill(job, "engine-number", number);
    }
    let found = |arguments: Value| {
        let list = shop.ask("job_list", arguments);
        let machines: Vec<Value> =
            list["open"]["lines"].as_array().unwrap().iter().map(|line| line["machine"].clone()).collect();
        (json!(machines), list["open"]["found"].clone())
    };
    assert_eq!(found(json!({})), (json!(["Pump", "Zoë's baler", "Saw bench"]), json!(3)));
    assert_eq!(found(json!({ "most": 1 })), (json!(["Pump"]), json!(3)));
    assert_eq!(found(json!({ "find": "zoe CUSTOMER" })), (json!(["Zoë's baler"]), json!(1)));
    assert_eq!(found(json!({ "find": "in-line saw" })), (json!(["Saw bench"]), json!(1)));
    assert_eq!(found(json!({ "find": "100%_nothing" })), (json!([]), json!(0)));
    // Whatever is changed stands first, and is found by what it says now.
    fill(&jobs[0], "machine", "Crusher");
    assert_eq!(found(json!({ "most": 1 })), (json!(["Crusher"]), json!(3)));
    assert_eq!(found(json!({ "find": "saw" })), (json!([]), json!(0)));
    // The same engine is known however its number was written.
    let earlier = |job: &Value| shop.ask("job_earlier", json!({ "job": job }));
    assert_eq!(earlier(&jobs[1])[0]["job"], jobs[0]);
    assert_eq!((earlier(&jobs[1]).as_array().unwrap().len(), earlier(&jobs[2])), (1, json!([])));
}

/// A summary that can't be kept stands in nobody's way: the list is then worked out from the jobs themselves.
#[test]
fn a_list_that_can_not_be_kept_is_the_same_list() {
    let shop = open_shop_with(Ticking::default());
    let jobs: Vec<Value> = (0..3).map(|_| shop.job()).collect();
    shop.append(&jobs[2], json!({ "do": "close", "closed": true }));
    let asked =
        [json!({}), json!({ "finished": true }), json!({ "find": "customer", "most": 1 }), json!({ "find": "no" })];
    let refused = rusqlite::Connection::open(shop.dir.path().join("wearbook.db")).unwrap();
    refused
        .execute_batch("CREATE TRIGGER full BEFORE INSERT ON summary BEGIN SELECT RAISE(FAIL, 'no room'); END")
        .unwrap();
    let unkept = asked.clone().map(|asked| shop.ask("job_list", asked));
    refused.execute_batch("DROP TRIGGER full").unwrap();
    let kept = asked.map(|asked| shop.ask("job_list", asked));
    assert_eq!(unkept, kept);
    assert_eq!((&kept[0]["open"]["found"], &kept[1]["finished"]["lines"][0]["job"]), (&json!(2), &jobs[2]));
}

#[test]
fn a_closed_job_is_told_apart_and_can_be_opened_again() {
    let shop = open_shop();
    let job = shop.job();
    let closed_at = |shop: &Shop| {
        let list = shop.ask("job_list", json!({ "finished": true }));
        let lines = ["open", "finished"].map(|state| list[state]["lines"].as_array().cloned().unwrap());
        let [line] = &lines.concat()[..] else { panic!("{list}") };
        line["closed_at"].clone()
    };
    assert_eq!(closed_at(&shop), Value::Null);
    let view = shop.append(&job, json!({ "do": "close", "closed": true }));
    assert_eq!((&view["closed_at"], closed_at(&shop)), (&json!(CLOCK.millis), json!(CLOCK.millis)));
    shop.append(&job, json!({ "do": "undo", "edit": view["last_edit"] }));
    assert_eq!(closed_at(&shop), Value::Null);
}

/// The code of a part of a job.
fn code_of(job: &Value, part: &str) -> Code {
    let job: JobId = serde_json::from_value(job.clone()).unwrap();
    Code::new(job.start(), part.parse().unwrap()).unwrap()
}

/// A flawless picture of a code, sixteen pixels a module.
fn picture_of(codes: &[Code]) -> Vec<u8> {
    let symbols: Vec<Symbol> = codes.iter().map(|code| Symbol::of(code).unwrap()).collect();
    let field = 29 * 16;
    let picture = RgbImage::from_fn(field * codes.len() as u32, field, |x, y| {
        let at = |pixel: u32| ((pixel % field / 16) as usize).wrapping_sub(wearbook_report::QUIET_ZONE);
        let is_dark = symbols[(x / field) as usize].is_dark(at(x), at(y));
        if is_dark { Rgb([20, 20, 24]) } else { Rgb([240, 238, 230]) }
    });
    let mut png = Cursor::new(Vec::new());
    picture.write_to(&mut png, ImageFormat::Png).unwrap();
    png.into_inner()
}

#[test]
fn a_label_leads_to_its_part() {
    let shop = open_shop();
    let (job, other) = (shop.job(), shop.job());
    let (shell, pin) = (code_of(&job, "main-shell.3.lower"), code_of(&other, "crankpin.2"));
    let typed = shell.in_groups().to_lowercase();
    let found = json!({ "job": job, "part": "main-shell.3.lower" });
    assert_eq!(shop.ask("label_find", json!({ "text": typed })), found);
    assert_eq!(shop.give("label_read", json!({}), &picture_of(&[shell])), found);
    let found = json!({ "job": other, "part": "crankpin.2" });
    assert_eq!(shop.give("label_read", json!({}), &picture_of(&[pin])), found);
    let (file, mime, name) =
        shop.fetch("document_get", json!({ "job": job, "document": "labels-pdf", "stock": "roll" }));
    assert!(file.starts_with(b"%PDF") && mime == "application/pdf" && name.unwrap().ends_with("labels.pdf"));
    let one = json!({ "job": job, "document": "labels-pdf", "pieces": { "of": "main-shell.3.lower" }, "field": 5 });
    let (one, _, _) = shop.fetch("document_get", one);
    assert!(one.starts_with(b"%PDF") && one.len() < file.len());
    let none = json!({ "job": job, "document": "labels-pdf", "pieces": { "of": "core-plugs" } });
    assert!(shop.refuse("document_get", none, None, "nothing-to-print").contains("gets no label"));
}

#[test]
fn a_label_that_leads_nowhere_says_why() {
    let shop = open_shop();
    let job = shop.job();
    let find = |text: &str, code: &str| shop.refuse("label_find", json!({ "text": text }), None, code);
    find("hello", "not-a-code");
    find("W04HMASW908R0", "not-a-code");
    find("W04HMASW908R0Y", "wrong-code");
    assert!(find("W04HMASW908R0X", "no-such-job").contains("not on this device"));
    find(&code_of(&job, "main-shell.9.lower").to_string(), "no-such-part");
    let empty = shop.ask("job_create", json!({}))["job"].clone();
    find(&code_of(&empty, "piston.1").to_string(), "no-such-part");
    shop.refuse("document_get", json!({ "job": empty, "document": "labels-pdf" }), None, "nothing-to-print");

    let read = |picture: Vec<u8>, code: &str| shop.refuse("label_read", json!({}), Some(picture.as_slice()), code);
    read(jpeg(10), "no-code");
    read(picture_of(&[code_of(&job, "piston.1"), code_of(&job, "piston.2")]), "several-codes");
    read(b"%PDF-1.7".to_vec(), "photo-pdf");
}

#[test]
fn of_two_jobs_that_begin_alike_neither_is_taken() {
    let dir = tempfile::tempdir().unwrap();
    let store = Store::open(dir.path()).unwrap();
    let begun = 0x5bd1_e995_77aa << 80;
    let [first, second] = [JobId::from_bits(begun), JobId::from_bits(begun | 1)];
    for job in [first, second] {
        store.write::<_, StoreError>(|ledger| ledger.adopt_job(job, 1)).unwrap();
    }
    drop(store);
    let shop = Shop { book: Wearbook::open_with_clock(dir.path(), CLOCK).unwrap(), dir };
    let code = Code::new(first.start(), "piston.1".parse().unwrap()).unwrap();
    shop.refuse("label_find", json!({ "text": code.to_string() }), None, "several-jobs");
}

#[test]
fn the_border_distrusts() {
    let shop = open_shop();
    assert!(shop.refuse("drop_tables", json!({}), None, "no-such-action").contains("job_open"));
    for name in ACTIONS {
        shop.refuse(name, json!({ "surprise": 1 }), bytes_for(name), "arguments-refused");
        shop.refuse(name, json!("text"), bytes_for(name), "arguments-refused");
    }
    shop.refuse("job_open", json!({ "job": "../../etc" }), None, "arguments-refused");
    shop.refuse("job_open", json!({ "job": "0".repeat(32) }), None, "no-such-job");
    shop.refuse("job_open", json!({ "job": "x".repeat(5_000_000) }), None, "arguments-too-large");
    shop.refuse("photo_add", json!({}), None, "bytes-missing");
    shop.refuse("job_list", json!({}), Some(b"x"), "bytes-unexpected");
}

/// Bytes for those that take some.
fn bytes_for(name: &str) -> Option<&'static [u8]> {
    matches!(name, "photo_add" | "label_read" | "arrival_add" | "sheet_import").then_some(b"x")
}

#[test]
fn errors_are_two_fields_as_json() {
    let error = Error::new("some-code", "A sentence.");
    assert_eq!(serde_json::to_value(error).unwrap(), json!({ "code": "some-code", "message": "A sentence." }));
}
