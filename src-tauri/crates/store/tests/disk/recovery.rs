//! The power goes off at any step of the recovery of a damaged database: the next start recovers as much.

use std::path::Path;

use crate::tape::{Child, Disk, Lost, is_there, quick_folder};
use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnIntake, RecordedChange, TextField};
use wearbook_store::{JobId, Store, StoreError};

const PAGE: usize = 4096;

fn job() -> JobId {
    JobId::from_bits(7)
}

/// A shop that is closed, with a page lost.
fn damaged(folder: &Path) -> Vec<u8> {
    let store = Store::open(folder).unwrap();
    store
        .write::<_, StoreError>(|ledger| {
            let fill = |n: u64| {
                let text = format!("{n} {}", "x".repeat(if n == 30 { 9_000 } else { 150 }));
                let change = Change::OnIntake(OnIntake::Fill { field: TextField::Remarks, text });
                Edit { id: EditId::next(None, n, DeviceId(1)), change: RecordedChange::Known(change) }
            };
            ledger.adopt_job(job(), 1)?;
            ledger.append(job(), &(1..50).map(fill).collect::<Vec<_>>())
        })
        .unwrap();
    drop(store);
    let path = folder.join("wearbook.db");
    let mut bytes = std::fs::read(&path).unwrap();
    bytes[..PAGE].fill(0);
    std::fs::write(&path, &bytes).unwrap();
    bytes
}

/// Not a test of its own: recovers.
#[test]
#[ignore = "started by the test below"]
fn child_that_recovers() {
    let Some(folder) = Child::folder() else { return };
    drop(Store::open(&folder).unwrap());
}

#[test]
fn a_recovery_may_be_cut_off_at_any_step() {
    if !is_there() {
        return;
    }
    let folder = quick_folder();
    let bytes = damaged(folder.path());
    let mut disk = Disk::of(folder.path());
    let tape = Child { test: "recovery::child_that_recovers", folder: folder.path(), told: &[] }.watch();
    let edits = |folder: &Path, when: &str| {
        let store = Store::open(folder).unwrap_or_else(|error| panic!("{when}: {error}"));
        let recovered =
            store.recovered().unwrap().unwrap_or_else(|| panic!("{when}: that it was recovered is not told"));
        assert_eq!(recovered.jobs[&job()], 49, "{when}");
        assert!(std::fs::read(folder.join(recovered.aside).join("wearbook.db")).unwrap() == bytes, "{when}: the copy");
        let left = |name: &str| {
            name.starts_with(".incoming")
                || matches!(name, "damaged.making" | "wearbook.recovered" | "wearbook.damaged")
        };
        for entry in std::fs::read_dir(folder).unwrap() {
            let name = entry.unwrap().file_name().into_string().unwrap();
            assert!(!left(&name), "{when}: {name} is left");
        }
        store.read::<_, StoreError>(|ledger| ledger.edits(job())).unwrap()
    };
    let expected = edits(folder.path(), "not cut off");
    assert_eq!(expected.len(), 49);
    let mut images = 0;
    for (nth, step) in tape.iter().enumerate() {
        disk.step(step);
        let several = [Lost::None, Lost::All, Lost::Half(nth as u64), Lost::Torn];
        for lost in if disk.is_settled() { &several[..1] } else { &several } {
            let image = quick_folder();
            disk.lay_out(*lost, image.path());
            let step: String = format!("{step:?}").chars().take(100).collect();
            assert!(edits(image.path(), &format!("{lost:?} lost after {nth}, {step}")) == expected);
            images += 1;
        }
    }
    println!("{images} images of {} steps", tape.len());
    assert!(images > 100, "hardly anything was tried: {images}");
}
