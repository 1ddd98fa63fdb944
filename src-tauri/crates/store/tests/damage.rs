//! A database with a corrupt page: a sentence, and what lies on sound pages can still be read and exported.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::collections::BTreeMap;
use std::io::Cursor;
use std::path::Path;

use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, RecordedChange, TextField};
use wearbook_core::under_way::UnderWay;
use wearbook_store::{JobId, NewPhoto, PhotoFacts, PhotoFormat, Store, StoreError};

fn fill(n: u64, text: String) -> Edit {
    let change = Change::OnIntake(OnIntake::Fill { field: TextField::Remarks, text });
    Edit { id: EditId::next(None, n, DeviceId(1)), change: RecordedChange::Known(change) }
}

#[test]
fn a_corrupt_page_is_said_and_other_jobs_still_open() {
    let dir = tempfile::tempdir().unwrap();
    let (lost, sound) = (JobId::from_bits(1), JobId::from_bits(2));
    {
        let store = Store::open(dir.path()).unwrap();
        store
            .write::<_, StoreError>(|ledger| {
                for (job, mark) in [(lost, "LOST"), (sound, "SOUND")] {
                    ledger.adopt_job(job, 1)?;
                    let edits: Vec<Edit> =
                        (1..200).map(|n| fill(n, format!("{mark} {n} {}", "x".repeat(200)))).collect();
                    ledger.append(job, &edits)?;
                }
                Ok(())
            })
            .unwrap();
    }
    // Dropping the store has written the log back into the database. A page in the middle of the first job goes bad.
    let path = dir.path().join("wearbook.db");
    let mut bytes = std::fs::read(&path).unwrap();
    let at = find(&bytes, b"LOST 100 ") / 4096 * 4096;
    bytes[at..at + 4096].fill(0xA5);
    std::fs::write(&path, &bytes).unwrap();

    let store = Store::open(dir.path()).unwrap();
    let refused = store.read(|ledger| ledger.edits(lost)).unwrap_err();
    assert_eq!(refused.code(), "store-damaged");
    assert!(refused.to_string().contains("damaged"), "{refused}");
    assert_eq!(store.read::<_, StoreError>(|ledger| ledger.edits(sound)).unwrap().len(), 199);
    store.export(sound, Cursor::new(Vec::new()), &UnderWay::default()).unwrap();
}

fn find(bytes: &[u8], what: &[u8]) -> usize {
    bytes.windows(what.len()).position(|window| window == what).unwrap()
}

const JOBS: u128 = 6;
const PAGE: usize = 4096;

/// A shop of six jobs, one of them with an entry that goes on over several pages; as files, closed.
fn shop(dir: &Path) -> BTreeMap<JobId, Vec<Edit>> {
    let store = Store::open(dir).unwrap();
    let mut all = BTreeMap::new();
    for n in 1..=JOBS {
        let job = JobId::from_bits(n << 120 | n);
        let long = |at: u64| if at == 30 { 9_000 } else { 150 };
        let edits: Vec<Edit> = (1..50).map(|at| fill(at, format!("{n} {at} {}", "x".repeat(long(at))))).collect();
        store
            .write::<_, StoreError>(|ledger| {
                ledger.adopt_job(job, 7)?;
                ledger.append(job, &edits)
            })
            .unwrap();
        all.insert(job, edits);
    }
    all
}

/// Damage of a page, by its name.
fn damages(page: &mut [u8], how: &str, seed: usize) {
    match how {
        "zeroed" => page.fill(0),
        _ => {
            let mut state = seed as u64 + 1;
            for byte in page {
                state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                *byte = (state >> 56) as u8;
            }
        }
    }
}

/// Whatever page is lost, and however: the list is shown, what can't be read is named, and recovery brings back all that
/// did not stand on that page and invents nothing.
#[test]
fn any_page_may_be_lost() {
    let dir = tempfile::tempdir().unwrap();
    let all = shop(dir.path());
    let whole = std::fs::read(dir.path().join("wearbook.db")).unwrap();
    let entries: usize = all.values().map(Vec::len).sum();
    for how in ["zeroed", "random", "cut off"] {
        let (mut least, mut kept, mut runs, mut listed_at_once) = (entries, 0, 0, 0);
        for at in 0..whole.len() / PAGE {
            let mut bytes = whole.clone();
            match how {
                "cut off" => bytes.truncate(at * PAGE + PAGE / 2),
                _ => damages(&mut bytes[at * PAGE..(at + 1) * PAGE], how, at),
            }
            let dir = tempfile::tempdir().unwrap();
            std::fs::write(dir.path().join("wearbook.db"), &bytes).unwrap();
            let store = Store::open(dir.path()).unwrap_or_else(|error| panic!("page {at} {how}: {error}"));
            // As it is listed before anything is recovered: no job is said to be whole that is not.
            let listed = store.read::<_, StoreError>(|ledger| ledger.jobs_as_far_as_read()).unwrap();
            listed_at_once += listed.len();
            for row in &listed {
                let read = store.read::<_, StoreError>(|ledger| Ok(ledger.edits_as_far_as_read(row.id))).unwrap();
                assert!(read.edits.iter().all(|edit| all[&row.id].contains(edit)), "page {at} {how}: invented");
                let is_recovered = store.recovered().ok().flatten().is_some();
                assert!(!read.is_whole || is_recovered || read.edits == all[&row.id], "page {at} {how}: not said");
            }
            store.note_damage().unwrap();
            drop(store);
            let store = Store::open(dir.path()).unwrap();
            let recovered = store.recovered().unwrap().unwrap();
            assert!(dir.path().join("damaged-1").join("wearbook.db").exists(), "page {at} {how}: not copied aside");
            let mut read = 0;
            for (job, count) in &recovered.jobs {
                let edits = store.read::<_, StoreError>(|ledger| ledger.edits(*job)).unwrap();
                assert!(edits.iter().all(|edit| all[job].contains(edit)), "page {at} {how}: invented");
                assert_eq!(edits.len(), *count, "page {at} {how}");
                let is_said = recovered.short.contains(job);
                assert!(is_said || edits.len() == all[job].len(), "page {at} {how}: not said that it lacks some");
                read += count;
            }
            (least, kept, runs) = (least.min(read), kept + read, runs + 1);
        }
        let share = 1000 * kept / (runs * entries);
        println!(
            "{how}: {runs} pages, {share} of 1000 entries recovered, {least} of {entries} at least, {listed_at_once} jobs listed at once"
        );
        if how != "cut off" {
            assert!(share >= 950 && least * 10 >= entries * 8, "{how}: {share} of 1000, {least} of {entries} at least");
        }
    }
}

/// The newest entries stand in the log of writes alone until it is written back.
#[test]
fn what_stands_only_in_the_log_of_writes_is_recovered() {
    let dir = tempfile::tempdir().unwrap();
    let all = shop(dir.path());
    let (job, late) = (JobId::from_bits(JOBS << 120 | JOBS), fill(900, "late".repeat(2_400)));
    let store = Store::open(dir.path()).unwrap();
    store.write::<_, StoreError>(|ledger| ledger.append(job, std::slice::from_ref(&late))).unwrap();
    let copy = tempfile::tempdir().unwrap();
    for name in ["wearbook.db", "wearbook.db-wal"] {
        std::fs::copy(dir.path().join(name), copy.path().join(name)).unwrap();
    }
    let path = copy.path().join("wearbook.db");
    let mut bytes = std::fs::read(&path).unwrap();
    bytes[..PAGE].fill(0);
    std::fs::write(&path, &bytes).unwrap();
    let store = Store::open(copy.path()).unwrap();
    let edits = store.read::<_, StoreError>(|ledger| ledger.edits(job)).unwrap();
    assert_eq!(edits.last(), Some(&late));
    assert_eq!(edits.len(), all[&job].len() + 1);
}

/// Cut off after any of its steps, a recovery is done again from the same copy.
#[test]
fn a_recovery_that_was_cut_off_is_done_again() {
    let dir = tempfile::tempdir().unwrap();
    let all = shop(dir.path());
    let path = |name: &str| dir.path().join(name);
    let count = || {
        let store = Store::open(dir.path()).unwrap();
        let jobs = store.recovered().unwrap().unwrap().jobs;
        jobs.values().sum::<usize>()
    };
    let entries: usize = all.values().map(Vec::len).sum();
    let mut bytes = std::fs::read(path("wearbook.db")).unwrap();
    bytes[..PAGE].fill(0);
    std::fs::write(path("wearbook.db"), &bytes).unwrap();
    // The copy was half made.
    std::fs::create_dir(path("damaged.making")).unwrap();
    std::fs::write(path("damaged.making").join("wearbook.db"), b"half").unwrap();
    assert_eq!(count(), entries);
    // The old files were taken away, the new one had not taken their place.
    std::fs::write(path("wearbook.damaged"), "damaged-1").unwrap();
    std::fs::remove_file(path("wearbook.db")).unwrap();
    std::fs::write(path("wearbook.recovered"), b"half").unwrap();
    assert_eq!(count(), entries);
    assert!(!path("wearbook.damaged").exists() && !path("damaged-2").exists());
}

#[test]
fn beside_photos_no_new_shop_is_begun() {
    let dir = tempfile::tempdir().unwrap();
    shop(dir.path());
    let store = Store::open(dir.path()).unwrap();
    let facts = PhotoFacts { format: PhotoFormat::Jpeg, width: 1, height: 1 };
    let new = NewPhoto { original: b"picture", facts, screen: b"s", thumb: b"t" };
    store.write::<_, StoreError>(|ledger| ledger.add_photo(JobId::from_bits(1 << 120 | 1), new, 1)).unwrap();
    drop(store);
    let path = dir.path().join("wearbook.db");
    std::fs::write(&path, b"").unwrap();
    assert_eq!(Store::open(dir.path()).unwrap_err().code(), "store-missing");
    std::fs::remove_file(&path).unwrap();
    assert_eq!(Store::open(dir.path()).unwrap_err().code(), "store-missing");
    assert!(!path.exists(), "a new shop was begun");
}
