//! A job is put away, brought back, gone after 30 days, and comes back by an archive only when asked.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::io::Cursor;

use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, RecordedChange, TextField};
use wearbook_core::under_way::UnderWay;
use wearbook_store::{JobId, NewPhoto, PhotoFacts, PhotoFormat, Store, StoreError, photo_id};

const DAY: u64 = 24 * 60 * 60 * 1000;
const FACTS: PhotoFacts = PhotoFacts { format: PhotoFormat::Jpeg, width: 1, height: 1 };

fn fill(n: u64) -> Edit {
    let change = Change::OnIntake(OnIntake::Fill { field: TextField::Remarks, text: n.to_string() });
    Edit { id: EditId::next(None, n, DeviceId(1)), change: RecordedChange::Known(change) }
}

/// A store with one job of one entry and two photos, one of which another job has too.
fn shop(dir: &std::path::Path) -> (Store, JobId, JobId) {
    let store = Store::open(dir).unwrap();
    let (job, other) = (JobId::from_bits(1), JobId::from_bits(2));
    store
        .write::<_, StoreError>(|ledger| {
            for (job, photos) in [(job, &["own", "shared"][..]), (other, &["shared"])] {
                ledger.adopt_job(job, 1)?;
                ledger.append(job, &[fill(1)])?;
                for photo in photos {
                    let new = NewPhoto { original: photo.as_bytes(), facts: FACTS, screen: b"s", thumb: b"t" };
                    ledger.add_photo(job, new, 1)?;
                }
            }
            Ok(())
        })
        .unwrap();
    (store, job, other)
}

fn put_away(store: &Store, job: JobId, now: u64) -> Result<(), StoreError> {
    store.write(|ledger| ledger.put_away(job, now))
}

fn archive(store: &Store, job: JobId) -> Vec<u8> {
    let bytes = store.export(job, Cursor::new(vec![]), &UnderWay::default()).unwrap().into_inner();
    store.write::<_, StoreError>(|ledger| ledger.note_archived(job, 1)).unwrap();
    bytes
}

fn listed(store: &Store) -> Vec<JobId> {
    store.read::<_, StoreError>(|ledger| ledger.jobs()).unwrap().into_iter().map(|row| row.id).collect()
}

#[test]
fn a_job_is_put_away_only_after_an_archive_of_it_as_it_stands() {
    let dir = tempfile::tempdir().unwrap();
    let (store, job, other) = shop(dir.path());
    assert_eq!(put_away(&store, job, 5).unwrap_err().code(), "not-archived");
    archive(&store, job);
    store.write::<_, StoreError>(|ledger| ledger.append(job, &[fill(2)])).unwrap();
    assert_eq!(put_away(&store, job, 5).unwrap_err().code(), "not-archived", "it was changed since");
    archive(&store, job);
    put_away(&store, job, 5).unwrap();
    assert_eq!(listed(&store), [other]);
    assert_eq!(store.read::<_, StoreError>(|ledger| ledger.edits(job)).unwrap_err().code(), "no-such-job");
    let new = NewPhoto { original: b"late", facts: FACTS, screen: b"s", thumb: b"t" };
    let late = store.write::<_, StoreError>(|ledger| ledger.add_photo(job, new, 6));
    assert_eq!(late.unwrap_err().code(), "no-such-job");
    store.original(&photo_id(b"late")).unwrap_err();
    store.clear_put_away(5 + 30 * DAY - 1).unwrap();
    store.write::<_, StoreError>(|ledger| ledger.bring_back(job)).unwrap();
    assert_eq!(store.read::<_, StoreError>(|ledger| ledger.edits(job)).unwrap().len(), 2);
    store.original(&photo_id(b"own")).unwrap();
}

#[test]
fn after_thirty_days_a_stub_is_left_and_an_archive_brings_the_job_back_only_when_asked() {
    let dir = tempfile::tempdir().unwrap();
    let (store, job, other) = shop(dir.path());
    let bytes = archive(&store, job);
    put_away(&store, job, 5).unwrap();
    store.clear_put_away(5 + 30 * DAY).unwrap();
    assert_eq!(store.original(&photo_id(b"own")).unwrap_err().code(), "no-such-photo");
    store.original(&photo_id(b"shared")).unwrap();
    let stubs = store.read::<_, StoreError>(|ledger| Ok((ledger.all_put_away()?, ledger.device()?))).unwrap();
    assert_eq!((stubs.0[0].job, stubs.0[0].at, stubs.0[0].device, stubs.0[0].gone), (job, 5, stubs.1, true));
    assert_eq!(store.write::<_, StoreError>(|ledger| ledger.bring_back(job)).unwrap_err().code(), "no-such-job");

    let way = UnderWay::default();
    let check = |_: &[u8]| Ok(FACTS);
    assert_eq!(store.import(Cursor::new(&bytes), 9, &check, &way).unwrap_err().code(), "job-put-away");
    assert_eq!(listed(&store), [other]);
    store.import_back(Cursor::new(&bytes), 9, true, &check, &way).unwrap();
    assert_eq!(store.read::<_, StoreError>(|ledger| ledger.edits(job)).unwrap(), [fill(1)]);
    store.original(&photo_id(b"own")).unwrap();
    assert_eq!(store.read::<_, StoreError>(|ledger| ledger.all_put_away()).unwrap(), []);
}
