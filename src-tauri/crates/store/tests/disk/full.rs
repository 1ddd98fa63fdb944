//! The disk is full from any step on: what was acknowledged is there, what is refused is refused because the disk is
//! full, and what was saved can still be read.

use std::os::unix::net::UnixDatagram;
use std::path::Path;

use crate::tape::{Calls, Child, is_there, quick_folder};
use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, RecordedChange, TextField};
use wearbook_store::{JobId, NewPhoto, PhotoFacts, PhotoFormat, Store, StoreError, photo_id};

/// Where the child tells what came of it: a full disk does not keep it from that.
const EAR: &str = "WEARBOOK_FULL_TEST_EAR";
const ENTRIES: u64 = 5;

fn job() -> JobId {
    JobId::from_bits(7)
}

fn edit(nth: u64) -> Edit {
    let text = format!("entry {nth} {}", "x".repeat(if nth == 3 { 9_000 } else { 100 }));
    let change = Change::OnIntake(OnIntake::Fill { field: TextField::Remarks, text });
    Edit { id: EditId::next(None, nth, DeviceId(1)), change: RecordedChange::Known(change) }
}

fn photo(nth: u64) -> Vec<u8> {
    format!("photo {nth} ").repeat(50).into_bytes()
}

fn enter(store: &Store, nth: u64) -> Result<(), StoreError> {
    let original = photo(nth);
    store.write(|ledger| {
        let facts = PhotoFacts { format: PhotoFormat::Jpeg, width: 1, height: 1 };
        ledger.add_photo(job(), NewPhoto { original: &original, facts, screen: b"screen", thumb: b"thumb" }, 1)?;
        ledger.append(job(), &[edit(nth)])
    })
}

fn tell(what: &str) {
    let Some(ear) = std::env::var_os(EAR) else { return };
    UnixDatagram::unbound().unwrap().send_to(what.as_bytes(), ear).unwrap();
}

/// Not a test of its own: enters what it can, and tells how many entries it was promised, and why it was refused
/// others.
#[test]
#[ignore = "started by the tests below"]
fn child_that_enters() {
    let Some(folder) = Child::folder() else { return };
    let (mut saved, mut refused) = (0, Vec::new());
    match Store::open(&folder) {
        Ok(store) => {
            for nth in 0..=ENTRIES {
                let entered = match nth {
                    0 => store.write(|ledger| ledger.adopt_job(job(), 1)),
                    nth => enter(&store, nth),
                };
                match entered {
                    Ok(()) => saved = nth,
                    Err(error) => refused.push(error.code()),
                }
                if nth == 0 && !refused.is_empty() {
                    break;
                }
            }
        }
        Err(error) => refused.push(error.code()),
    }
    tell(&format!("{saved} {}", refused.join(" ")));
}

/// Not a test of its own: reads what is there, and tries to enter more.
#[test]
#[ignore = "started by the tests below"]
fn child_that_reads() {
    let Some(folder) = Child::folder() else { return };
    match Store::open(&folder) {
        Err(error) => tell(&format!("not opened: {}", error.code())),
        Ok(store) => {
            let read = store.read::<_, StoreError>(|ledger| ledger.edits(job())).map(|edits| edits.len());
            let photo = store.original(&photo_id(&photo(1))).map(|bytes| bytes.len());
            let more = enter(&store, ENTRIES + 1).map_err(|error| error.code());
            let again = store.read::<_, StoreError>(|ledger| ledger.edits(job())).map(|edits| edits.len());
            tell(&format!("{read:?} {photo:?} {more:?} {again:?}"));
        }
    }
}

/// What a child tells that is run while the disk is full from a writing call on; nothing if it did not come so far.
fn told(test: &str, folder: &Path, calls: &Calls, from: usize) -> Option<String> {
    let place = tempfile::tempdir().unwrap();
    let ear = place.path().join("ear");
    let socket = UnixDatagram::bind(&ear).unwrap();
    socket.set_nonblocking(true).unwrap();
    Child { test, folder, told: &[(EAR, ear.to_str().unwrap())] }.run_full(calls, from);
    let mut heard = [0; 1_000];
    let length = socket.recv(&mut heard).ok()?;
    Some(String::from_utf8_lossy(&heard[..length]).into_owned())
}

#[test]
fn a_disk_that_is_full_from_any_step_on_loses_nothing() {
    if !is_there() {
        return;
    }
    let folder = quick_folder();
    let calls = Child { test: "full::child_that_enters", folder: folder.path(), told: &[] }.writing_calls();
    let step = if std::env::var_os("WEARBOOK_LONG").is_some() { 1 } else { 3 };
    let (mut tried, mut refused) = (0, 0);
    for from in (calls.first..calls.names.len()).step_by(step) {
        let folder = quick_folder();
        let told = told("full::child_that_enters", folder.path(), &calls, from);
        let told = told.unwrap_or_else(|| panic!("full from call {from} on: the child came to grief"));
        let mut words = told.split(' ');
        let saved: u64 = words.next().unwrap().parse().unwrap();
        for code in words.filter(|word| !word.is_empty()) {
            assert_eq!(code, "store-full", "full from call {from} on");
            refused += 1;
        }
        // There is room again.
        let store = Store::open(folder.path()).unwrap_or_else(|error| panic!("full from call {from} on: {error}"));
        assert!(store.recovered().unwrap().is_none(), "full from call {from} on: it was damaged");
        if saved > 0 {
            let edits = store.read::<_, StoreError>(|ledger| ledger.edits(job())).unwrap();
            for nth in 1..=saved {
                assert!(edits.contains(&edit(nth)), "full from call {from} on: entry {nth} was lost");
                assert_eq!(store.original(&photo_id(&photo(nth))).unwrap(), photo(nth));
            }
        }
        store.write::<_, StoreError>(|ledger| ledger.adopt_job(job(), 1)).unwrap();
        enter(&store, ENTRIES).unwrap();
        tried += 1;
    }
    println!("{tried} disks, {refused} refusals");
    assert!(tried > 40 && refused > tried, "hardly anything was tried: {tried}, {refused}");
}

#[test]
fn a_full_disk_at_the_start_can_still_be_read() {
    if !is_there() {
        return;
    }
    for is_closed in [true, false] {
        let seen = shop(is_closed);
        let child = Child { test: "full::child_that_reads", folder: seen.path(), told: &[] };
        // A folder that is there is not refused for want of room.
        let calls = child.writing_calls().without("mkdir");
        let folder = shop(is_closed);
        let told = told("full::child_that_reads", folder.path(), &calls, calls.first).unwrap();
        let expected = format!("Ok({ENTRIES}) Ok({}) Err(\"store-full\") Ok({ENTRIES})", photo(1).len());
        assert_eq!(told, expected, "closed: {is_closed}");
        // Nothing has come of it for the next start.
        let store = Store::open(folder.path()).unwrap();
        let edits = store.read::<_, StoreError>(|ledger| ledger.edits(job())).unwrap();
        assert_eq!(edits, (1..=ENTRIES).map(edit).collect::<Vec<_>>());
        enter(&store, ENTRIES + 1).unwrap();
    }
}

/// A shop that was closed, or one whose program was killed.
fn shop(is_closed: bool) -> tempfile::TempDir {
    let (made, killed) = (quick_folder(), quick_folder());
    let store = Store::open(made.path()).unwrap();
    store.write::<_, StoreError>(|ledger| ledger.adopt_job(job(), 1)).unwrap();
    (1..=ENTRIES).for_each(|nth| enter(&store, nth).unwrap());
    copy(made.path(), killed.path());
    drop(store);
    if is_closed { made } else { killed }
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap() {
        let (path, name) = entry.map(|entry| (entry.path(), entry.file_name())).unwrap();
        if path.is_dir() {
            copy(&path, &to.join(name));
        } else if name != "wearbook.db-shm" {
            std::fs::copy(&path, to.join(name)).unwrap();
        }
    }
}
