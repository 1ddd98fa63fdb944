//! Archives: out and in again without a bit of difference, and what is hostile stays out without a trace.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::cell::Cell;
use std::collections::BTreeSet;
use std::io::{Cursor, Seek, SeekFrom, Write};
use std::path::Path;

use proptest::prelude::*;
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, OnIntake, OnPart, RecordedChange, TextField};
use wearbook_core::under_way::UnderWay;
use wearbook_store::{
    JobId, NewPhoto, PhotoFacts, PhotoFormat, Store, StoreError, gave_way, photo_id, read_job_file, verify,
};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

const FACTS: PhotoFacts = PhotoFacts { format: PhotoFormat::Jpeg, width: 4, height: 3 };

/// Stands in for the decoder, which is not this crate's trade: refuses what does not begin like a picture of ours.
fn looks_right(bytes: &[u8]) -> Result<PhotoFacts, String> {
    if bytes.starts_with(b"picture") { Ok(FACTS) } else { Err("This is no picture.".into()) }
}

fn open(dir: &tempfile::TempDir) -> Store {
    Store::open(dir.path()).unwrap()
}

fn export(store: &Store, job: JobId) -> Vec<u8> {
    store.export(job, Cursor::new(Vec::new()), &UnderWay::default()).unwrap().into_inner()
}

fn import(store: &Store, bytes: &[u8]) -> Result<JobId, StoreError> {
    store.import(Cursor::new(bytes), 5, &looks_right, &UnderWay::default()).map(|imported| imported.job)
}

fn entry(n: u64, change: RecordedChange) -> Edit {
    Edit { id: EditId::next(None, n, DeviceId(n % 3)), change }
}

fn fill(text: &str) -> RecordedChange {
    RecordedChange::Known(Change::OnIntake(OnIntake::Fill { field: TextField::Customer, text: text.into() }))
}

fn photo_change(bytes: &[u8]) -> RecordedChange {
    RecordedChange::Known(Change::OnPart(OnPart::AddPhoto {
        part: "piston.1".parse().unwrap(),
        photo: photo_id(bytes),
        sharpness: None,
    }))
}

/// A store with one job of two photos, one of which only an entry of a newer version names.
fn filled(dir: &tempfile::TempDir) -> (Store, JobId) {
    let store = open(dir);
    let later = serde_json::json!({"do": "stitch", "z": 1.5e-7, "a": {"y": [true, null], "b": "ü"}});
    let job = store
        .write::<_, StoreError>(|ledger| {
            let job = ledger.create_job(1)?;
            for original in [&b"picture one"[..], b"picture two"] {
                ledger.add_photo(job, NewPhoto { original, facts: FACTS, screen: b"s", thumb: b"t" }, 2)?;
            }
            let edits =
                [entry(3, RecordedChange::Unknown(later)), entry(1, fill("A")), entry(2, photo_change(b"picture one"))];
            ledger.append(job, &edits)?;
            Ok(job)
        })
        .unwrap();
    (store, job)
}

#[test]
fn out_in_and_out_again_is_the_same_file() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (store, job) = filled(&here);
    let first = export(&store, job);
    let other = open(&there);
    assert_eq!(import(&other, &first).unwrap(), job);
    assert!(export(&other, job) == first, "the archive changed on its way through another store");
    assert_eq!(import(&other, &first).unwrap(), job);
    assert!(export(&other, job) == first, "importing twice changed something");
    assert_eq!(other.original(&photo_id(b"picture two")).unwrap(), b"picture two");
    assert_eq!(read_job_file(&first).unwrap().edits.len(), 3);
}

/// A picture of what came with the engine goes wherever the entry goes that shows it: here into another job of the same
/// picture.
#[test]
fn a_picture_of_what_came_with_the_engine_goes_along() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (store, _) = filled(&here);
    let shown = RecordedChange::Known(Change::OnIntake(OnIntake::PhotographAncillary {
        item: EditId::next(None, 1, DeviceId(1)),
        photo: Some(photo_id(b"picture two")),
    }));
    let job = store
        .write::<_, StoreError>(|ledger| {
            let job = ledger.create_job(4)?;
            ledger.append(job, &[entry(5, shown)])?;
            Ok(job)
        })
        .unwrap();
    let other = open(&there);
    import(&other, &export(&store, job)).unwrap();
    assert_eq!(other.original(&photo_id(b"picture two")).unwrap(), b"picture two");
    assert!(other.original(&photo_id(b"picture one")).is_err());
}

#[test]
fn a_job_that_is_here_gets_what_it_lacks() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (store, job) = filled(&here);
    let other = open(&there);
    import(&other, &export(&store, job)).unwrap();
    let append = |store: &Store, n, text| store.write(|ledger| ledger.append(job, &[entry(n, fill(text))]));
    append(&store, 10, "here").unwrap();
    append(&other, 11, "there").unwrap();
    import(&other, &export(&store, job)).unwrap();
    import(&store, &export(&other, job)).unwrap();
    assert!(export(&store, job) == export(&other, job), "two devices that swapped files differ");
}

#[test]
fn an_archive_that_was_stopped_leaves_nothing() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (store, job) = filled(&here);
    let archive = export(&store, job);
    let other = open(&there);
    let before = contents(there.path());
    for nth in 1..=2 {
        let (way, looked) = (UnderWay::default(), Cell::new(0));
        let check = |bytes: &[u8]| {
            looked.set(looked.get() + 1);
            if looked.get() == nth {
                way.stop();
            }
            looks_right(bytes)
        };
        assert!(matches!(other.import(Cursor::new(&archive), 5, &check, &way), Err(StoreError::Stopped(_))));
        assert_eq!(contents(there.path()), before, "stopped at photo {nth}");
    }
    let whole = UnderWay::default();
    other.import(Cursor::new(&archive), 5, &looks_right, &whole).unwrap();
    assert_eq!(whole.steps(), (2, 2));
    let way = UnderWay::default();
    way.stop();
    assert!(matches!(store.export(job, Cursor::new(Vec::new()), &way), Err(StoreError::Stopped(_))));
}

/// Looking at pictures takes long: whoever taps meanwhile does not wait for it.
#[test]
fn the_store_serves_others_while_pictures_are_looked_at() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (store, job) = filled(&here);
    let other = open(&there);
    let check = |bytes: &[u8]| {
        other.write::<_, StoreError>(|ledger| ledger.create_job(1)).unwrap();
        other.clear_put_away(1).unwrap();
        looks_right(bytes)
    };
    other.import(Cursor::new(export(&store, job)), 5, &check, &UnderWay::default()).unwrap();
    assert_eq!(other.read::<_, StoreError>(|ledger| ledger.jobs()).unwrap().len(), 3);
}

/// Calls out once, as soon as what was read of the job is being written.
struct CallsOut<'a> {
    file: Cursor<Vec<u8>>,
    call: Option<&'a dyn Fn()>,
}

impl Write for CallsOut<'_> {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        if bytes.windows(7).any(|window| window == b"\"edits\"")
            && let Some(call) = self.call.take()
        {
            call();
        }
        self.file.write(bytes)
    }

    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

impl Seek for CallsOut<'_> {
    fn seek(&mut self, to: SeekFrom) -> std::io::Result<u64> {
        self.file.seek(to)
    }
}

/// What comes while an archive is written stands in it, with its photo, even where it is earlier than what was read.
#[test]
fn what_comes_while_an_archive_is_written_is_not_missing_in_it() {
    let dir = tempfile::tempdir().unwrap();
    let (store, job) = filled(&dir);
    let call = || {
        store
            .write::<_, StoreError>(|ledger| {
                let original = b"picture three";
                ledger.add_photo(job, NewPhoto { original, facts: FACTS, screen: b"s", thumb: b"t" }, 2)?;
                ledger.append(job, &[entry(0, photo_change(original))])
            })
            .unwrap();
    };
    let writer = CallsOut { file: Cursor::new(Vec::new()), call: Some(&call) };
    let file = store.export(job, writer, &UnderWay::default()).unwrap().file;
    assert!(file.get_ref() == &export(&store, job));
    let verified = verify(file, &UnderWay::default()).unwrap();
    assert_eq!((verified.jobs[&job], verified.photos, verified.photos_elsewhere.len()), (4, 3, 0));
}

#[test]
fn an_entry_under_the_id_of_another_stays_beside_it() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (store, job) = filled(&here);
    let other = open(&there);
    other
        .write::<_, StoreError>(|ledger| {
            ledger.adopt_job(job, 1)?;
            ledger.append(job, &[entry(1, fill("B"))])
        })
        .unwrap();
    import(&other, &export(&store, job)).unwrap();
    let edits = |store: &Store| store.read::<_, StoreError>(|ledger| ledger.edits(job)).unwrap();
    let both = edits(&other);
    assert_eq!((both.len(), &both[1]), (4, &entry(1, fill("A"))));
    assert_eq!((&both[0].change, gave_way(&both)), (&fill("B"), BTreeSet::from([both[0].id])));
    import(&store, &export(&other, job)).unwrap();
    assert_eq!(edits(&store), both);
}

#[test]
fn of_a_file_written_by_hand_an_altered_entry_is_refused_and_leaves_nothing() {
    let dir = tempfile::tempdir().unwrap();
    let store = open(&dir);
    let by_hand = |text: &str| {
        let entry = format!(r#""edits": [{{"change": {{"do": "fill", "field": "customer", "text": "{text}"}}}}]"#);
        let json = String::from_utf8(JOB.to_vec()).unwrap().replace(r#""edits": []"#, &entry);
        zipped(&[("job.json", json.as_bytes()), (&photo_name(b"picture", "jpg"), b"picture")])
    };
    let read_by_hand = |bytes: &[u8]| read_job_file(bytes).unwrap().edits;
    let job = store.write::<_, StoreError>(|ledger| {
        let job = JobId::from_bits(7);
        ledger.adopt_job(job, 1)?;
        ledger.append(job, &read_by_hand(&by_hand("A")))?;
        Ok(job)
    });
    assert_eq!(import(&store, &by_hand("B")).unwrap_err().code(), "edit-conflict");
    assert_eq!(contents(dir.path()), [""; 0]);
    let edits = store.read::<_, StoreError>(|ledger| ledger.edits(job.unwrap())).unwrap();
    assert_eq!(edits, read_by_hand(&by_hand("A")));
}

/// The names of all photo files.
fn contents(dir: &Path) -> Vec<String> {
    let mut names = Vec::new();
    for folder in std::fs::read_dir(dir.join("photos")).unwrap() {
        for file in std::fs::read_dir(folder.unwrap().path()).unwrap() {
            names.push(file.unwrap().path().display().to_string());
        }
    }
    names.sort();
    names
}

const JOB: &[u8] =
    br#"{"format": "wearbook-job", "version": 1, "job": "00000000000000000000000000000007", "edits": []}"#;

fn zipped(entries: &[(&str, &[u8])]) -> Vec<u8> {
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    for (name, bytes) in entries {
        let options = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
        zip.start_file(*name, options).unwrap();
        zip.write_all(bytes).unwrap();
    }
    zip.finish().unwrap().into_inner()
}

#[track_caller]
fn refused(bytes: &[u8], because: &str) {
    let dir = tempfile::tempdir().unwrap();
    let store = open(&dir);
    let error = import(&store, bytes).unwrap_err();
    assert_eq!(error.code(), "archive-refused");
    assert!(error.to_string().contains(because), "{error}");
    assert_eq!(store.read::<_, StoreError>(|ledger| ledger.jobs()).unwrap(), []);
    assert_eq!(contents(dir.path()), [""; 0]);
    let names: Vec<_> = std::fs::read_dir(dir.path()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    let known =
        ["arrivals", "files", "photos", "shown", "wearbook.db", "wearbook.db-shm", "wearbook.db-wal", "wearbook.lock"];
    assert!(names.iter().all(|name| known.contains(&name.to_str().unwrap())), "{names:?}");
}

fn photo_name(bytes: &[u8], extension: &str) -> String {
    format!("photos/{}.{extension}", photo_id(bytes).as_str())
}

#[test]
fn a_zip_by_another_tool_is_read_as_long_as_its_content_is_right() {
    let dir = tempfile::tempdir().unwrap();
    let store = open(&dir);
    let bytes = zipped(&[(&photo_name(b"picture", "jpg"), b"picture"), ("job.json", JOB)]);
    let job = import(&store, &bytes).unwrap();
    assert_eq!(job.to_string(), "00000000000000000000000000000007");
    assert_eq!(store.original(&photo_id(b"picture")).unwrap(), b"picture");
}

#[test]
fn names_that_do_not_belong_are_refused() {
    for name in [
        "../evil.jpg",
        "/etc/passwd",
        "photos/../../evil.jpg",
        "photos\\..\\evil.jpg",
        "C:\\evil.jpg",
        "photos/short.jpg",
        "photos/",
        "Job.json",
        "job.json/",
        "readme.txt",
        "",
    ] {
        refused(&zipped(&[("job.json", JOB), (name, b"picture")]), "only job.json and photos");
    }
    let svg = photo_name(b"picture", "svg");
    refused(&zipped(&[("job.json", JOB), (&svg, b"picture")]), "only job.json and photos");
    let upper = photo_name(b"picture", "jpg").replace(char::is_numeric, "A");
    refused(&zipped(&[("job.json", JOB), (&upper, b"picture")]), "only job.json and photos");
}

#[test]
fn photos_that_are_not_what_they_say_are_refused() {
    let named = photo_name(b"picture", "jpg");
    refused(&zipped(&[("job.json", JOB), (&named, b"picture, altered")]), "not the one its name says");
    refused(&zipped(&[("job.json", JOB), (&photo_name(b"text", "jpg"), b"text")]), "This is no picture.");
    refused(&zipped(&[("job.json", JOB), (&photo_name(b"picture", "png"), b"picture")]), "named “.png” but is jpeg");
    // The first photo is right and the second is not: the first must not stay.
    let entries: &[(&str, &[u8])] = &[("job.json", JOB), (&named, b"picture"), (&photo_name(b"x", "jpg"), b"y")];
    refused(&zipped(entries), "not the one its name says");
}

#[test]
fn bombs_are_refused_before_they_go_off() {
    let zeros = vec![0; 65 * 1024 * 1024];
    let honest = zipped(&[("job.json", &zeros)]);
    assert!(honest.len() < 200_000, "the bomb is not small: {}", honest.len());
    refused(&honest, "has more than 64 MB");
    // The same with a lie about the size, in the list and in the entry's own head.
    let mut lying = honest;
    let (true_size, lie) = ((zeros.len() as u32).to_le_bytes(), 100u32.to_le_bytes());
    while let Some(at) = lying.windows(4).position(|window| window == true_size) {
        lying[at..at + 4].copy_from_slice(&lie);
    }
    let dir = tempfile::tempdir().unwrap();
    assert_eq!(import(&open(&dir), &lying).unwrap_err().code(), "archive-refused");
    let photo = photo_name(&zeros, "jpg");
    refused(&zipped(&[("job.json", JOB), (&photo, &zeros)]), "has more than 40 MB");
}

#[test]
fn a_list_of_too_many_entries_is_refused() {
    let mut zip = zipped(&[("job.json", JOB)]);
    let end = zip.len() - 22;
    zip[end + 8..end + 12].copy_from_slice(&[0xFE, 0xFF, 0xFE, 0xFF]);
    refused(&zip, "65534 entries");
}

#[test]
fn what_is_no_archive_is_refused() {
    let whole = zipped(&[("job.json", JOB)]);
    refused(b"PK", "its end is missing");
    refused(&b"PK".repeat(500), "its end is missing");
    refused(&whole[..whole.len() - 10], "its end is missing");
    refused(&whole[..30], "its end is missing");
    refused(&zipped(&[(&photo_name(b"picture", "jpg"), b"picture")]), "holds no job");
    refused(&zipped(&[("job.json", b"{}")]), "holds no job");
    refused(b"", "can’t be read");
    refused(b"\xFF\xD8\xFF", "can’t be read");
    let mut broken = whole;
    broken[45] ^= 0xFF;
    let dir = tempfile::tempdir().unwrap();
    assert_eq!(import(&open(&dir), &broken).unwrap_err().code(), "archive-refused");
}

fn any_json() -> impl Strategy<Value = serde_json::Value> {
    let leaf = prop_oneof![
        Just(serde_json::Value::Null),
        any::<bool>().prop_map(Into::into),
        any::<i64>().prop_map(Into::into),
        any::<f64>().prop_filter("JSON has no infinities", |n| n.is_finite()).prop_map(Into::into),
        ".{0,12}".prop_map(Into::into),
    ];
    leaf.prop_recursive(3, 12, 4, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..4).prop_map(Into::into),
            prop::collection::hash_map(".{0,6}", inner, 0..4).prop_map(|map| map.into_iter().collect()),
        ]
    })
}

fn any_change() -> impl Strategy<Value = RecordedChange> {
    prop_oneof![
        ".{0,40}".prop_map(|text| fill(&text)),
        (0u8..4).prop_map(|n| photo_change(&[b"picture".to_vec(), vec![n]].concat())),
        any_json().prop_map(|value| RecordedChange::Unknown(serde_json::json!({"do": "later", "with": value}))),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_job_makes_the_round_trip(
        log in prop::collection::btree_map(0u64..1000, any_change(), 0..12),
        photos in prop::collection::vec(0u8..4, 0..3),
    ) {
        let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
        let (store, other) = (open(&here), open(&there));
        let edits: Vec<Edit> = log.into_iter().map(|(n, change)| entry(n, change)).collect();
        let job = store.write::<_, StoreError>(|ledger| {
            let job = ledger.create_job(1)?;
            for n in photos {
                let original = [b"picture".to_vec(), vec![n]].concat();
                ledger.add_photo(job, NewPhoto { original: &original, facts: FACTS, screen: b"s", thumb: b"t" }, 2)?;
            }
            ledger.append(job, &edits)?;
            Ok(job)
        }).unwrap();
        let first = export(&store, job);
        prop_assert_eq!(import(&other, &first).unwrap(), job);
        prop_assert!(export(&other, job) == first);
        prop_assert_eq!(other.read::<_, StoreError>(|ledger| ledger.edits(job)).unwrap(), store.read::<_, StoreError>(|ledger| ledger.edits(job)).unwrap());
    }

    #[test]
    fn any_bytes_are_refused_or_read(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        let _ = read_job_file(&bytes);
        let _ = read_job_file(&[b"PK\x03\x04".to_vec(), bytes].concat());
    }

    #[test]
    fn a_damaged_archive_never_brings_a_wrong_photo(at in 0usize..600, flip in 1u8..) {
        let photo = b"picture of something";
        let mut zip = zipped(&[("job.json", JOB), (&photo_name(photo, "jpg"), photo)]);
        let at = at % zip.len();
        zip[at] ^= flip;
        let dir = tempfile::tempdir().unwrap();
        let store = open(&dir);
        if import(&store, &zip).is_ok() && !contents(dir.path()).is_empty() {
            prop_assert_eq!(store.original(&photo_id(photo)).unwrap(), photo);
        }
    }
}

/// What is near the border of what a job may hold, on either side of it.
fn at_the_border() -> impl Strategy<Value = (u64, RecordedChange)> {
    let later = |with: serde_json::Value| RecordedChange::Unknown(serde_json::json!({"do": "later", "with": with}));
    let signed = |points: usize| {
        let answer = serde_json::json!({
            "proposal": "000000000001-0000-0000000000000001", "jobs": [], "name": "A. Customer",
            "signature": [vec![[9_000, 500]; points]],
        });
        let change = serde_json::from_value(serde_json::json!({"do": "answer-proposal", "answer": answer})).unwrap();
        RecordedChange::Known(change)
    };
    let change = prop_oneof![
        (9_990usize..10_010, prop_oneof![Just("x"), Just("ü"), Just("\u{1}"), Just("\u{10348}")])
            .prop_map(|(count, letter)| fill(&letter.repeat(count))),
        (30_000usize..36_000).prop_map(signed),
        (262_000usize..262_200).prop_map(move |count| later("x".repeat(count).into())),
        (1usize..200_000).prop_map(move |count| later(vec![0; count].into())),
        (1usize..60_000).prop_map(move |count| later(vec![serde_json::json!({}); count].into())),
        (1usize..100).prop_map(move |depth| later((0..depth).fold(1.into(), |inner, _| serde_json::json!([inner])))),
        any_change(),
    ];
    (prop_oneof![0u64..100, (1u64 << 46) - 2..(1u64 << 46) + 2, Just(u64::MAX)], change)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    /// Whatever can be kept leaves, and comes in elsewhere without one entry being refused.
    #[test]
    fn nothing_is_kept_that_could_not_leave(log in prop::collection::vec(at_the_border(), 1..6)) {
        let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
        let (store, other) = (open(&here), open(&there));
        let job = store.write::<_, StoreError>(|ledger| ledger.create_job(1)).unwrap();
        for (n, change) in log {
            let edit = entry(n, change);
            if let Err(refused) = store.write::<_, StoreError>(|ledger| ledger.append(job, std::slice::from_ref(&edit))) {
                prop_assert!(matches!(refused.code(), "change-refused" | "edit-conflict"), "{}", refused);
            }
        }
        let first = export(&store, job);
        let imported = other.import(Cursor::new(&first), 5, &looks_right, &UnderWay::default()).unwrap();
        prop_assert_eq!(imported.refused, std::collections::BTreeMap::new());
        prop_assert!(export(&other, job) == first);
    }
}

#[test]
fn a_job_holds_no_more_than_its_archive() {
    let dir = tempfile::tempdir().unwrap();
    let store = open(&dir);
    let append = |job, ids: std::ops::Range<u64>, text: &str| {
        let edits: Vec<Edit> = ids.map(|n| entry(n, fill(text))).collect();
        store.write::<_, StoreError>(|ledger| ledger.append(job, &edits))
    };
    let job = store.write::<_, StoreError>(|ledger| ledger.create_job(1)).unwrap();
    append(job, 0..100_000, "x").unwrap();
    let refused = append(job, 100_000..100_001, "x").unwrap_err();
    assert_eq!(refused.code(), "job-full");
    assert!(refused.to_string().contains("100000 entries, or 32 MB"), "{refused}");
    let large = store.write::<_, StoreError>(|ledger| ledger.create_job(1)).unwrap();
    append(large, 0..3_000, &"x".repeat(10_000)).unwrap();
    assert_eq!(append(large, 3_000..3_500, &"x".repeat(10_000)).unwrap_err().code(), "job-full");
    for (job, count) in [(job, 100_000), (large, 3_000)] {
        assert_eq!(read_job_file(&export(&store, job)).unwrap().edits.len(), count);
    }
}

/// What earlier versions let in keeps its effect: the fold refuses none of it.
#[test]
fn nothing_that_was_released_lost_its_effect() {
    let kept = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../tests/kept/schema-2/archives");
    let mut read = 0;
    for archive in std::fs::read_dir(kept).unwrap().map(|entry| entry.unwrap().path()) {
        let job = Job::fold(&read_job_file(&std::fs::read(&archive).unwrap()).unwrap().edits);
        assert!(job.without_effect.is_empty(), "{}: {:?}", archive.display(), job.without_effect);
        read += 1;
    }
    assert!(read >= 7, "only {read} archives were read");
}
