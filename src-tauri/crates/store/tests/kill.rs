//! A process that is killed in the middle of writing: everything it was told is saved must be there.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};

use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, RecordedChange, TextField};
use wearbook_store::{JobId, NewPhoto, PhotoFacts, PhotoFormat, Store, StoreError, photo_id};

/// Names the folder to the child.
const FOLDER: &str = "WEARBOOK_KILL_TEST_FOLDER";
/// Rounds of writing and killing; the kill falls at a different place each time.
const ROUNDS: usize = 5;

fn job() -> JobId {
    JobId::from_bits(7)
}

/// Not a test of its own: the process that the test below starts and kills.
#[test]
#[ignore = "started by the test below"]
fn child_that_writes_until_it_is_killed() {
    let Some(folder) = std::env::var_os(FOLDER) else { return };
    let store = Store::open(Path::new(&folder)).unwrap();
    store.write::<_, StoreError>(|ledger| ledger.adopt_job(job(), 1)).unwrap();
    loop {
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
    }
}

#[test]
fn what_was_acknowledged_survives_a_kill() {
    let dir = tempfile::tempdir().unwrap();
    let mut promised: Vec<(EditId, String)> = Vec::new();
    for round in 0..ROUNDS {
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "child_that_writes_until_it_is_killed", "--ignored", "--nocapture"])
            .env(FOLDER, dir.path())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let lines = BufReader::new(child.stdout.take().unwrap()).lines().map(Result::unwrap);
        // The harness may print on the same line before the first.
        let saved = lines.filter_map(|line| line.split_once("saved ").map(|(_, rest)| rest.to_owned()));
        for line in saved.take(7 + 3 * round) {
            let (id, photo) = line.split_once(' ').unwrap();
            promised.push((id.parse().unwrap(), photo.to_owned()));
        }
        // On Unix this is SIGKILL: the process gets no chance to tidy up.
        child.kill().unwrap();
        child.wait().unwrap();

        let store = Store::open(dir.path()).unwrap();
        let edits = store.read::<_, StoreError>(|ledger| ledger.edits(job())).unwrap();
        for (id, photo) in &promised {
            assert!(edits.iter().any(|edit| edit.id == *id), "round {round}: edit {id} was lost");
            store.original(&photo.clone().try_into().unwrap()).unwrap();
        }
        let left: Vec<_> = walk(dir.path()).into_iter().filter(|name| name.contains("incoming")).collect();
        assert!(left.is_empty(), "half-written files are left: {left:?}");
    }
    assert!(promised.len() >= 7 * ROUNDS, "the child hardly wrote anything: {}", promised.len());
}

fn walk(dir: &Path) -> Vec<String> {
    let entries = std::fs::read_dir(dir).unwrap().map(|entry| entry.unwrap().path());
    entries.flat_map(|path| if path.is_dir() { walk(&path) } else { vec![path.display().to_string()] }).collect()
}
