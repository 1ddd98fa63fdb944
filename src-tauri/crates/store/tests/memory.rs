//! How much memory an archive takes, whatever it holds: each is taken in by a process of its own that says its peak.

#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::fs::File;
use std::io::Write;
use std::path::Path;
use std::process::Command;

use wearbook_core::under_way::UnderWay;
use wearbook_store::{
    ArchiveOf, Held, PhotoFacts, PhotoFormat, ShopAsked, ShopTaking, Store, archive_of, photo_id, verify,
};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

/// Names the archive to the child.
const ARCHIVE: &str = "WEARBOOK_MEMORY_TEST_ARCHIVE";
/// What an archive of entries may take; of the form before this one some took 130.
const MOST_MB: u64 = 64;
/// What the archive of a shop may take.
const MOST_OF_SHOP_MB: u64 = 128;
/// What an archive of 400 MB of photos may take; read whole it took more than all of it.
const MOST_OF_PHOTOS_MB: u64 = 64;

/// Not a test of its own: the process that the tests below start.
#[test]
#[ignore = "started by the tests below"]
fn child_that_takes_an_archive_in() {
    let Some(archive) = std::env::var_os(ARCHIVE) else { return };
    let dir = tempfile::tempdir().unwrap();
    let store = Store::open(dir.path()).unwrap();
    match archive_of(File::open(&archive).unwrap()) {
        Err(refused) => println!("told: {refused}"),
        Ok(ArchiveOf::Shop { .. }) => take_in_a_shop(&store, Path::new(&archive), dir.path()),
        Ok(ArchiveOf::Job) => take_in_a_job(&store, Path::new(&archive), dir.path()),
    }
    let status = std::fs::read_to_string("/proc/self/status").unwrap();
    let peak = status.lines().find(|line| line.starts_with("VmHWM")).unwrap();
    println!("peak: {}", peak.split_whitespace().nth(1).unwrap());
}

fn check(_: &[u8]) -> Result<PhotoFacts, String> {
    Ok(PhotoFacts { format: PhotoFormat::Jpeg, width: 1, height: 1 })
}

fn take_in_a_job(store: &Store, archive: &Path, dir: &Path) {
    let way = UnderWay::default();
    match store.import(File::open(archive).unwrap(), 1, &check, &way) {
        Err(refused) => println!("told: {refused}"),
        Ok(imported) => {
            let out = store.export(imported.job, File::create(dir.join("out")).unwrap(), &way).unwrap();
            println!("told: {:?}, {} MB out again", imported.refused, out.metadata().unwrap().len() / 1_000_000);
        }
    }
}

fn take_in_a_shop(store: &Store, archive: &Path, dir: &Path) {
    let (way, taking) = (UnderWay::default(), ShopTaking { now: 1, back: false, settings: &[] });
    match store.import_shop(File::open(archive).unwrap(), taking, &check, &way) {
        Err(refused) => println!("told: {refused}"),
        Ok(taken) => {
            let asked = ShopAsked { held: &Held::default(), settings: &[], now: 1 };
            let (out, written) = store.export_shop(asked, File::create(dir.join("out")).unwrap(), &way).unwrap();
            verify(File::open(dir.join("out")).unwrap(), &way).unwrap();
            let megabytes = out.metadata().unwrap().len() / 1_000_000;
            println!("told: {} in, {} out, {megabytes} MB", taken.jobs.len(), written.jobs.len());
        }
    }
}

#[track_caller]
fn takes(archive: &Path, most_mb: u64, told: &str) {
    let child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "child_that_takes_an_archive_in", "--ignored", "--nocapture"])
        .env(ARCHIVE, archive)
        .output()
        .unwrap();
    let out = String::from_utf8_lossy(&child.stdout);
    let line = |name: &str| out.lines().find_map(|line| line.split_once(name)).unwrap_or_else(|| panic!("{out}")).1;
    let peak: u64 = line("peak: ").parse().unwrap();
    assert!(line("told: ").contains(told), "{out}");
    assert!(peak / 1024 <= most_mb, "it took {} MB: {out}", peak / 1024);
}

const JOB: &str = "00000000000000000000000000000007";

fn entry(n: usize, change: &str) -> String {
    format!(r#"{{"id": "{n:012x}-0000-0000000000000001", "change": {change}}}"#)
}

/// The job as text and `photos` photos of 4 MB.
fn archive(dir: &Path, edits: &str, photos: u32) -> std::path::PathBuf {
    let path = dir.join("test.wearbook");
    let mut zip = ZipWriter::new(File::create(&path).unwrap());
    let options = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
    zip.start_file("job.json", options).unwrap();
    write!(zip, r#"{{"format": "wearbook-job", "version": 1, "job": "{JOB}", "edits": [{edits}]}}"#).unwrap();
    for n in 0..photos {
        let mut photo = n.to_le_bytes().to_vec();
        photo.resize(4 << 20, 0);
        zip.start_file(format!("photos/{}.jpg", photo_id(&photo).as_str()), options).unwrap();
        zip.write_all(&photo).unwrap();
    }
    zip.finish().unwrap();
    path
}

#[track_caller]
fn entries_take_little(edits: &str, told: &str) {
    let dir = tempfile::tempdir().unwrap();
    takes(&archive(dir.path(), edits, 0), MOST_MB, told);
}

#[test]
fn one_entry_of_millions_of_maps_or_numbers_is_refused() {
    let of = |value: &str, count| entry(1, &format!(r#"{{"do": "x", "v": [{}0]}}"#, value.repeat(count)));
    entries_take_little(&of(r#"{"a":0},"#, 8_000_000), "An entry in this file has more than 8 MB");
    entries_take_little(&of(r#"{"a":0},"#, 4_000_000), "An entry in this file has more than 8 MB");
    entries_take_little(&of("0,", 30_000_000), "An entry in this file has more than 8 MB");
    entries_take_little(&of("0,", 3_000_000), "It has more than 1024 kB");
}

#[test]
fn many_entries_that_are_just_small_enough_take_little() {
    let maps = format!(r#"{{"do": "x", "v": [{}0]}}"#, r#"{"":0},"#.repeat(140_000));
    let all: Vec<String> = (0..30).map(|n| entry(n, &maps)).collect();
    entries_take_little(&all.join(","), "An entry of more than 200000 values");
    let lists = format!(r#"{{"do": "x", "v": [{}0]}}"#, r#"[],"#.repeat(80_000));
    let all: Vec<String> = (0..30).map(|n| entry(n, &lists)).collect();
    entries_take_little(&all.join(","), "What a newer version entered in this file has more than 200000 values");
}

#[test]
fn hundreds_of_thousands_of_entries_take_little() {
    let unknown = |count| (0..count).map(|n| entry(n, r#"{"do": "x"}"#)).collect::<Vec<_>>().join(",");
    entries_take_little(&unknown(400_000), "more than 100000 entries");
    entries_take_little(&unknown(100_000), "{}");
    let text = format!(r#"{{"do": "fill", "field": "remarks", "text": "{}"}}"#, "x".repeat(200));
    let known = (0..30_000).map(|n| entry(n, &text)).collect::<Vec<_>>().join(",");
    entries_take_little(&known, "{}, 8 MB out again");
}

/// In and out again.
#[test]
fn an_archive_of_400_mb_is_read_and_written_as_it_goes() {
    let dir = tempfile::tempdir().unwrap();
    takes(&archive(dir.path(), "", 100), MOST_OF_PHOTOS_MB, "{}, 419 MB out again");
}

/// A shop whose file has this beside its head, and these jobs of 200 entries.
fn shop(dir: &Path, rest: &str, jobs: usize) -> std::path::PathBuf {
    let path = dir.join("test.wearbook");
    let mut zip = ZipWriter::new(File::create(&path).unwrap());
    let options = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
    zip.start_file("shop.json", options).unwrap();
    let head = r#""format": "wearbook-shop", "version": 1, "device": "0000000000000001", "written_at": 1"#;
    write!(zip, "{{{head}, {rest}}}").unwrap();
    let text = format!(r#"{{"do": "fill", "field": "remarks", "text": "{}"}}"#, "x".repeat(200));
    let edits = (0..200).map(|n| entry(n, &text)).collect::<Vec<_>>().join(",");
    for job in 0..jobs {
        zip.start_file(format!("jobs/{job:032x}.json"), options).unwrap();
        write!(zip, r#"{{"format": "wearbook-job", "version": 1, "job": "{job:032x}", "edits": [{edits}]}}"#).unwrap();
    }
    zip.finish().unwrap();
    path
}

#[track_caller]
fn a_shop_takes_little(rest: &str, jobs: usize, told: &str) {
    let dir = tempfile::tempdir().unwrap();
    takes(&shop(dir.path(), rest, jobs), MOST_OF_SHOP_MB, told);
}

#[test]
fn the_archive_of_a_shop_takes_little_whatever_it_holds() {
    let of = |settings: &str, away: &str, shelf: &str, jobs: &str| {
        format!(r#""settings": {{{settings}}}, "put_away": [{away}], "shelf": [{shelf}], "jobs": [{jobs}]"#)
    };
    a_shop_takes_little(&of("", "", "", ""), 200, "200 in, 200 out, 12 MB");
    let settings: Vec<String> = (0..2_000_000).map(|n| format!(r#""{n}":"""#)).collect();
    a_shop_takes_little(&of(&settings.join(","), "", "", ""), 0, "than any shop has");
    let away = (0..60_000).map(|n| format!(r#"{{"job":"{n:032x}","at":1,"device":"0000000000000001"}}"#));
    a_shop_takes_little(&of("", &away.collect::<Vec<_>>().join(","), "", ""), 0, "a list of more than 50000");
    let maps = r#"{"":0},"#.repeat(24_000);
    let sheet = |n: usize| format!(r#"{{"kind": "sheet", "name": "{n}", "content": [{maps}0]}}"#);
    let shelf: Vec<String> = (0..200).map(sheet).collect();
    a_shop_takes_little(&of("", "", &shelf.join(","), ""), 0, "0 in, 0 out");
    let photos: Vec<String> = (0..600_000).map(|n| format!(r#""{n:064x}""#)).collect();
    let job = format!(r#"{{"job": "{:032x}", "edits": 1, "is_here": false, "photos": [{}]}}"#, 1, photos.join(","));
    a_shop_takes_little(&of("", "", "", &job), 0, "An entry in this file has more than 8 MB");
}
