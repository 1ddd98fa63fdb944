//! A database with a corrupt page: a sentence, and what lies on sound pages can still be read and exported.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::io::Cursor;

use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, RecordedChange, TextField};
use wearbook_core::under_way::UnderWay;
use wearbook_store::{JobId, Store, StoreError};

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
