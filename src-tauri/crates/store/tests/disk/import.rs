//! The power goes off at any step of taking in an archive, and of taking out a job that was put away: a job is there
//! with all its photos or not at all, and no photo of another goes.

use std::fs::File;
use std::io::{Cursor, Write};
use std::path::Path;

use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, RecordedChange, TextField};
use wearbook_core::under_way::UnderWay;
use wearbook_store::{JobId, NewPhoto, PhotoFacts, PhotoFormat, Store, StoreError, photo_id};

use crate::tape::{Child, Disk, Lost, Step, is_there, quick_folder};

const FACTS: PhotoFacts = PhotoFacts { format: PhotoFormat::Jpeg, width: 1, height: 1 };
const PHOTOS: usize = 4;
const EDITS: u64 = 12;
const MONTH: u64 = 30 * 24 * 60 * 60 * 1000;

/// The job that is taken in, and one that is here and has one of its pictures too.
fn jobs() -> [JobId; 2] {
    [JobId::from_bits(7), JobId::from_bits(8)]
}

fn picture(nth: usize) -> Vec<u8> {
    format!("picture {nth} ").repeat(150).into_bytes()
}

fn add(store: &Store, job: JobId, pictures: std::ops::Range<usize>) {
    store
        .write::<_, StoreError>(|ledger| {
            ledger.adopt_job(job, 1)?;
            for nth in pictures {
                let original = picture(nth);
                ledger.add_photo(job, NewPhoto { original: &original, facts: FACTS, screen: b"s", thumb: b"t" }, 1)?;
            }
            let fill = |nth: u64| {
                let change = OnIntake::Fill { field: TextField::Remarks, text: format!("entry {nth}") };
                let id = EditId::next(None, nth, DeviceId(1));
                Edit { id, change: RecordedChange::Known(Change::OnIntake(change)) }
            };
            ledger.append(job, &(1..=EDITS).map(fill).collect::<Vec<_>>())
        })
        .unwrap();
}

/// Lays out the shop, and the archive beside it.
fn lay_out(folder: &Path) {
    let [job, other] = jobs();
    let elsewhere = quick_folder();
    let store = Store::open(elsewhere.path()).unwrap();
    add(&store, job, 0..PHOTOS);
    let archive = store.export(job, Cursor::new(Vec::new()), &UnderWay::default()).unwrap().into_inner();
    std::fs::write(folder.join("archive"), archive).unwrap();
    add(&Store::open(&folder.join("shop")).unwrap(), other, 0..1);
}

fn say(what: &str) {
    println!("{what}");
    std::io::stdout().flush().unwrap();
}

/// Not a test of its own: takes the job in, puts it away and takes it out.
#[test]
#[ignore = "started by the test below"]
fn child_that_takes_in_and_out() {
    let Some(folder) = Child::folder() else { return };
    let [job, _] = jobs();
    let store = Store::open(&folder.join("shop")).unwrap();
    store.import(File::open(folder.join("archive")).unwrap(), 1, &|_| Ok(FACTS), &UnderWay::default()).unwrap();
    say("taken in");
    store
        .write::<_, StoreError>(|ledger| {
            ledger.note_archived(job, 1)?;
            say("about to go");
            ledger.put_away(job, 1)
        })
        .unwrap();
    store.clear_put_away(1 + MONTH).unwrap();
}

/// Whether the job is there, with all that belongs to it.
fn is_whole(store: &Store, job: JobId, photos: usize, when: &str) -> bool {
    let edits = match store.read::<_, StoreError>(|ledger| ledger.edits(job)) {
        Err(StoreError::NoSuchJob) => return false,
        edits => edits.unwrap(),
    };
    assert_eq!(edits.len() as u64, EDITS, "{when}");
    assert_eq!(store.read::<_, StoreError>(|ledger| ledger.photos_of(job)).unwrap().len(), photos, "{when}");
    for nth in 0..photos {
        let original =
            store.original(&photo_id(&picture(nth))).unwrap_or_else(|error| panic!("{when}: photo {nth}: {error}"));
        assert_eq!(original, picture(nth), "{when}");
    }
    true
}

/// How many photos lie there, and whether anything lies beside them.
fn kept(shop: &Path) -> (usize, bool) {
    let folders = std::fs::read_dir(shop.join("photos")).unwrap().map(|entry| entry.unwrap());
    let names: Vec<_> = folders.map(|folder| (folder.file_name().len(), folder.path())).collect();
    let photos =
        names.iter().filter(|(length, _)| *length == 2).map(|(_, path)| std::fs::read_dir(path).unwrap().count());
    (photos.sum(), names.iter().any(|(length, _)| *length != 2))
}

#[test]
fn a_job_comes_and_goes_whole_wherever_the_power_goes_off() {
    if !is_there() {
        return;
    }
    let [job, other] = jobs();
    let folder = quick_folder();
    lay_out(folder.path());
    let mut disk = Disk::of(folder.path());
    let tape = Child { test: "import::child_that_takes_in_and_out", folder: folder.path(), told: &[] }.watch();
    let (mut images, mut whole, mut promised) = (0, 0, None);
    for (nth, step) in tape.iter().enumerate() {
        disk.step(step);
        if let Step::Said(what) = step {
            promised = match what.as_str() {
                what if what.ends_with("taken in") => Some(true),
                what if what.ends_with("about to go") => None,
                _ => promised,
            };
        }
        let several = [Lost::None, Lost::All, Lost::Half(nth as u64), Lost::Torn];
        for lost in if disk.is_settled() { &several[..1] } else { &several } {
            let image = quick_folder();
            disk.lay_out(*lost, image.path());
            let step: String = format!("{step:?}").chars().take(100).collect();
            let when = format!("{lost:?} lost after {nth}, {step}");
            let shop = image.path().join("shop");
            let store = Store::open(&shop).unwrap_or_else(|error| panic!("{when}: {error}"));
            assert!(store.recovered().unwrap().is_none(), "{when}: it was damaged");
            assert!(is_whole(&store, other, 1, &when), "{when}: the other job is gone");
            let is_in = is_whole(&store, job, PHOTOS, &when);
            assert!(promised.is_none_or(|promised| promised == is_in), "{when}");
            let (photos, is_left) = kept(&shop);
            assert!(!is_left, "{when}: what was being taken in is left");
            // What was put away may leave a photo that nobody names, which is waste and no loss.
            let has_come = whole > 0 && !is_in;
            assert!(is_in || has_come || photos == 1, "{when}: {photos} photos of a job that is not there");
            (images, whole) = (images + 1, whole + usize::from(is_in));
        }
    }
    println!("{images} images of {} steps, {whole} with the job", tape.len());
    assert!(images > 200 && whole > 20 && whole < images, "hardly anything was tried: {images}, {whole}");
}
