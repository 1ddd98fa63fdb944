//! A process that is killed while it takes in an archive: the next start takes away what it has left, and nothing else.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::fs::{self, File};
use std::io::{BufRead, BufReader, Cursor};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Duration;

use wearbook_core::under_way::UnderWay;
use wearbook_store::{JobId, NewPhoto, PhotoFacts, PhotoFormat, Store, StoreError, photo_id};

/// Names the folder of the shop to the child, which finds the archive beside it.
const FOLDER: &str = "WEARBOOK_KILL_IMPORT_TEST_FOLDER";
const FACTS: PhotoFacts = PhotoFacts { format: PhotoFormat::Jpeg, width: 1, height: 1 };
const PHOTOS: usize = 40;

fn picture(n: usize) -> Vec<u8> {
    format!("picture {n} ").repeat(2_000).into_bytes()
}

/// Not a test of its own: the process that the test below starts and kills.
#[test]
#[ignore = "started by the test below"]
fn child_that_takes_in_until_it_is_killed() {
    let Some(folder) = std::env::var_os(FOLDER).map(PathBuf::from) else { return };
    let store = Store::open(&folder.join("shop")).unwrap();
    let check = |_: &[u8]| {
        println!("looked at one");
        Ok(FACTS)
    };
    store.import(File::open(folder.join("archive")).unwrap(), 1, &check, &UnderWay::default()).unwrap();
    println!("done it");
    std::thread::sleep(Duration::from_secs(10));
}

/// All files of photos, and whether an import has noted that it is about to keep some.
fn files(shop: &Path) -> (Vec<String>, bool) {
    let (mut files, mut is_noted) = (vec![], false);
    for folder in fs::read_dir(shop.join("photos")).unwrap().map(|entry| entry.unwrap().path()) {
        is_noted |= folder.join("names").exists();
        let names = fs::read_dir(&folder).unwrap().map(|file| file.unwrap().file_name().into_string().unwrap());
        files.extend(names.filter(|name| name.len() == 64));
    }
    (files, is_noted)
}

#[test]
fn what_a_killed_import_has_left_goes_at_the_next_start() {
    let dir = tempfile::tempdir().unwrap();
    let elsewhere = Store::open(&dir.path().join("elsewhere")).unwrap();
    let add = |store: &Store, job: JobId, n: usize| {
        let original = picture(n);
        let new = NewPhoto { original: &original, facts: FACTS, screen: b"s", thumb: b"t" };
        store.write::<_, StoreError>(|ledger| {
            ledger.adopt_job(job, 1)?;
            ledger.add_photo(job, new, 1)
        })
    };
    let job = JobId::from_bits(7);
    for n in 0..PHOTOS {
        add(&elsewhere, job, n).unwrap();
    }
    let archive = elsewhere.export(job, Cursor::new(Vec::new()), &UnderWay::default()).unwrap().into_inner();
    fs::write(dir.path().join("archive"), &archive).unwrap();

    let (mut killed_half_way, mut killed_in_the_write) = (0, 0);
    for (looked, pause) in [(1, 0), (20, 0), (40, 0), (40, 2), (40, 4), (40, 7), (40, 11), (40, 16), (40, 22)] {
        let shop = dir.path().join("shop");
        let _ = fs::remove_dir_all(&shop);
        {
            // One photo is another job's too; one lies there without a row, by whatever way, and was not the import's.
            let store = Store::open(&shop).unwrap();
            add(&store, JobId::from_bits(8), 0).unwrap();
            let stray = photo_id(b"stray");
            let folder = shop.join("photos").join(stray.as_str().chars().take(2).collect::<String>());
            fs::create_dir_all(&folder).unwrap();
            fs::write(folder.join(stray.as_str()), b"stray").unwrap();
        }
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "child_that_takes_in_until_it_is_killed", "--ignored", "--nocapture"])
            .env(FOLDER, dir.path())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let lines = BufReader::new(child.stdout.take().unwrap()).lines().map(Result::unwrap);
        // One of the photos is here already, and is not looked at.
        for _ in lines.filter(|line| line.contains("looked at one")).take(looked.min(PHOTOS - 1)) {}
        std::thread::sleep(Duration::from_millis(pause));
        child.kill().unwrap();
        child.wait().unwrap();

        let (left, is_noted) = files(&shop);
        killed_half_way += usize::from(left.len() > 2);
        killed_in_the_write += usize::from(is_noted);
        let store = Store::open(&shop).unwrap();
        let named = |name: &String| {
            let id = name.clone().try_into().unwrap();
            store.read::<_, StoreError>(|ledger| ledger.photo(&id)).unwrap().is_some()
        };
        let (kept, _) = files(&shop);
        let unnamed: Vec<&String> = kept.iter().filter(|name| !named(name)).collect();
        assert_eq!(unnamed, [photo_id(b"stray").as_str()], "killed {pause} ms after {looked} photos");
        store.original(&photo_id(&picture(0))).unwrap();
        let is_in = store.read::<_, StoreError>(|ledger| ledger.jobs()).unwrap().iter().any(|row| row.id == job);
        assert_eq!(kept.len(), if is_in { PHOTOS + 1 } else { 2 }, "killed {pause} ms after {looked} photos");
        let folders = fs::read_dir(shop.join("photos")).unwrap().map(|entry| entry.unwrap().file_name());
        assert!(folders.into_iter().all(|name| name.len() == 2), "a folder of what was being taken in is left");
        store.import(Cursor::new(&archive), 1, &|_| Ok(FACTS), &UnderWay::default()).unwrap();
        assert_eq!(files(&shop).0.len(), PHOTOS + 1);
    }
    assert!(killed_half_way > 2 && killed_in_the_write > 0, "{killed_half_way}, {killed_in_the_write} in the write");
}
