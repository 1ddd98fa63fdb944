//! A process that is killed in the middle of writing: everything it was told is saved must be there.
//!
//! So often as `WEARBOOK_KILLS` says; else 1,000 times with `WEARBOOK_LONG`, and 200 times without.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, RecordedChange, TextField};
use wearbook_store::{JobId, NewPhoto, PhotoFacts, PhotoFormat, Store, StoreError, photo_id};

/// Names the folder to the child.
const FOLDER: &str = "WEARBOOK_KILL_TEST_FOLDER";
/// How often in one folder, before a new shop is begun.
const IN_ONE_FOLDER: usize = 25;

fn kills() -> usize {
    let asked = std::env::var("WEARBOOK_KILLS").ok().and_then(|kills| kills.parse().ok());
    asked.unwrap_or(if std::env::var_os("WEARBOOK_LONG").is_some() { 1_000 } else { 200 })
}

fn job() -> JobId {
    JobId::from_bits(7)
}

/// Not a test of its own: the process that the test below starts and kills.
#[test]
#[ignore = "started by the test below"]
fn child_that_writes_until_it_is_killed() {
    let Some(folder) = std::env::var_os(FOLDER) else { return };
    let mut store = Store::open(Path::new(&folder)).unwrap();
    store.write::<_, StoreError>(|ledger| ledger.adopt_job(job(), 1)).unwrap();
    for nth in 1.. {
        let edits = store.read::<_, StoreError>(|ledger| ledger.edits(job())).unwrap();
        let id = EditId::next(edits.last().map(|edit| edit.id), 1, DeviceId(1));
        let text = format!("entry {id}");
        // Bytes of their own for each, and enough of them to be caught half written.
        let original = text.repeat(1000).into_bytes();
        store
            .write::<_, StoreError>(|ledger| {
                let facts = PhotoFacts { format: PhotoFormat::Jpeg, width: 1, height: 1 };
                let new = NewPhoto { original: &original, facts, screen: b"screen", thumb: b"thumb" };
                ledger.add_photo(job(), new, 1)?;
                let change = Change::OnIntake(OnIntake::Fill { field: TextField::Remarks, text });
                ledger.append(job(), &[Edit { id, change: RecordedChange::Known(change) }])
            })
            .unwrap();
        // Only what is printed counts as promised.
        println!("saved {id} {}", photo_id(&original).as_str());
        // The log of writes is put into the database in between, and the shop closed and opened.
        match nth % 5 {
            2 => store.rest().unwrap(),
            4 => {
                drop(store);
                store = Store::open(Path::new(&folder)).unwrap();
            }
            _ => {}
        }
    }
}

fn start(folder: &Path) -> Child {
    Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "child_that_writes_until_it_is_killed", "--ignored", "--nocapture"])
        .env(FOLDER, folder)
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap()
}

/// A kill loses nothing that the system was given, so a place in memory is as good as a disk.
fn quick_folder() -> tempfile::TempDir {
    tempfile::tempdir_in("/dev/shm").or_else(|_| tempfile::tempdir()).unwrap()
}

#[test]
fn what_was_acknowledged_survives_a_kill() {
    let mut dir = quick_folder();
    let mut promised: Vec<(EditId, String)> = Vec::new();
    let (mut all, mut before_the_first) = (0, 0);
    for round in 0..kills() {
        if round % IN_ONE_FOLDER == 0 {
            dir = quick_folder();
            promised.clear();
        }
        let mut child = start(dir.path());
        let lines = BufReader::new(child.stdout.take().unwrap()).lines();
        // The harness may print on the same line before the first.
        let saved = |line: std::io::Result<String>| line.unwrap().split_once("saved ").map(|(_, rest)| rest.to_owned());
        let mut lines = lines.filter_map(saved);
        // At each entry in turn, and somewhere on the way to the next: while the shop is opened, too.
        let known = promised.len();
        let mut take = |line: String| {
            let (id, photo) = line.split_once(' ').unwrap();
            promised.push((id.parse().unwrap(), photo.to_owned()));
        };
        lines.by_ref().take(round % 8).for_each(&mut take);
        std::thread::sleep(Duration::from_micros((round as u64 * 7_919) % 6_000));
        // On Unix this is SIGKILL: the process gets no chance to tidy up.
        child.kill().unwrap();
        child.wait().unwrap();
        // What it said and nobody had read yet; a last line may be half.
        lines.filter(|line| line.len() == "000000000001-0000-0000000000000001 ".len() + 64).for_each(take);
        before_the_first += usize::from(promised.len() == known);
        all += promised.len() - known;

        let store = Store::open(dir.path()).unwrap_or_else(|error| panic!("round {round}: {error}"));
        assert!(store.recovered().unwrap().is_none(), "round {round}: it was damaged");
        if !promised.is_empty() {
            let edits = store.read::<_, StoreError>(|ledger| ledger.edits(job())).unwrap();
            for (id, photo) in &promised {
                assert!(edits.iter().any(|edit| edit.id == *id), "round {round}: edit {id} was lost");
                store.original(&photo.clone().try_into().unwrap()).unwrap();
            }
        }
        let left: Vec<_> = walk(dir.path()).into_iter().filter(|name| name.contains("incoming")).collect();
        assert!(left.is_empty(), "half-written files are left: {left:?}");
    }
    println!("{} kills, {all} entries with their photos, {before_the_first} times before the first", kills());
    assert!(all >= 3 * kills(), "the child hardly wrote anything: {all}");
}

fn walk(dir: &Path) -> Vec<String> {
    let entries = std::fs::read_dir(dir).unwrap().map(|entry| entry.unwrap().path());
    entries.flat_map(|path| if path.is_dir() { walk(&path) } else { vec![path.display().to_string()] }).collect()
}
