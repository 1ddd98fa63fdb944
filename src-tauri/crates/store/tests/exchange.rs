//! Three devices that send each other archives of every kind, in any order: in the end all hold the same.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::io::Cursor;

use proptest::prelude::*;
use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, OnPart, RecordedChange, TextField};
use wearbook_core::under_way::UnderWay;
use wearbook_store::{
    Held, JobId, NewPhoto, PhotoFacts, PhotoFormat, ShopAsked, ShopTaking, Store, StoreError, photo_id, verify,
};

const FACTS: PhotoFacts = PhotoFacts { format: PhotoFormat::Jpeg, width: 4, height: 3 };
const DEVICES: usize = 3;
const JOBS: u128 = 2;

/// What happens, on which device.
#[derive(Debug, Clone)]
enum Step {
    Fill(usize, u128),
    /// A photo of few: two devices may take in the same.
    Photo(usize, u128, u8),
    Send(usize, usize, u128, How),
}

#[derive(Debug, Clone, Copy)]
enum How {
    Own,
    GivenAway,
    Shop,
}

fn any_step() -> impl Strategy<Value = Step> {
    let (device, job) = (0..DEVICES, 0..JOBS);
    prop_oneof![
        2 => (device.clone(), job.clone()).prop_map(|(device, job)| Step::Fill(device, job)),
        3 => (device.clone(), job.clone(), 0u8..5).prop_map(|(device, job, n)| Step::Photo(device, job, n)),
        5 => (device.clone(), device, job, prop_oneof![Just(How::Own), Just(How::GivenAway), Just(How::Shop)])
            .prop_map(|(from, to, job, how)| Step::Send(from, to, job, how)),
    ]
}

/// Stands in for the photo crate. One of the cleaned pictures is a photo of its own on another device.
fn clean(bytes: &[u8]) -> Result<(Vec<u8>, PhotoFacts), String> {
    Ok(if bytes == b"picture 1" { (b"picture 0".to_vec(), FACTS) } else { ([b"clean ", bytes].concat(), FACTS) })
}

fn enter(store: &Store, device: usize, job: u128, n: u64, change: Change) {
    let job = JobId::from_bits(job);
    store
        .write::<_, StoreError>(|ledger| {
            ledger.adopt_job(job, 1)?;
            let id = EditId::next(None, n, DeviceId(device as u64));
            ledger.append(job, &[Edit { id, change: RecordedChange::Known(change) }])
        })
        .unwrap();
}

fn do_step(stores: &[Store], n: u64, step: &Step) {
    match step {
        Step::Fill(device, job) => {
            let fill = OnIntake::Fill { field: TextField::Remarks, text: n.to_string() };
            enter(&stores[*device], *device, *job, n, Change::OnIntake(fill));
        }
        Step::Photo(device, job, picture) => {
            let original = format!("picture {picture}").into_bytes();
            let new = NewPhoto { original: &original, facts: FACTS, screen: b"s", thumb: b"t" };
            stores[*device]
                .write::<_, StoreError>(|ledger| {
                    ledger.adopt_job(JobId::from_bits(*job), 1)?;
                    ledger.add_photo(JobId::from_bits(*job), new, 1)
                })
                .unwrap();
            let part = "piston.1".parse().unwrap();
            let add = OnPart::AddPhoto { part, photo: photo_id(&original), sharpness: None };
            enter(&stores[*device], *device, *job, n, Change::OnPart(add));
        }
        Step::Send(from, to, job, how) => send(&stores[*from], &stores[*to], JobId::from_bits(*job), *how),
    }
}

fn send(from: &Store, to: &Store, job: JobId, how: How) {
    let (way, file) = (UnderWay::default(), Cursor::new(vec![]));
    let check = |_: &[u8]| Ok(FACTS);
    let has_job = from.read::<_, StoreError>(|ledger| ledger.edits(job)).is_ok();
    let file = match how {
        How::Shop => {
            let asked = ShopAsked { held: &Held::default(), settings: &[], now: 1 };
            let (file, _) = from.export_shop(asked, file, &way).unwrap();
            let taking = ShopTaking { now: 1, back: false, settings: &[] };
            to.import_shop(Cursor::new(file.get_ref()), taking, &check, &way).unwrap();
            file
        }
        _ if !has_job => return,
        How::Own => {
            let file = from.export(job, file, &way).unwrap();
            to.import(Cursor::new(file.get_ref()), 1, &check, &way).unwrap();
            file
        }
        How::GivenAway => {
            let (file, _) = from.export_to_give_away(job, file, &clean, &way).unwrap();
            to.import(Cursor::new(file.get_ref()), 1, &check, &way).unwrap();
            file
        }
    };
    verify(file, &way).unwrap();
}

fn contents(store: &Store) -> Vec<Vec<u8>> {
    let jobs = store.read::<_, StoreError>(|ledger| ledger.jobs()).unwrap();
    let mut names: Vec<JobId> = jobs.into_iter().map(|row| row.id).collect();
    names.sort();
    let export = |job| store.export(job, Cursor::new(vec![]), &UnderWay::default()).unwrap().into_inner();
    names.into_iter().map(export).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn three_devices_end_with_the_same(steps in prop::collection::vec(any_step(), 1..16)) {
        let dirs: Vec<_> = (0..DEVICES).map(|_| tempfile::tempdir().unwrap()).collect();
        let stores: Vec<Store> = dirs.iter().map(|dir| Store::open(dir.path()).unwrap()).collect();
        for (n, step) in (1..).zip(&steps) {
            do_step(&stores, n, step);
        }
        // In a ring, twice: what each has comes to all.
        for at in (0..DEVICES).chain(0..DEVICES) {
            for job in 0..JOBS {
                send(&stores[at], &stores[(at + 1) % DEVICES], JobId::from_bits(job), How::Own);
            }
        }
        let first = contents(&stores[0]);
        for store in &stores[1..] {
            prop_assert!(contents(store) == first);
        }
        // Every photo that was taken is there itself, and no file is left that no row names.
        for (dir, store) in dirs.iter().zip(&stores) {
            for step in &steps {
                if let Step::Photo(_, _, n) = step {
                    store.original(&photo_id(format!("picture {n}").as_bytes())).unwrap();
                }
            }
            for folder in std::fs::read_dir(dir.path().join("photos")).unwrap() {
                for file in std::fs::read_dir(folder.unwrap().path()).unwrap() {
                    let name = file.unwrap().file_name().into_string().unwrap().try_into().unwrap();
                    prop_assert!(store.read::<_, StoreError>(|ledger| ledger.photo(&name)).unwrap().is_some());
                }
            }
        }
    }
}
