//! A second program on the same shop is refused, and takes nothing away that the first is still writing; once the first
//! is gone, however it ended, the shop opens at once.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};

use wearbook_store::Store;

/// Names the folder to the child.
const FOLDER: &str = "WEARBOOK_ONE_PROGRAM_TEST_FOLDER";

/// Not a test of its own: the first program.
#[test]
#[ignore = "started by the tests below"]
fn child_that_has_the_shop_open() {
    let Some(folder) = std::env::var_os(FOLDER) else { return };
    let _store = Store::open(Path::new(&folder)).unwrap();
    println!("it is open");
    // Until it is killed, or whoever started it is gone.
    let _ = std::io::stdin().read_line(&mut String::new());
}

/// Starts the first program and waits until it has the shop open.
fn first(dir: &Path) -> Child {
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "child_that_has_the_shop_open", "--ignored", "--nocapture"])
        .env(FOLDER, dir)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(child.stdout.as_mut().unwrap()).lines();
    assert!(lines.any(|line| line.unwrap().contains("it is open")), "the first program did not open the shop");
    child
}

#[test]
fn a_second_program_is_refused_until_the_first_is_gone() {
    let dir = tempfile::tempdir().unwrap();
    drop(Store::open(dir.path()).unwrap());
    let half = dir.path().join("photos/3f/.incoming-half");
    std::fs::create_dir_all(half.parent().unwrap()).unwrap();
    for _ in 0..3 {
        let mut child = first(dir.path());
        // The first is in the middle of a photo.
        std::fs::write(&half, b"half").unwrap();
        let refused = Store::open(dir.path()).unwrap_err();
        assert_eq!(refused.code(), "shop-open");
        assert!(refused.to_string().starts_with("Wearbook is open on this shop already"), "{refused}");
        assert!(half.exists(), "a photo in progress was swept");
        // On Unix this is SIGKILL: the process gets no chance to tidy up.
        child.kill().unwrap();
        child.wait().unwrap();
        drop(Store::open(dir.path()).unwrap());
        assert!(!half.exists(), "what a killed program left was not swept");
    }
}

/// A program closes the shop before the next one opens it, within one process too.
#[test]
fn a_shop_that_was_closed_opens_again() {
    let dir = tempfile::tempdir().unwrap();
    let first = Store::open(dir.path()).unwrap();
    assert_eq!(Store::open(dir.path()).unwrap_err().code(), "shop-open");
    drop(first);
    drop(Store::open(dir.path()).unwrap());
    let left: Vec<_> = std::fs::read_dir(dir.path()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    assert!(!left.contains(&"wearbook.db-wal".into()), "it was not closed: {left:?}");
}
