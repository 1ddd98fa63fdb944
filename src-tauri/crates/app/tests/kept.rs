//! What earlier versions wrote opens here, and nothing of it is lost. `tests/kept` holds databases and archives that
//! released versions wrote, and what those versions showed of them; its README says how one is added.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::collections::BTreeMap;
use std::fs;
use std::io::Cursor;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use serde_json::{Value, json};
use tempfile::TempDir;
use wearbook_app::{Answer, FixedClock, Wearbook};
use wearbook_core::date::Date;
use wearbook_core::job::{Edit, Job, RecordedChange};
use wearbook_store::read_job_file;

/// Words that have changed since: as they were shown then, and as they are shown now.
const REWORDED: &[(&str, &str)] = &[];

/// Quantities that are written otherwise since: as then, and as now.
const RENAMED: &[(&str, &str)] = &[("guide-bore", "tappet-bore")];

/// Parts that go since with what is done to others: a shaft with its journals, a block with its bores, cam bearings with
/// the wash; journals that are not themselves marked stay where one of them is polished; bolts of rods that are resized.
const DECIDED_WITH_OTHERS: &[&str] = &["crankshaft", "block", "cam-bearing", "crankpin", "main-journal", "rod-bolts"];

/// A job of an earlier version as this version opens it.
struct Opened {
    /// Where it came from and which it is, to be named where something is missing.
    name: String,
    /// What the earlier version showed of it.
    then: Value,
    /// Its log as the earlier version wrote it.
    written: Vec<Value>,
    /// The job as the page works with it.
    view: Value,
    /// What was done, in words.
    history: Vec<Value>,
    /// Its log as this version reads it.
    edits: Vec<Edit>,
    job: Job,
    /// Its photos, asked for as the page does.
    photos: Vec<Result<Vec<u8>, String>>,
}

/// A book with what it lies in.
struct Shelf {
    book: Wearbook,
    _dir: TempDir,
}

/// Every job, opened from its database and taken in from its archive.
static OPENED: LazyLock<Vec<Opened>> = LazyLock::new(|| kept().iter().flat_map(|folder| open_all(folder)).collect());

#[test]
fn every_entry_is_known_and_says_what_it_said() {
    for Opened { name, then, written, edits, .. } in OPENED.iter() {
        assert_eq!(json!(edits.len()), then["edits"], "{name}: entries");
        let unknown = edits.iter().filter(|edit| matches!(edit.change, RecordedChange::Unknown(_))).count();
        assert_eq!(json!(unknown), then["unknown"], "{name}: entries that are not known");
        for (edit, written) in edits.iter().zip(written) {
            assert_eq!(said(json!(edit)), said(renamed(written.clone())), "{name}");
        }
    }
}

#[test]
fn every_tick_is_found_again() {
    for Opened { name, then, view, .. } in OPENED.iter() {
        let lists = by_kind(view);
        let mut found = 0;
        for was in array(&then["ticks"]) {
            // Washing and polishing have changed lists since.
            let its = |one: &&Value| tick(&one["tick"]) == tick(&was["tick"]);
            let of_all = |field: &str| lists.values().flat_map(|list| array(&list[field])).filter(its).collect();
            let (standing, left): (Vec<&Value>, Vec<&Value>) = (of_all("items"), of_all("not_wanted"));
            match (standing.as_slice(), left.as_slice()) {
                ([item], []) => {
                    // One whose item had gone stands where the item has come back or takes its note along. What there is
                    // but one of has its own name since.
                    if was["in_place"] == true {
                        // More parts may have joined them.
                        let parts = array(&item["parts"]);
                        assert!(array(&was["parts"]).iter().all(|part| parts.contains(part)), "{name}: {was}");
                    }
                }
                ([], [left]) => {
                    let mut parts = array(&was["parts"]).iter().map(text);
                    let goes_with_others =
                        parts.any(|part| DECIDED_WITH_OTHERS.iter().any(|kind| part.starts_with(kind)));
                    // What a cause asks for goes with the cause, as the model knows it now.
                    let moved = goes_with_others || was["list"] == "put-right";
                    assert!(was["in_place"] == false || moved, "{name}: no longer in its place: {was}");
                    let (told, size) = (text(&left["words"]), text(&was["size"]));
                    assert!(told.contains(&now(&json!(size))), "{name}: “{told}” does not tell the size {size}");
                }
                _ => panic!("{name}: lost, or here more than once: {was}"),
            }
            found += 1;
        }
        let ticked = |list: &&Value| {
            let items = array(&list["items"]).iter().filter(|item| !item["tick"].is_null()).count();
            items + array(&list["not_wanted"]).len()
        };
        let here: usize = lists.values().map(ticked).sum();
        assert_eq!(here, found, "{name}: more ticks than were made");
    }
}

#[test]
fn what_was_proposed_answered_and_signed_stands() {
    for Opened { name, then, job, view, .. } in OPENED.iter() {
        let proposals = job.proposals.iter().map(|proposed| {
            let (quote, answer) = (json!(proposed.quote), json!(proposed.answer));
            json!({
                "net": quote["net"], "tax": quote["tax"], "gross": quote["gross"], "tax_rate": quote["tax_rate"],
                "currency": quote["currency"], "lines": pick(&quote["lines"], &["of", "what", "quantity", "net"]),
                "answer": pick(&answer, &["name", "way", "lines", "signature"]),
            })
        });
        same(name, "proposals", proposals.collect(), &then["proposals"]);
        let approval = &view["assessment"]["approval"];
        assert_eq!(approval["version"], json!(job.proposals.len()), "{name}: the number of the last proposal");
    }
}

/// Time is rounded once on a line since, and no more on each piece: by so much a line may differ. Operations and other
/// lines have come to it.
#[test]
fn what_was_charged_is_charged() {
    for Opened { name, then, view, .. } in OPENED.iter() {
        let quote = &view["assessment"]["quote"];
        for was in array(&then["quote"]["lines"]) {
            let now = array(&quote["lines"]).iter().find(|line| line["of"] == was["of"]);
            let Some(now) = now else { panic!("{name}: no longer charged: {was}") };
            let (quantity, net) = (was["quantity"].as_i64().unwrap(), was["net"].as_i64());
            if now["quantity"].as_i64() != Some(quantity) {
                let goes_with_others = DECIDED_WITH_OTHERS.contains(&text(&was["of"]["kind"]));
                assert!(goes_with_others, "{name}: {was} has become {now}");
                continue;
            }
            match net.zip(now["net"].as_i64()) {
                Some((was, now)) => assert!((was - now).abs() <= quantity, "{name}: {was} has become {now}"),
                None => assert_eq!(net, now["net"].as_i64(), "{name}: {was}"),
            }
        }
        same(name, "estimate", view["estimate"].clone(), &then["estimate"]);
    }
}

#[test]
fn sizes_and_decisions_are_those_of_then() {
    for Opened { name, then, view, .. } in OPENED.iter() {
        let assessment = &view["assessment"];
        let sizing = &assessment["sizing"];
        let groups = pick(&sizing["groups"], &["group", "action", "size", "size_shown", "found_shown", "settled"]);
        same(name, "sizing", groups, &then["sizing"]);
        let orders = |of: &Value| pick(of, &["kind", "size", "size_shown", "quantity"]);
        same(name, "orders", orders(&sizing["orders"]), &orders(&then["orders"]));
        for part in array(&assessment["parts"]) {
            let id = text(&part["part"]);
            let goes_with_others = DECIDED_WITH_OTHERS.iter().any(|kind| id.starts_with(kind));
            let (now, was) = (&part["decision"]["outcome"], &then["outcomes"][id]);
            // Bores of tappets and the parts of a pump or drive were none of their own then.
            let is_new = was.is_null();
            assert!(now == was || is_new || goes_with_others, "{name}: {id} was to be {was} and is to be {now}");
        }
        for field in ["found_sizes", "chosen_sizes"] {
            same(name, field, view[field].clone(), &then[field]);
        }
    }
}

/// What is done stands in operations since, which have their own tests, and causes are told as the model knows them.
#[test]
fn what_was_ordered_is_ordered() {
    for Opened { name, then, view, .. } in OPENED.iter() {
        let lists = by_kind(view);
        assert_eq!(lists.len(), then["lists"].as_object().unwrap().len(), "{name}");
        let now: Vec<&str> = array(&lists["order"]["items"]).iter().map(|item| text(&item["what"])).collect();
        for was in array(&then["lists"]["order"]["items"]) {
            let what = self::now(&was["what"]);
            // Of what one was wanted several may be.
            let is_here = now.iter().any(|now| now.starts_with(&what));
            assert!(is_here || view["assessment"]["progress"]["looked"] == 0, "{name}: {what}");
        }
    }
}

#[test]
fn all_else_that_was_recorded_is_here() {
    for Opened { name, then, view, history, job, .. } in OPENED.iter() {
        let parts = array(&view["assessment"]["parts"]);
        let of_parts = |field: &str| parts.iter().map(|part| array(&part[field]).len()).sum::<usize>();
        let drawings =
            |part: &Value| part["drawn"].as_object().unwrap().values().map(|on| array(on).len()).sum::<usize>();
        let here = json!({
            "texts": view["texts"],
            "facts": view["history"],
            "own_items": job.own_items.iter().map(|(_, item)| item).collect::<Vec<_>>(),
            "marks": job.marks.len(),
            "photos": parts.iter().flat_map(|part| array(&part["photos"])).collect::<Vec<_>>(),
            "drawn": parts.iter().map(drawings).sum::<usize>(),
            "readings": of_parts("readings"),
            "findings": of_parts("findings"),
            "sheet": {
                "lines": job.sheet.lines.len(), "undersizes": job.sheet.undersizes.len(),
                "oversizes": job.sheet.oversizes.len(), "otherwise": job.sheet.head.otherwise,
            },
            "history": history.len(),
            "undone": history.iter().filter(|line| line["undone"] == true).count(),
            "closed": !view["closed_at"].is_null(),
        });
        for (field, here) in here.as_object().unwrap() {
            same(name, field, here.clone(), &then[field]);
        }
    }
}

#[test]
fn every_photo_is_shown() {
    let mut shown = 0;
    for Opened { name, photos, .. } in OPENED.iter() {
        for photo in photos {
            assert!(photo.as_ref().is_ok_and(|bytes| !bytes.is_empty()), "{name}: {photo:?}");
        }
        shown += photos.len();
    }
    assert!(shown > 0);
}

#[test]
fn what_the_shop_keeps_from_job_to_job_is_here() {
    for folder in kept() {
        let then = expected(&folder);
        let shop = open(&folder.join("shop"));
        // What could not be set then has its usual value.
        let set = shop.ask("settings_get", json!({}));
        let of_then = then["settings"].as_object().unwrap().keys();
        let set = of_then.map(|name| (name.clone(), set[name].clone())).collect();
        same("shop", "settings", Value::Object(set), &then["settings"]);
        let shelf = shop.ask("shelf_get", json!({}));
        let here = json!({
            "instruments": array(&shelf["instruments"]).iter().map(|one| &one["id"]).collect::<Vec<_>>(),
            "sheets": array(&shelf["sheets"])
                .iter()
                .map(|sheet| json!({ "name": sheet["head"]["name"], "lines": array(&sheet["lines"]).len() }))
                .collect::<Vec<_>>(),
            "prices": array(&shelf["prices"]["prices"]).len(),
        });
        same("shop", "shelf", here, &then["shelf"]);
    }
}

#[test]
fn an_archive_of_a_job_that_is_here_brings_nothing_new() {
    for folder in kept() {
        let shop = open(&folder.join("shop"));
        for then in array(&expected(&folder)["jobs"]).iter().filter(|job| job["database"] == "shop") {
            let before = shop.log(&then["job"]);
            shop.import(&folder, then);
            assert_eq!(shop.log(&then["job"]), before, "{}", then["name"]);
        }
    }
}

/// The folders that are kept, one for each form that was released.
fn kept() -> Vec<PathBuf> {
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../tests/kept");
    let entries = fs::read_dir(top).unwrap().map(|entry| entry.unwrap().path());
    let mut folders: Vec<PathBuf> = entries.filter(|path| path.is_dir()).collect();
    folders.sort();
    assert!(!folders.is_empty(), "nothing is kept");
    folders
}

fn expected(folder: &Path) -> Value {
    serde_json::from_slice(&fs::read(folder.join("expected.json")).unwrap()).unwrap()
}

/// The jobs of a folder: from a copy of each database, then from the archives in a book that was empty.
fn open_all(folder: &Path) -> Vec<Opened> {
    let mut opened = Vec::new();
    let mut databases: BTreeMap<String, Shelf> = BTreeMap::new();
    let empty = empty();
    for then in array(&expected(folder)["jobs"]) {
        if let Some(database) = then["database"].as_str() {
            let here = databases.entry(database.to_owned()).or_insert_with(|| open(&folder.join(database)));
            opened.push(here.opened(folder, then, database));
        }
        assert_eq!(empty.import(folder, then), then["job"]);
        opened.push(empty.opened(folder, then, text(&then["archive"])));
    }
    for (name, shelf) in databases {
        let jobs = array(&expected(folder)["jobs"]).iter().filter(|job| job["database"] == name.as_str()).count();
        let list = shelf.ask("job_list", json!({ "finished": true, "most": 100 }));
        let found = ["open", "finished"].map(|state| array(&list[state]["lines"]).len());
        assert_eq!(found.iter().sum::<usize>(), jobs, "{name}: jobs");
    }
    opened
}

fn empty() -> Shelf {
    let dir = tempfile::tempdir().unwrap();
    // On a day long after that of the fixtures.
    let clock = FixedClock { millis: 4_000_000_000_000, today: Date::new(2096, 10, 2).unwrap() };
    Shelf { book: Wearbook::open_with_clock(dir.path(), clock).unwrap(), _dir: dir }
}

/// A copy of a database, opened: the kept one stays as it is.
fn open(database: &Path) -> Shelf {
    let dir = tempfile::tempdir().unwrap();
    copy(database, dir.path());
    Shelf { book: Wearbook::open(dir.path()).unwrap(), _dir: dir }
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let (path, name) = entry.map(|entry| (entry.path(), entry.file_name())).unwrap();
        if path.is_dir() {
            copy(&path, &to.join(name));
        } else {
            fs::copy(&path, to.join(name)).unwrap();
        }
    }
}

impl Shelf {
    #[track_caller]
    fn ask(&self, action: &str, arguments: Value) -> Value {
        match self.book.act(action, arguments, None).unwrap() {
            Answer::Json(json) => serde_json::from_str(&json).unwrap(),
            Answer::Bytes { .. } => panic!("{action} answered bytes"),
        }
    }

    #[track_caller]
    fn import(&self, folder: &Path, then: &Value) -> Value {
        let arrival = self.book.arrive_copied("kept.wearbook".as_ref(), &mut archive(folder, then).as_slice()).unwrap();
        self.ask("archive_import", json!({ "arrival": arrival }))["jobs"][0].clone()
    }

    fn log(&self, job: &Value) -> Vec<Edit> {
        match self.book.act("archive_export", json!({ "job": job }), None).unwrap() {
            Answer::Bytes { bytes, .. } => read_job_file(&bytes).unwrap().edits,
            Answer::Json(json) => panic!("JSON where an archive was expected: {json}"),
        }
    }

    fn opened(&self, folder: &Path, then: &Value, from: &str) -> Opened {
        let job = &then["job"];
        let view = self.ask("job_open", json!({ "job": job }));
        let edits = self.log(job);
        let photos = array(&then["photos"]).iter().flat_map(|photo| {
            ["thumb", "screen", "original"].map(|size| {
                let answer = self.book.act("photo_get", json!({ "photo": photo, "size": size }), None);
                match answer.map_err(|error| error.message)? {
                    Answer::Bytes { bytes, .. } => Ok(bytes),
                    Answer::Json(json) => Err(json),
                }
            })
        });
        Opened {
            name: format!("{} of {from}", then["name"]),
            then: then.clone(),
            written: written(&archive(folder, then)),
            photos: photos.collect(),
            history: array(&self.ask("job_history", json!({ "job": job }))).to_vec(),
            job: Job::fold(&edits),
            view,
            edits,
        }
    }
}

fn archive(folder: &Path, then: &Value) -> Vec<u8> {
    fs::read(folder.join("archives").join(text(&then["archive"]))).unwrap()
}

/// The log in an archive, as it stands there.
fn written(archive: &[u8]) -> Vec<Value> {
    let mut zip = zip::ZipArchive::new(Cursor::new(archive)).unwrap();
    let file: Value = serde_json::from_reader(zip.by_name("job.json").unwrap()).unwrap();
    array(&file["edits"]).to_vec()
}

/// An entry but for the item of a tick, which is written in another form since: the lists tell whether it is found again.
fn said(mut entry: Value) -> Value {
    if entry["change"]["do"] == "tick" {
        entry["change"]["item"] = Value::Null;
    }
    entry
}

/// An entry with the names that quantities have now.
fn renamed(mut value: Value) -> Value {
    let rename = |quantity: &mut Value| {
        if let Some((_, now)) = RENAMED.iter().find(|(then, _)| quantity == then) {
            *quantity = json!(now);
        }
    };
    match &mut value {
        Value::Object(fields) => {
            for (name, field) in fields {
                *field = renamed(field.take());
                if name == "quantity" {
                    rename(field);
                }
            }
        }
        Value::Array(values) => values.iter_mut().for_each(|one| *one = renamed(one.take())),
        _ => {}
    }
    value
}

/// Words as they are shown now.
fn now(words: &Value) -> String {
    REWORDED.iter().fold(text(words).to_owned(), |told, (then, now)| told.replace(then, now))
}

/// What a tick says; what is left out is empty.
fn tick(tick: &Value) -> (u64, [&str; 3]) {
    let word = |field: &str| tick[field].as_str().unwrap_or_default();
    (tick["done"].as_u64().unwrap_or(0), [word("date"), word("part_number"), word("note")])
}

fn by_kind(view: &Value) -> BTreeMap<&str, &Value> {
    array(&view["assessment"]["lists"]).iter().map(|list| (text(&list["kind"]), list)).collect()
}

/// Some fields of a thing, or of each of several.
fn pick(from: &Value, fields: &[&str]) -> Value {
    match from {
        Value::Array(all) => all.iter().map(|one| pick(one, fields)).collect(),
        Value::Object(_) => fields.iter().map(|field| ((*field).to_owned(), from[*field].clone())).collect(),
        _ => from.clone(),
    }
}

#[track_caller]
fn same(name: &str, what: &str, here: Value, then: &Value) {
    assert_eq!(here, *then, "{name}: {what}");
}

#[track_caller]
fn array(value: &Value) -> &[Value] {
    value.as_array().unwrap()
}

#[track_caller]
fn text(value: &Value) -> &str {
    value.as_str().unwrap()
}
