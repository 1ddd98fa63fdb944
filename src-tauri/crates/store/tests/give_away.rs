//! A job that is given away carries cleaned pictures, which stand in for the photos until these come.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::io::Cursor;
use std::path::Path;

use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnPart, PhotoId, RecordedChange};
use wearbook_core::under_way::UnderWay;
use wearbook_store::{
    GivenAway, JobId, NewPhoto, PhotoFacts, PhotoFormat, ShownSize, Store, StoreError, photo_id, read_job_file, verify,
};

const FACTS: PhotoFacts = PhotoFacts { format: PhotoFormat::Jpeg, width: 4, height: 3 };
const PHOTOS: [&[u8]; 2] = [b"picture one, taken at 48 N 11 E", b"picture two, taken at 48 N 11 E"];

/// Stands in for the photo crate: what follows a comma is not the picture.
fn clean(bytes: &[u8]) -> Result<(Vec<u8>, PhotoFacts), String> {
    let text = String::from_utf8(bytes.to_vec()).unwrap();
    let picture = text.split(',').next().unwrap();
    if picture.contains("broken") { Err("It is no picture.".into()) } else { Ok((picture.into(), FACTS)) }
}

fn job() -> JobId {
    JobId::from_bits(7)
}

fn add(store: &Store, n: u64, bytes: &[u8]) -> PhotoId {
    store
        .write::<_, StoreError>(|ledger| {
            ledger.adopt_job(job(), 1)?;
            let new = NewPhoto { original: bytes, facts: FACTS, screen: b"s", thumb: b"t" };
            let photo = ledger.add_photo(job(), new, 1)?;
            let part = "piston.1".parse().unwrap();
            let change = Change::OnPart(OnPart::AddPhoto { part, photo: photo.clone(), sharpness: None });
            let id = EditId::next(None, n, DeviceId(1));
            ledger.append(job(), &[Edit { id, change: RecordedChange::Known(change) }])?;
            Ok(photo)
        })
        .unwrap()
}

fn owner(dir: &Path) -> Store {
    let store = Store::open(dir).unwrap();
    for (n, photo) in (1..).zip(PHOTOS) {
        add(&store, n, photo);
    }
    store
}

fn give(store: &Store) -> (Vec<u8>, GivenAway) {
    let (file, told) = store.export_to_give_away(job(), Cursor::new(vec![]), &clean, &UnderWay::default()).unwrap();
    (file.into_inner(), told)
}

fn own(store: &Store) -> Vec<u8> {
    store.export(job(), Cursor::new(vec![]), &UnderWay::default()).unwrap().into_inner()
}

fn take(store: &Store, archive: &[u8]) {
    store.import(Cursor::new(archive), 5, &|_| Ok(FACTS), &UnderWay::default()).unwrap();
    verify(Cursor::new(own(store)), &UnderWay::default()).unwrap();
}

fn files(dir: &Path) -> usize {
    let folders = std::fs::read_dir(dir.join("photos")).unwrap().map(|entry| entry.unwrap().path());
    folders.map(|folder| std::fs::read_dir(folder).unwrap().count()).sum()
}

#[test]
fn what_is_given_away_holds_pictures_and_nothing_else_of_the_photos() {
    let dir = tempfile::tempdir().unwrap();
    let store = owner(dir.path());
    let broken = add(&store, 9, b"picture broken, taken at 48 N 11 E");
    let (archive, told) = give(&store);
    assert_eq!((told.stand_ins, told.left_out), (2, [broken].into()));
    assert!(!archive.windows(4).any(|window| window == b"48 N"), "a place went along");
    let read = read_job_file(&archive).unwrap();
    assert_eq!((read.version, read.stand_ins.len(), read.edits.len()), (2, 2, 3));
    assert_eq!(read.stand_ins[&photo_id(PHOTOS[0])], photo_id(b"picture one"));
    let verified = verify(Cursor::new(&archive), &UnderWay::default()).unwrap();
    assert_eq!((verified.photos, verified.photos_elsewhere.len()), (2, 1));
    assert!(give(&store).0 == archive, "the same job gave another file");
    assert_eq!(read_job_file(&own(&store)).unwrap().version, 1);
}

#[test]
fn who_lacks_the_photo_sees_what_stands_in_until_it_comes() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (store, other) = (owner(here.path()), Store::open(there.path()).unwrap());
    let (given, photo) = (give(&store).0, photo_id(PHOTOS[0]));
    take(&other, &given);
    assert_eq!(other.original(&photo).unwrap_err().code(), "no-such-photo");
    assert_eq!(other.picture(&photo).unwrap(), b"picture one");
    let row = other.read::<_, StoreError>(|ledger| ledger.picture(&photo)).unwrap().unwrap();
    assert_eq!(row.id, photo_id(b"picture one"));
    other.keep_shown(&photo, ShownSize::Thumb, b"of what stands in").unwrap();
    let before = own(&other);
    take(&other, &given);
    assert!(own(&other) == before, "twice changed something");
    // It goes on to a third device, by either way.
    for archive in [own(&other), give(&other).0] {
        let third = tempfile::tempdir().unwrap();
        let third = Store::open(third.path()).unwrap();
        take(&third, &archive);
        assert_eq!(third.picture(&photo).unwrap(), b"picture one");
        assert!(own(&third) == before);
    }
    // The photo comes, and what stood in for it goes.
    take(&other, &own(&store));
    assert_eq!(other.original(&photo).unwrap(), PHOTOS[0]);
    assert_eq!(other.picture(&photo).unwrap(), PHOTOS[0]);
    assert_eq!(other.shown(&photo, ShownSize::Thumb).unwrap(), None, "the small picture is of what stood in");
    assert_eq!(files(there.path()), 2);
    assert!(own(&other) == own(&store));
}

#[test]
fn what_stands_in_outlives_a_recovery() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (store, other) = (owner(here.path()), Store::open(there.path()).unwrap());
    take(&other, &give(&store).0);
    let before = own(&other);
    other.note_damage().unwrap();
    drop(other);
    let other = Store::open(there.path()).unwrap();
    assert!(other.recovered().unwrap().is_some());
    assert_eq!(other.picture(&photo_id(PHOTOS[0])).unwrap(), b"picture one");
    assert!(own(&other) == before);
}

#[test]
fn who_has_the_photo_keeps_it() {
    let dir = tempfile::tempdir().unwrap();
    let store = owner(dir.path());
    let before = own(&store);
    take(&store, &give(&store).0);
    assert!(own(&store) == before);
    assert_eq!((store.picture(&photo_id(PHOTOS[1])).unwrap(), files(dir.path())), (PHOTOS[1].to_vec(), 2));
}

/// Cleaned otherwise by another version: one picture stands in for a photo, not two.
#[test]
fn a_second_picture_for_the_same_photo_is_not_kept() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (store, other) = (owner(here.path()), Store::open(there.path()).unwrap());
    take(&other, &give(&store).0);
    let otherwise = |bytes: &[u8]| clean(bytes).map(|(bytes, facts)| ([&bytes, &b" anew"[..]].concat(), facts));
    let (second, _) = store.export_to_give_away(job(), Cursor::new(vec![]), &otherwise, &UnderWay::default()).unwrap();
    take(&other, second.get_ref());
    assert_eq!((other.picture(&photo_id(PHOTOS[0])).unwrap(), files(there.path())), (b"picture one".to_vec(), 2));
}

/// What stands in for a photo may be a photo of its own too: then it stays.
#[test]
fn a_photo_of_its_own_does_not_go_with_what_it_stood_in_for() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (store, other) = (owner(here.path()), Store::open(there.path()).unwrap());
    add(&store, 8, b"picture one");
    take(&other, &give(&store).0);
    take(&other, &own(&store));
    assert_eq!(other.original(&photo_id(b"picture one")).unwrap(), b"picture one");
    assert_eq!(files(there.path()), 3);
    assert!(own(&other) == own(&store));
}

/// The same, where the entry that names it comes with the photo in whose place it stood.
#[test]
fn a_photo_of_its_own_that_comes_with_the_other_stays() {
    let dirs = [(); 3].map(|()| tempfile::tempdir().unwrap());
    let [store, other, third] = dirs.each_ref().map(|dir| Store::open(dir.path()).unwrap());
    add(&store, 1, PHOTOS[0]);
    take(&other, &give(&store).0);
    add(&third, 8, b"picture one");
    take(&third, &own(&store));
    take(&other, &own(&third));
    assert_eq!(other.original(&photo_id(b"picture one")).unwrap(), b"picture one");
    assert!(own(&other) == own(&third));
}

#[test]
fn a_shop_carries_what_stands_in() {
    let (here, there, third) =
        (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (store, other) = (owner(here.path()), Store::open(there.path()).unwrap());
    take(&other, &give(&store).0);
    let asked = wearbook_store::ShopAsked { held: &wearbook_store::Held::default(), settings: &[], now: 1 };
    let (shop, _) = other.export_shop(asked, Cursor::new(vec![]), &UnderWay::default()).unwrap();
    let third = Store::open(third.path()).unwrap();
    let taking = wearbook_store::ShopTaking { now: 1, back: false, settings: &[] };
    third.import_shop(shop, taking, &|_| Ok(FACTS), &UnderWay::default()).unwrap();
    assert_eq!(third.picture(&photo_id(PHOTOS[0])).unwrap(), b"picture one");
}

#[test]
fn a_job_that_is_gone_takes_with_it_what_stood_in() {
    let (here, there) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let (store, other) = (owner(here.path()), Store::open(there.path()).unwrap());
    take(&other, &give(&store).0);
    let photo = photo_id(PHOTOS[0]);
    other.keep_shown(&photo, ShownSize::Thumb, b"small").unwrap();
    other
        .write::<_, StoreError>(|ledger| {
            ledger.note_archived(job(), 1)?;
            ledger.put_away(job(), 1)
        })
        .unwrap();
    other.clear_put_away(u64::MAX / 2).unwrap();
    assert_eq!(files(there.path()), 0);
    assert_eq!(other.picture(&photo).unwrap_err().code(), "no-such-photo");
    assert_eq!(other.shown(&photo, ShownSize::Thumb).unwrap(), None);
}
