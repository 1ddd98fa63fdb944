//! The shop's archive: into an empty shop and into a full one, in parts and in any order.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::collections::{BTreeMap, BTreeSet};
use std::io::{Cursor, Read, Write};

use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, OnPart, PhotoId, RecordedChange, TextField};
use wearbook_core::under_way::UnderWay;
use wearbook_store::{
    ArchiveOf, Held, JobId, NewPhoto, PhotoFacts, PhotoFormat, ShelfDiffers, ShelfHolds, ShelfKind, ShopAsked,
    ShopTaken, ShopTaking, ShopWritten, Store, StoreError, archive_of, photo_id, verify,
};
use zip::write::SimpleFileOptions;
use zip::{ZipArchive, ZipWriter};

const FACTS: PhotoFacts = PhotoFacts { format: PhotoFormat::Jpeg, width: 4, height: 3 };
const SETTINGS: &[&str] = &["shop_name", "terms"];
const DAY: u64 = 24 * 60 * 60 * 1000;

struct Shop {
    store: Store,
    _dir: tempfile::TempDir,
}

fn shop() -> Shop {
    let dir = tempfile::tempdir().unwrap();
    Shop { store: Store::open(dir.path()).unwrap(), _dir: dir }
}

fn job(n: u128) -> JobId {
    JobId::from_bits(n)
}

impl Shop {
    fn write(&self, act: impl FnOnce(&wearbook_store::Ledger<'_>) -> Result<(), StoreError>) {
        self.store.write(act).unwrap();
    }

    fn edit(&self, of: u128, n: u64, change: RecordedChange) {
        self.write(|ledger| {
            ledger.adopt_job(job(of), 1)?;
            ledger.append(job(of), &[Edit { id: EditId::next(None, n, DeviceId(1)), change }])
        });
    }

    fn fill(&self, of: u128, n: u64, text: &str) {
        let change = Change::OnIntake(OnIntake::Fill { field: TextField::Customer, text: text.into() });
        self.edit(of, n, RecordedChange::Known(change));
    }

    fn photo(&self, of: u128, n: u64, bytes: &[u8]) -> PhotoId {
        let new = NewPhoto { original: bytes, facts: FACTS, screen: b"s", thumb: b"t" };
        self.write(|ledger| {
            ledger.adopt_job(job(of), 1)?;
            ledger.add_photo(job(of), new, 1).map(drop)
        });
        let (part, photo) = ("piston.1".parse().unwrap(), photo_id(bytes));
        let change = Change::OnPart(OnPart::AddPhoto { part, photo: photo.clone(), sharpness: None });
        self.edit(of, n, RecordedChange::Known(change));
        photo
    }

    fn sheet(&self, name: &str, source: &str, at: u64) {
        let content = serde_json::json!({"head": {"name": name, "source": source}, "lines": []}).to_string();
        self.write(|ledger| ledger.keep_on_shelf(ShelfKind::Sheet, name, &content, at));
    }

    fn put_away(&self, of: u128, at: u64) {
        self.write(|ledger| {
            ledger.note_archived(job(of), at)?;
            ledger.put_away(job(of), at)
        });
    }

    fn archive(&self, held: &Held, now: u64) -> (Vec<u8>, ShopWritten) {
        let asked = ShopAsked { held, settings: SETTINGS, now };
        let (file, written) = self.store.export_shop(asked, Cursor::new(vec![]), &UnderWay::default()).unwrap();
        verify(Cursor::new(file.get_ref()), &UnderWay::default()).unwrap();
        (file.into_inner(), written)
    }

    fn whole(&self) -> Vec<u8> {
        self.archive(&Held::default(), 9).0
    }

    fn take(&self, archive: &[u8], back: bool) -> Result<ShopTaken, StoreError> {
        let taking = ShopTaking { now: 5, back, settings: SETTINGS };
        self.store.import_shop(Cursor::new(archive), taking, &|_| Ok(FACTS), &UnderWay::default())
    }

    fn edits(&self, of: u128) -> Result<usize, StoreError> {
        self.store.read::<_, StoreError>(|ledger| ledger.edits(job(of))).map(|edits| edits.len())
    }

    fn sheets(&self) -> Vec<String> {
        let sheets = self.store.read::<_, StoreError>(|ledger| ledger.shelf(ShelfKind::Sheet)).unwrap();
        let told = |text: &String| {
            let sheet: serde_json::Value = serde_json::from_str(text).unwrap();
            format!("{}: {}", sheet["head"]["name"].as_str().unwrap(), sheet["head"]["source"].as_str().unwrap())
        };
        sheets.iter().map(told).collect()
    }

    fn setting(&self, key: &str) -> Option<String> {
        self.store.read::<_, StoreError>(|ledger| ledger.settings()).unwrap().remove(key)
    }

    /// All that a shop holds, but for which device it is.
    fn content(&self) -> BTreeMap<String, Vec<u8>> {
        let mut zip = ZipArchive::new(Cursor::new(self.whole())).unwrap();
        let mut all = BTreeMap::new();
        for at in 0..zip.len() {
            let mut file = zip.by_index(at).unwrap();
            let mut bytes = vec![];
            file.read_to_end(&mut bytes).unwrap();
            let name = file.name().unwrap().into_owned();
            if name == "shop.json" {
                let mut shop: serde_json::Value = serde_json::from_slice(&bytes).unwrap();
                shop["device"] = "".into();
                bytes = shop.to_string().into_bytes();
            }
            all.insert(name, bytes);
        }
        all
    }
}

/// Two jobs, three photos of which both have one, a shelf, settings of both kinds, and a job that was put away.
fn full() -> Shop {
    let shop = shop();
    shop.fill(1, 1, "A");
    shop.photo(1, 2, b"picture one");
    shop.photo(1, 3, b"picture of both");
    shop.photo(2, 1, b"picture of both");
    shop.photo(2, 2, b"picture two");
    shop.edit(2, 3, RecordedChange::Unknown(serde_json::json!({"do": "stitch", "z": 1.5e-7})));
    shop.fill(3, 1, "gone");
    shop.put_away(3, DAY);
    shop.sheet("Bench", "a", 7);
    shop.write(|ledger| {
        ledger.keep_on_shelf(ShelfKind::Prices, "", r#"{"currency":"EUR"}"#, 7)?;
        ledger.set_setting("shop_name", "The Shop")?;
        ledger.set_setting("last_screen", "#/jobs")
    });
    shop
}

#[test]
fn into_an_empty_shop_comes_all_of_it() {
    let (here, there) = (full(), shop());
    let archive = here.whole();
    assert_eq!(archive_of(Cursor::new(&archive)).unwrap(), ArchiveOf::Shop { written_at: 9 });
    let taken = there.take(&archive, false).unwrap();
    assert_eq!(taken.jobs.iter().map(|job| job.job).collect::<Vec<_>>(), [job(1), job(2)]);
    assert!(taken.settings && taken.put_away.is_empty() && taken.differs.is_empty() && taken.elsewhere.is_empty());
    assert!(here.content() == there.content());
    assert_eq!((there.setting("shop_name"), there.setting("last_screen")), (Some("The Shop".into()), None));
    assert_eq!(there.edits(2).unwrap(), 3);
    there.store.original(&photo_id(b"picture two")).unwrap();
    // Twice changes nothing.
    let before = there.content();
    let again = there.take(&archive, false).unwrap();
    assert!(!again.settings && again.differs.is_empty());
    assert!(there.content() == before);
}

#[test]
fn into_a_full_shop_what_it_lacks_comes_and_what_it_has_stays() {
    let (here, there) = (full(), shop());
    there.fill(1, 9, "mine");
    there.fill(4, 1, "other");
    there.write(|ledger| ledger.set_setting("shop_name", "Mine"));
    there.fill(2, 20, "before");
    there.put_away(2, DAY);
    let archive = here.whole();
    let taken = there.take(&archive, false).unwrap();
    assert_eq!((taken.jobs.len(), taken.put_away), (1, vec![job(2)]));
    assert_eq!((there.edits(1).unwrap(), there.edits(4).unwrap()), (4, 1));
    assert_eq!(there.edits(2).unwrap_err().code(), "no-such-job");
    there.store.original(&photo_id(b"picture of both")).unwrap();
    let not_taken = there.store.original(&photo_id(b"picture two")).unwrap_err();
    assert_eq!(not_taken.code(), "no-such-photo", "a photo of a job that was put away came in");
    assert_eq!(there.setting("shop_name"), Some("Mine".into()));
    let before = there.content();
    there.take(&archive, false).unwrap();
    assert!(there.content() == before, "twice changed something");
    there.take(&archive, true).unwrap();
    there.store.original(&photo_id(b"picture two")).unwrap();
    // What was put away elsewhere is known here, and comes back only when asked.
    let other = full();
    other.store.write::<_, StoreError>(|ledger| ledger.bring_back(job(3))).unwrap();
    let taken = there.take(&other.whole(), false).unwrap();
    assert_eq!(taken.put_away, [job(3)]);
    there.take(&other.whole(), true).unwrap();
    assert_eq!(there.edits(3).unwrap(), 1);
}

#[test]
fn a_job_that_is_here_is_not_put_away_by_another_device() {
    let (here, there) = (full(), shop());
    there.fill(3, 1, "gone");
    there.take(&here.whole(), false).unwrap();
    assert_eq!(there.edits(3).unwrap(), 1);
}

fn sheets_of_both(ours: (&str, u64), theirs: (&str, u64)) -> (Shop, Vec<ShelfDiffers>, Vec<String>) {
    let (here, there) = (shop(), shop());
    here.sheet("Bench", ours.0, ours.1);
    there.sheet("Bench", theirs.0, theirs.1);
    let archive = there.whole();
    let differs = here.take(&archive, false).unwrap().differs;
    let sheets = here.sheets();
    here.take(&archive, false).unwrap();
    assert_eq!(here.sheets(), sheets, "twice changed something");
    (here, differs, sheets)
}

#[test]
fn of_two_things_of_one_name_the_later_holds_and_where_that_is_not_known_both_stay() {
    let told = |differs: Vec<ShelfDiffers>| differs.into_iter().map(|one| one.holds).collect::<Vec<_>>();
    let (_, differs, sheets) = sheets_of_both(("a", 5), ("b", 6));
    assert_eq!((told(differs), sheets), (vec![ShelfHolds::Theirs], vec!["Bench: b".to_owned()]));
    let (_, differs, sheets) = sheets_of_both(("a", 6), ("b", 5));
    assert_eq!((told(differs), sheets), (vec![ShelfHolds::Ours], vec!["Bench: a".to_owned()]));
    let (_, differs, sheets) = sheets_of_both(("a", 5), ("a", 6));
    assert_eq!((told(differs), sheets), (vec![], vec!["Bench: a".to_owned()]));
    let both = vec!["Bench: a".to_owned(), "Bench (2): b".to_owned()];
    for (ours, theirs) in [(0, 6), (5, 0), (0, 0), (5, 5)] {
        let (here, differs, sheets) = sheets_of_both(("a", ours), ("b", theirs));
        assert_eq!((told(differs), &sheets), (vec![ShelfHolds::Both("Bench (2)".into())], &both));
        // Sent to and fro they do not grow.
        let there = shop();
        there.sheet("Bench", "b", theirs);
        there.take(&here.whole(), false).unwrap();
        assert_eq!(there.sheets().len(), 2);
        here.take(&there.whole(), false).unwrap();
        assert_eq!(here.sheets(), both);
    }
}

#[test]
fn when_a_thing_was_put_on_the_shelf_outlives_a_recovery() {
    let (here, there) = (shop(), shop());
    here.sheet("Bench", "a", 7);
    there.sheet("Bench", "b", 6);
    here.store.note_damage().unwrap();
    let Shop { store, _dir } = here;
    drop(store);
    let here = Shop { store: Store::open(_dir.path()).unwrap(), _dir };
    assert!(here.store.recovered().unwrap().is_some());
    let differs = here.take(&there.whole(), false).unwrap().differs;
    assert_eq!((differs.len(), &differs[0].holds, here.sheets()), (1, &ShelfHolds::Ours, vec!["Bench: a".to_owned()]));
}

#[test]
fn a_backup_holds_what_changed_and_the_parts_unite_in_any_order() {
    let here = full();
    let (first, written) = here.archive(&Held::default(), 1);
    assert_eq!((written.jobs.len(), written.photos.len(), written.has_more), (2, 3, false));
    here.fill(2, 10, "later");
    here.photo(2, 11, b"picture three");
    let held = here.store.held_by([Cursor::new(&first)]).unwrap();
    assert_eq!((held.photos.len(), held.jobs.len(), held.latest, held.unreadable), (3, 2, Some(1), 0));
    assert_eq!(held, Held { latest: Some(1), ..Held::default().and(&written) });
    let (second, written) = here.archive(&held, 2);
    assert_eq!(written.jobs.keys().collect::<Vec<_>>(), [&job(2)]);
    assert_eq!(written.photos, BTreeSet::from([photo_id(b"picture three")]));
    let verified = verify(Cursor::new(&second), &UnderWay::default()).unwrap();
    assert_eq!(verified.jobs_elsewhere, BTreeSet::from([job(1)]));
    assert_eq!(verified.photos_elsewhere.len(), 2);
    // Nothing changed since.
    let held = here.store.held_by([&first, &second].map(Cursor::new)).unwrap();
    let (third, written) = here.archive(&held, 3);
    assert_eq!(written, ShopWritten::default());
    for order in [[&first, &second, &third], [&third, &second, &first], [&second, &third, &first]] {
        let there = shop();
        let mut elsewhere = vec![];
        for archive in order {
            elsewhere.push(there.take(archive, false).unwrap().elsewhere.len());
        }
        assert!(here.content() == there.content());
        assert_eq!(elsewhere[2], 0, "{elsewhere:?}");
    }
    // Another device's archive does not say that this one's job is held; a damaged one says nothing.
    let other = shop();
    let held = other.store.held_by([&first[..], &second[..900]].map(Cursor::new)).unwrap();
    assert_eq!((held.photos.len(), held.jobs.len(), held.unreadable), (3, 0, 1));
}

/// A photo that only a newer version names comes with a later archive than its job, which has not changed.
#[test]
fn a_photo_that_came_later_finds_its_job() {
    let here = shop();
    here.fill(1, 1, "A");
    let (first, _) = here.archive(&Held::default(), 1);
    let new = NewPhoto { original: b"picture", facts: FACTS, screen: b"s", thumb: b"t" };
    here.write(|ledger| ledger.add_photo(job(1), new, 1).map(drop));
    let (second, written) = here.archive(&here.store.held_by([Cursor::new(&first)]).unwrap(), 2);
    assert_eq!((written.jobs.len(), written.photos.len()), (1, 1));
    for order in [[&first, &second], [&second, &first]] {
        let there = shop();
        for archive in order {
            there.take(archive, false).unwrap();
        }
        assert!(here.content() == there.content());
    }
}

#[test]
fn an_archive_that_is_not_whole_is_known_by_reading_it_back() {
    let here = full();
    let (archive, _) = here.archive(&Held::default(), 1);
    let whole = verify(Cursor::new(&archive), &UnderWay::default()).unwrap();
    assert_eq!((whole.jobs.len(), whole.photos, whole.refused), (2, 3, 0));
    assert!(whole.jobs_elsewhere.is_empty() && whole.photos_elsewhere.is_empty());
    let mut noticed = 0;
    for at in (0..archive.len()).step_by(7) {
        let mut bytes = archive.clone();
        bytes[at] ^= 0x10;
        match verify(Cursor::new(&bytes), &UnderWay::default()) {
            Err(error) => noticed += usize::from(error.code() == "archive-refused"),
            // A byte that says nothing: a time, an attribute.
            Ok(read) => assert_eq!(read, whole, "a bit of byte {at} was another, and nobody noticed"),
        }
    }
    assert!(noticed * 7 > archive.len() / 2, "only {noticed} of {} were noticed", archive.len() / 7);
    for content in
        [&b"picture one"[..], b"picture two", b"picture of both", b"\"stitch\"", b"\"customer\"", b"\"edits\":3"]
    {
        let at = archive.windows(content.len()).position(|window| window == content).unwrap();
        for at in at..at + content.len() {
            let mut bytes = archive.clone();
            bytes[at] ^= 1;
            let refused = verify(Cursor::new(&bytes), &UnderWay::default()).unwrap_err();
            assert_eq!(refused.code(), "archive-refused", "byte {at}");
        }
    }
    // Whole as a file, and not what it says.
    let of = |name: &str, photo: &[u8], edits: usize, listed: &PhotoId| {
        let shop = format!(
            r#"{{"format": "wearbook-shop", "version": 1, "device": "0000000000000001", "written_at": 1, "settings": {{}},
                "put_away": [], "shelf": [], "jobs": [{{"job": "{}", "edits": {edits}, "is_here": true,
                "photos": ["{}"]}}]}}"#,
            job(7),
            listed.as_str()
        );
        let job_name = format!("jobs/{}.json", job(7));
        let empty = format!(r#"{{"format": "wearbook-job", "version": 1, "job": "{}", "edits": []}}"#, job(7));
        let name = format!("photos/{name}.jpg");
        let file = zipped(&[("shop.json", shop.as_bytes()), (&job_name, empty.as_bytes()), (&name, photo)]);
        verify(Cursor::new(file), &UnderWay::default()).map(drop).map_err(|error| error.to_string())
    };
    let (one, other) = (photo_id(b"picture one"), photo_id(b"other"));
    of(one.as_str(), b"picture one", 0, &one).unwrap();
    assert!(of(one.as_str(), b"picture two", 0, &one).unwrap_err().contains("not the one its name says"));
    assert!(of(one.as_str(), b"picture one", 2, &one).unwrap_err().contains("should hold 2 entries and holds 0"));
    assert!(of(one.as_str(), b"picture one", 0, &other).unwrap_err().contains("should be in this file and is not"));
}

fn zipped(entries: &[(&str, &[u8])]) -> Vec<u8> {
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    for (name, bytes) in entries {
        zip.start_file(*name, SimpleFileOptions::default()).unwrap();
        zip.write_all(bytes).unwrap();
    }
    zip.finish().unwrap().into_inner()
}

#[track_caller]
fn refused(entries: &[(&str, &[u8])], because: &str) {
    let shop = shop();
    let before = shop.content();
    let error = shop.take(&zipped(entries), false).unwrap_err();
    assert_eq!(error.code(), "archive-refused");
    assert!(error.to_string().contains(because), "{error}");
    assert!(shop.content() == before);
}

#[test]
fn what_is_no_shop_is_refused_with_a_sentence() {
    let file = |version: u32, rest: &str| {
        format!(
            r#"{{"format": "wearbook-shop", "version": {version}, "device": "0000000000000001", "written_at": 1,
                "settings": {{}}, "put_away": [], "jobs": []{rest}}}"#
        )
    };
    let good = file(1, r#", "shelf": []"#);
    let of = |text: &str, because: &str| refused(&[("shop.json", text.as_bytes())], because);
    of("", "can’t be read");
    of(&good.replace("wearbook-shop", "other"), "should be “wearbook-shop”");
    of(&file(2, r#", "later": 5"#), "newer version of this program (form 2, this one reads 1)");
    of(&file(1, ""), "missing field `shelf`");
    of(&file(1, r#", "shelf": [], "more": 1"#), "unknown field `more`");
    of(&file(1, r#", "shelf": [], "shelf": []"#), "twice");
    of(&file(1, r#", "shelf": [{"kind": "tool", "name": "", "content": {}}]"#), "unknown variant `tool`");
    let maps = r#"{"":0},"#.repeat(60_000);
    let many = format!(r#", "shelf": [{{"kind": "sheet", "name": "a", "content": [{maps}0]}}]"#);
    of(&file(1, &many), "more than 50000 values");
    let settings: Vec<String> = (0..201).map(|n| format!(r#""{n}": """#)).collect();
    of(&good.replace("\"settings\": {", &format!("\"settings\": {{{}", settings.join(","))), "than any shop has");
    let other = format!("jobs/{}.json", job(8));
    let named: &[u8] =
        br#"{"format": "wearbook-job", "version": 1, "job": "00000000000000000000000000000007", "edits": []}"#;
    refused(&[("shop.json", good.as_bytes()), (&other, named)], "says of itself that it is");
    refused(&[("shop.json", good.as_bytes()), ("job.json", named)], "both a job.json and a shop.json");
    refused(&[("shop.json", good.as_bytes()), ("jobs/x.json", named)], "only shop.json, jobs and photos");
    refused(&[("job.json", named)], "holds one job, not a shop");
    let shop = shop();
    shop.take(&zipped(&[("shop.json", good.as_bytes())]), false).unwrap();
    let as_job = shop.store.import(Cursor::new(full().whole()), 1, &|_| Ok(FACTS), &UnderWay::default()).unwrap_err();
    assert!(as_job.to_string().contains("holds a whole shop"), "{as_job}");
}

#[test]
fn a_shop_that_was_stopped_leaves_nothing() {
    let (archive, there) = (full().whole(), shop());
    let before = there.content();
    let taking = ShopTaking { now: 5, back: false, settings: SETTINGS };
    for nth in 1..=5 {
        let way = UnderWay::default();
        let stop_at = |_: &[u8]| {
            if way.steps().0 >= nth {
                way.stop();
            }
            Ok(FACTS)
        };
        let stopped = there.store.import_shop(Cursor::new(&archive), taking, &stop_at, &way).unwrap_err();
        assert_eq!(stopped.code(), "stopped");
        assert!(there.content() == before);
    }
}

/// A row that can't be read keeps its own job back, and no other.
#[test]
fn a_damaged_job_is_left_out_and_told() {
    let here = full();
    let path = here._dir.path().join("wearbook.db");
    let connection = rusqlite::Connection::open(path).unwrap();
    connection.execute("UPDATE edit SET change = '{' WHERE job = ?1", [job(1).to_string()]).unwrap();
    let (archive, written) = here.archive(&Held::default(), 1);
    assert_eq!((written.left_out, written.jobs.len()), (BTreeSet::from([job(1)]), 1));
    let there = shop();
    there.take(&archive, false).unwrap();
    assert_eq!(there.edits(2).unwrap(), 3);
}
