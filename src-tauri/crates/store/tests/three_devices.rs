//! Devices that exchange archives in any order, some of them begun as copies of another's folder: all end with the same
//! edits, and none is lost.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::collections::BTreeSet;
use std::io::Cursor;
use std::path::Path;

use proptest::prelude::*;
use tempfile::TempDir;
use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, RecordedChange, TextField};
use wearbook_core::under_way::UnderWay;
use wearbook_store::{JobId, Store, StoreError, gave_way};

fn job() -> JobId {
    JobId::from_bits(7)
}

fn edits(store: &Store) -> Vec<Edit> {
    store.read::<_, StoreError>(|ledger| ledger.edits(job())).unwrap()
}

fn device(store: &Store) -> DeviceId {
    store.read::<_, StoreError>(|ledger| ledger.device()).unwrap()
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap() {
        let (path, name) = entry.map(|entry| (entry.path(), entry.file_name())).unwrap();
        if path.is_dir() {
            copy(&path, &to.join(name));
        } else {
            std::fs::copy(&path, to.join(name)).unwrap();
        }
    }
}

/// A device: its folder, and the shop that is open in it.
struct Device {
    dir: TempDir,
    store: Option<Store>,
}

impl Device {
    fn begin() -> Self {
        let dir = tempfile::tempdir().unwrap();
        let store = Store::open(dir.path()).unwrap();
        store.write::<_, StoreError>(|ledger| ledger.adopt_job(job(), 1)).unwrap();
        Self { dir, store: Some(store) }
    }

    fn store(&self) -> &Store {
        self.store.as_ref().unwrap()
    }

    /// A copy of the folder as it is on this device now, open on another.
    fn copied(&mut self) -> Self {
        self.store = None;
        let dir = tempfile::tempdir().unwrap();
        copy(self.dir.path(), dir.path());
        self.store = Some(Store::open(self.dir.path()).unwrap());
        let store = Some(Store::open(dir.path()).unwrap());
        Self { dir, store }
    }

    /// As a person enters it: after all that is there, or, should the clock of this device be behind, at the next
    /// count.
    fn enter(&self, now: u64, text: &str, by: DeviceId) {
        let change = Change::OnIntake(OnIntake::Fill { field: TextField::Remarks, text: text.into() });
        let latest = edits(self.store()).last().map(|edit| edit.id);
        let edit = Edit { id: EditId::next(latest, 1_000 + now, by), change: RecordedChange::Known(change) };
        self.store().write::<_, StoreError>(|ledger| ledger.append(job(), &[edit])).unwrap();
    }

    fn send(&self, to: &Self) {
        let way = UnderWay::default();
        let archive = self.store().export(job(), Cursor::new(Vec::new()), &way).unwrap().into_inner();
        to.store().import(Cursor::new(&archive), 5, &|_| Err("There are no pictures here.".into()), &way).unwrap();
    }
}

#[test]
fn a_copy_of_a_folder_has_a_name_of_its_own_from_then_on() {
    let mut first = Device::begin();
    let name = device(first.store());
    first.enter(5, "before", name);
    let mut second = first.copied();
    assert_eq!((device(first.store()), first.store().is_copy()), (name, false), "the first is no copy");
    let other = device(second.store());
    assert!(other != name && second.store().is_copy());
    assert_eq!(edits(second.store()), edits(first.store()));

    // Opened again, moved, or recovered, it keeps that name.
    second.store = None;
    let moved = tempfile::tempdir().unwrap();
    let there = moved.path().join("shop");
    std::fs::rename(second.dir.path(), &there).unwrap();
    let store = Store::open(&there).unwrap();
    assert_eq!((device(&store), store.is_copy()), (other, false));
    store.note_damage().unwrap();
    drop(store);
    let store = Store::open(&there).unwrap();
    assert_eq!((store.recovered().unwrap().is_some(), device(&store), store.is_copy()), (true, other, false));
}

#[derive(Debug, Clone)]
enum Step {
    /// On which device, when by its clock, what, and whether with the name that all copies once had: a copy that went
    /// unnoticed.
    Enter(usize, u64, u8, bool),
    Send(usize, usize),
    /// A device is lost, and begun again as a copy of another.
    Copy(usize, usize),
}

fn any_step() -> impl Strategy<Value = Step> {
    prop_oneof![
        4 => (0..3_usize, 0..6_u64, 0..4_u8, any::<bool>()).prop_map(|(on, at, what, old)| Step::Enter(on, at, what, old)),
        2 => (0..3_usize, 0..3_usize).prop_map(|(from, to)| Step::Send(from, to)),
        1 => (0..3_usize, 0..3_usize).prop_map(|(from, to)| Step::Copy(from, to)),
    ]
}

fn run(steps: &[Step]) -> Result<usize, TestCaseError> {
    let mut devices = [Device::begin(), Device::begin(), Device::begin()];
    let told = |device: &Device| -> BTreeSet<String> {
        edits(device.store()).iter().map(|edit| serde_json::to_string(&edit.change).unwrap()).collect()
    };
    for step in steps {
        match *step {
            Step::Enter(on, at, what, is_unnoticed) => {
                let by = if is_unnoticed { DeviceId(1 << 63) } else { device(devices[on].store()) };
                devices[on].enter(at, &format!("entry {what}"), by);
            }
            Step::Send(from, to) if from != to => devices[from].send(&devices[to]),
            Step::Copy(from, to) if from != to => devices[to] = devices[from].copied(),
            Step::Send(..) | Step::Copy(..) => {}
        }
    }
    // What anybody has; of a device that is lost, what others have of it.
    let entered: BTreeSet<String> = devices.iter().flat_map(told).collect();
    // Each has heard of all that the others have.
    for (from, to) in [(0, 1), (1, 2), (2, 0), (0, 1)] {
        devices[from].send(&devices[to]);
    }
    let all = edits(devices[0].store());
    prop_assert_eq!(&all, &edits(devices[1].store()));
    prop_assert_eq!(&all, &edits(devices[2].store()));
    prop_assert_eq!(told(&devices[0]), entered);
    Ok(gave_way(&all).len())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(if std::env::var_os("WEARBOOK_LONG").is_some() { 1_000 } else { 24 }))]

    #[test]
    fn all_end_with_the_same_edits(steps in prop::collection::vec(any_step(), 1..30)) {
        run(&steps)?;
    }
}

/// So that the test above is about something.
#[test]
fn two_copies_that_went_unnoticed_come_to_one_id() {
    let both = [
        Step::Enter(0, 5, 0, true),
        Step::Copy(0, 1),
        Step::Copy(0, 2),
        Step::Enter(0, 1, 3, true),
        Step::Enter(1, 1, 2, true),
        Step::Enter(2, 1, 1, true),
        Step::Send(2, 0),
    ];
    assert_eq!(run(&both).unwrap(), 2);
}
