//! The power goes off at any step of a program's work: everything it was told is saved must be there, and nothing
//! damaged.

use std::io::Write;
use std::path::Path;

use crate::tape::{Child, Disk, Lost, Step, is_there, quick_folder};
use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, RecordedChange, TextField};
use wearbook_store::{JobId, NewPhoto, PhotoFacts, PhotoFormat, Store, StoreError, photo_id};

/// Tells the child how SQLite is to sync.
const SYNCS: &str = "WEARBOOK_POWER_TEST_SYNCS";
const FACTS: PhotoFacts = PhotoFacts { format: PhotoFormat::Jpeg, width: 1, height: 1 };

fn job() -> JobId {
    JobId::from_bits(7)
}

fn edit(nth: u64) -> Edit {
    let text = format!("entry {nth} {}", "x".repeat(if nth % 7 == 3 { 9_000 } else { 100 }));
    let change = Change::OnIntake(OnIntake::Fill { field: TextField::Remarks, text });
    Edit { id: EditId::next(None, nth, DeviceId(1)), change: RecordedChange::Known(change) }
}

/// Of more than one sector.
fn photo(nth: u64) -> Vec<u8> {
    format!("photo {nth} ").repeat(150).into_bytes()
}

/// Only what was said counts as promised.
fn say(nth: u64) {
    println!("saved {nth}");
    std::io::stdout().flush().unwrap();
}

/// How many entries a child makes.
fn entries() -> u64 {
    if std::env::var_os("WEARBOOK_LONG").is_some() { 60 } else { 15 }
}

/// Not a test of its own: works as the program does.
#[test]
#[ignore = "started by the tests below"]
fn child_that_works() {
    let Some(folder) = Child::folder() else { return };
    let mut store = Store::open(&folder).unwrap();
    store.write::<_, StoreError>(|ledger| ledger.adopt_job(job(), 1)).unwrap();
    for nth in 1..=entries() {
        let original = photo(nth);
        store
            .write::<_, StoreError>(|ledger| {
                let new = NewPhoto { original: &original, facts: FACTS, screen: b"screen", thumb: b"thumb" };
                ledger.add_photo(job(), new, 1)?;
                ledger.append(job(), &[edit(nth)])
            })
            .unwrap();
        say(nth);
        // The log of writes is put into the database in between, and the program closed and begun again.
        match nth % 11 {
            5 => store.rest().unwrap(),
            8 => {
                drop(store);
                store = Store::open(&folder).unwrap();
            }
            _ => {}
        }
    }
}

/// Not a test of its own: writes the same rows with SQLite alone, which syncs as it is told.
#[test]
#[ignore = "started by the tests below"]
fn child_that_syncs_as_it_is_told() {
    let (Some(folder), Ok(syncs)) = (Child::folder(), std::env::var(SYNCS)) else { return };
    let store = Store::open(&folder).unwrap();
    store.write::<_, StoreError>(|ledger| ledger.adopt_job(job(), 1)).unwrap();
    drop(store);
    let connection = rusqlite::Connection::open(folder.join("wearbook.db")).unwrap();
    connection.pragma_update(None, "synchronous", syncs).unwrap();
    for nth in 1..=entries() {
        let Edit { id, change } = edit(nth);
        let values = (job().to_string(), id.to_string(), serde_json::to_string(&change).unwrap());
        connection.execute("INSERT INTO edit (job, id, change) VALUES (?1, ?2, ?3)", values).unwrap();
        say(nth);
    }
}

/// What came of all images of a tape.
#[derive(Debug, Default)]
struct Outcome {
    steps: usize,
    images: usize,
    /// Entries or photos that were promised and are not there, over all images.
    lost: usize,
    /// Images that could not be opened, or only by recovering them.
    damaged: usize,
}

/// Tries the disk after every step of a child.
fn try_all(test: &str, told: &[(&str, &str)], with_photos: bool) -> Outcome {
    let folder = quick_folder();
    let mut disk = Disk::of(folder.path());
    let steps = Child { test, folder: folder.path(), told }.watch();
    let mut promised = 0;
    let mut outcome = Outcome { steps: steps.len(), ..Outcome::default() };
    for (nth, step) in steps.iter().enumerate() {
        disk.step(step);
        if let Step::Said(line) = step {
            promised = line.split_once("saved ").map_or(promised, |(_, nth)| nth.parse().unwrap());
        }
        // The log's index is made anew whenever nobody has the database open.
        if matches!(step, Step::Write(path, ..) if path == Path::new("wearbook.db-shm")) {
            continue;
        }
        let several = [Lost::All, Lost::None, Lost::Half(nth as u64), Lost::Torn];
        for lost in if disk.is_settled() { &several[..1] } else { &several } {
            let image = quick_folder();
            disk.lay_out(*lost, image.path());
            outcome.images += 1;
            match missing(image.path(), promised, with_photos) {
                Some(0) => {}
                Some(missing) => outcome.lost += missing,
                None => outcome.damaged += 1,
            }
        }
    }
    assert_eq!(promised, entries(), "the child did not say all that it did");
    println!(
        "{test} {told:?}: {} steps, {} images, {} lost, {} damaged",
        outcome.steps, outcome.images, outcome.lost, outcome.damaged
    );
    outcome
}

/// How much of what was promised is missing; none if the shop is damaged.
fn missing(dir: &Path, promised: u64, with_photos: bool) -> Option<usize> {
    if promised == 0 && !dir.join("wearbook.db").exists() {
        return Some(0);
    }
    let store = Store::open(dir).ok()?;
    if store.recovered().ok()?.is_some() || dir.join("damaged-1").exists() {
        return None;
    }
    if promised == 0 {
        return Some(0);
    }
    let edits = store.read::<_, StoreError>(|ledger| ledger.edits(job())).ok()?;
    let lost = (1..=promised).filter(|nth| !edits.contains(&edit(*nth))).count();
    let is_lost = |nth: &u64| with_photos && store.original(&photo_id(&photo(*nth))).ok() != Some(photo(*nth));
    Some(lost + (1..=promised).filter(is_lost).count())
}

#[test]
fn what_was_acknowledged_survives_the_power_going_off_at_any_step() {
    if !is_there() {
        return;
    }
    let outcome = try_all("power::child_that_works", &[], true);
    assert_eq!((outcome.lost, outcome.damaged), (0, 0));
    assert!(outcome.images > 1_000, "hardly anything was tried");
}

/// So that the test above is known to be able to fail.
#[test]
fn what_is_not_synced_is_lost() {
    if !is_there() {
        return;
    }
    let with = |syncs: &str| try_all("power::child_that_syncs_as_it_is_told", &[(SYNCS, syncs)], false);
    let (full, normal) = (with("FULL"), with("NORMAL"));
    assert_eq!((full.lost, full.damaged), (0, 0));
    assert!(normal.lost > 0 && normal.damaged == 0, "{normal:?}");
}
