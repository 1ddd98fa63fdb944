//! A process that is killed behind the camera, or at any other step of a photo's way: nothing that was taken is lost,
//! and nothing is offered that is in its job.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::collections::BTreeMap;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};

use wearbook_core::engine::Part;
use wearbook_core::job::{Change, DeviceId, Edit, EditId, OnPart, PhotoId, RecordedChange};
use wearbook_store::{
    JobId, NewPhoto, PhotoFacts, PhotoFormat, ShotEnd, ShotOf, ShotState, Store, StoreError, photo_id,
};

/// Names the folder to the child.
const FOLDER: &str = "WEARBOOK_KILL_SHOT_TEST_FOLDER";
/// What the child tells of each photo, in this order: each is one step of the way.
const STEPS: [&str; 6] = ["asked", "half", "whole", "taken", "kept", "cleared"];
/// The child is killed after each step, at once and twice a little later: in the middle of the next one.
const PAUSES_MILLIS: [u64; 3] = [0, 1, 4];

const FACTS: PhotoFacts = PhotoFacts { format: PhotoFormat::Jpeg, width: 1, height: 1 };

fn job() -> JobId {
    JobId::from_bits(7)
}

fn part() -> Part {
    "main-shell.3.lower".parse().unwrap()
}

/// A whole picture of this test ends so.
fn check(bytes: &[u8]) -> Result<PhotoFacts, String> {
    if bytes.ends_with(b"end") { Ok(FACTS) } else { Err("It is not whole.".into()) }
}

/// The picture that the camera makes of the nth photo.
fn picture(nth: usize) -> Vec<u8> {
    format!("{}end", format!("photo {nth} ").repeat(20_000)).into_bytes()
}

/// Not a test of its own: the process that the test below starts and kills.
#[test]
#[ignore = "started by the test below"]
fn child_that_takes_photos_until_it_is_killed() {
    let Some(folder) = std::env::var_os(FOLDER) else { return };
    let store = Store::open(Path::new(&folder)).unwrap();
    store.settle_shots(&check).unwrap();
    store.write::<_, StoreError>(|ledger| ledger.adopt_job(job(), 1)).unwrap();
    // Offered from before: a person takes them in first.
    for shot in store.read::<_, StoreError>(|ledger| ledger.shots()).unwrap() {
        take_in(&store, &shot.id);
    }
    for nth in store.read::<_, StoreError>(|ledger| ledger.edits(job())).unwrap().len().. {
        let shot = store.write(|ledger| ledger.begin_shot(job(), ShotOf::Part(part()), 1)).unwrap().id;
        println!("step asked {nth}");
        let (file, picture) = (store.shot_file(&shot).unwrap(), picture(nth));
        std::fs::write(&file, &picture[..picture.len() / 2]).unwrap();
        println!("step half {nth}");
        std::fs::write(&file, &picture).unwrap();
        println!("step whole {nth}");
        assert_eq!(store.end_shot(&shot, &check).unwrap(), ShotEnd::Taken);
        println!("step taken {nth}");
        take_in(&store, &shot);
        println!("step cleared {nth}");
    }
}

fn take_in(store: &Store, shot: &wearbook_store::ShotId) {
    let original = store.shot_bytes(shot).unwrap();
    store
        .write::<_, StoreError>(|ledger| {
            let new = NewPhoto { original: &original, facts: FACTS, screen: b"screen", thumb: b"thumb" };
            let photo = ledger.add_photo(job(), new, 1)?;
            let id = EditId::next(ledger.edits(job())?.last().map(|edit| edit.id), 1, DeviceId(1));
            let change = Change::OnPart(OnPart::AddPhoto { part: part(), photo, sharpness: None });
            ledger.append(job(), &[Edit { id, change: RecordedChange::Known(change) }])?;
            ledger.forget_shot(shot)
        })
        .unwrap();
    println!("step kept {}", photo_id(&original).as_str());
    store.clear_shot(shot).unwrap();
}

#[test]
fn no_photo_is_lost_and_none_is_offered_twice_wherever_the_process_is_killed() {
    let mut offered = 0;
    for step in STEPS {
        for pause in PAUSES_MILLIS {
            let dir = tempfile::tempdir().unwrap();
            // Twice in the same folder: what the first leaves the second goes on with.
            for _ in 0..2 {
                let told = run_until(dir.path(), step, pause);
                offered += settled_rightly(dir.path(), &told, &format!("killed {pause} ms after “{step}”"));
            }
        }
    }
    assert!(offered > 0, "the process was never killed behind the camera");
}

/// Starts the child and kills it so long after this step of its second photo. Answers the last step of each that it
/// told.
fn run_until(dir: &Path, step: &str, pause_millis: u64) -> BTreeMap<usize, String> {
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "child_that_takes_photos_until_it_is_killed", "--ignored", "--nocapture"])
        .env(FOLDER, dir)
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut told = BTreeMap::new();
    let (mut times, mut current) = (0, None);
    for line in BufReader::new(child.stdout.take().unwrap()).lines().map(Result::unwrap) {
        // The harness may print on the same line before the first.
        let Some((_, told_step)) = line.split_once("step ") else { continue };
        let (name, of) = told_step.split_once(' ').unwrap();
        if name != "kept" {
            current = Some(of.parse().unwrap());
        }
        if let Some(nth) = current {
            told.insert(nth, name.to_owned());
        }
        times += usize::from(name == step);
        if times == 2 {
            break;
        }
    }
    std::thread::sleep(std::time::Duration::from_millis(pause_millis));
    // On Unix this is SIGKILL: the process gets no chance to tidy up.
    child.kill().unwrap();
    child.wait().unwrap();
    told
}

/// Opens what was left as the next start does, and answers how many photos it offers.
#[track_caller]
fn settled_rightly(dir: &Path, told: &BTreeMap<usize, String>, when: &str) -> usize {
    let store = Store::open(dir).unwrap();
    store.settle_shots(&check).unwrap();
    let shots = store.read::<_, StoreError>(|ledger| ledger.shots()).unwrap();
    assert!(shots.iter().all(|shot| shot.state == ShotState::Taken), "{when}: a camera is still thought to be open");
    let offers: Vec<PhotoId> = shots.iter().map(|shot| photo_id(&store.shot_bytes(&shot.id).unwrap())).collect();
    let kept: Vec<PhotoId> = store
        .read::<_, StoreError>(|ledger| ledger.edits(job()))
        .unwrap()
        .iter()
        .filter_map(|edit| match &edit.change {
            RecordedChange::Known(change) => change.photo().cloned(),
            RecordedChange::Unknown(_) => None,
        })
        .collect();
    for (nth, step) in told {
        let photo = photo_id(&picture(*nth));
        let there = kept.iter().chain(&offers).filter(|one| **one == photo).count();
        assert!(there <= 1, "{when}: photo {nth} is there {there} times");
        let must_be_there = !matches!(step.as_str(), "asked" | "half");
        assert!(there == 1 || !must_be_there, "{when}: photo {nth} was lost after “{step}”");
    }
    for photo in &kept {
        store.original(photo).unwrap();
    }
    let files = std::fs::read_dir(dir.join("files/shots")).unwrap().count();
    assert_eq!(files, shots.len(), "{when}: files that no shot knows are left");
    offers.len()
}
