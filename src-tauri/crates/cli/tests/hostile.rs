//! The program on what people and machines throw at it: an exit code and a sentence, never a panic.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::io::Cursor;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use image::{ImageFormat, Rgb, RgbImage};
use tempfile::TempDir;

fn run(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_wearbook-cli")).args(arguments).output().unwrap()
}

fn put(dir: &TempDir, name: &str, bytes: &[u8]) -> PathBuf {
    let path = dir.path().join(name);
    std::fs::write(&path, bytes).unwrap();
    path
}

fn text(path: &Path) -> &str {
    path.to_str().unwrap()
}

fn picture(format: ImageFormat) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    RgbImage::from_pixel(60, 40, Rgb([120, 90, 90])).write_to(&mut bytes, format).unwrap();
    bytes.into_inner()
}

/// Bytes without any order, the same every time.
fn noise(length: usize) -> Vec<u8> {
    let mut state = 0x2545_F491_4F6C_DD1D_u64;
    let mut next = || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        state.to_le_bytes()[0]
    };
    (0..length).map(|_| next()).collect()
}

#[track_caller]
fn one_sentence(output: &Output, code: i32) -> String {
    let said = String::from_utf8(output.stderr.clone()).unwrap();
    assert_eq!(output.status.code(), Some(code), "{said}");
    assert!(!said.contains("panicked"), "{said}");
    assert!(said.trim_end().ends_with('.') && said.starts_with(|c: char| !c.is_lowercase()), "no sentence: {said}");
    said
}

#[test]
fn jobs_that_are_none_are_refused_with_a_sentence() {
    let dir = tempfile::tempdir().unwrap();
    let truncated = b"PK\x03\x04\x14\x00\x00\x00\x00\x00 and no more";
    let files = [
        put(&dir, "empty", b""),
        put(&dir, "noise", &noise(10_000)),
        put(&dir, "truncated", truncated),
        put(&dir, "picture", &picture(ImageFormat::Png)),
        put(&dir, "brackets", "[".repeat(1_000_000).as_bytes()),
        dir.path().join("missing"),
        dir.path().to_owned(),
    ];
    for file in &files {
        one_sentence(&run(&["assess", text(file)]), 1);
        one_sentence(&run(&["assess", text(file), "--json"]), 1);
        let out = dir.path().join("out");
        one_sentence(&run(&["documents", text(file), "--out", text(&out)]), 1);
        assert!(!out.exists(), "papers of a refused job");
    }
}

#[test]
fn photo_check_says_accepted_or_why_not() {
    let dir = tempfile::tempdir().unwrap();
    let check = |name: &str, bytes: &[u8]| {
        let output = run(&["photo", "check", text(&put(&dir, name, bytes))]);
        assert!(output.stderr.is_empty(), "{}", String::from_utf8_lossy(&output.stderr));
        let line = String::from_utf8(output.stdout).unwrap();
        assert_eq!(line.lines().count(), 1, "{line}");
        (output.status.code().unwrap(), serde_json::from_str::<serde_json::Value>(&line).unwrap())
    };
    for (format, name) in [(ImageFormat::Jpeg, "jpeg"), (ImageFormat::Png, "png"), (ImageFormat::WebP, "webp")] {
        let expected = serde_json::json!({ "accepted": true, "format": name, "width": 60, "height": 40 });
        assert_eq!(check(name, &picture(format)), (0, expected));
    }
    let jpeg = picture(ImageFormat::Jpeg);
    let too_large = vec![0xFF; wearbook_photo::MAX_BYTES + 2];
    for bytes in [&[][..], &noise(5_000), &jpeg[..jpeg.len() / 2], b"%PDF-1.7", &too_large] {
        let (code, line) = check("bad", bytes);
        assert_eq!((code, &line["accepted"]), (2, &serde_json::json!(false)));
        assert!(
            line["message"].as_str().unwrap().ends_with('.') && line["code"].as_str().unwrap().starts_with("photo-")
        );
    }
    one_sentence(&run(&["photo", "check", text(&dir.path().join("missing"))]), 1);
}

#[test]
fn photo_outgoing_writes_a_clean_jpeg_or_nothing() {
    let dir = tempfile::tempdir().unwrap();
    let out = dir.path().join("out.jpg");
    let good = put(&dir, "good.png", &picture(ImageFormat::Png));
    assert!(run(&["photo", "outgoing", text(&good), text(&out)]).status.success());
    assert_eq!(image::load_from_memory(&std::fs::read(&out).unwrap()).unwrap().width(), 60);
    std::fs::remove_file(&out).unwrap();
    let bad = put(&dir, "bad.jpg", &noise(100));
    one_sentence(&run(&["photo", "outgoing", text(&bad), text(&out)]), 2);
    assert!(!out.exists());
    let nowhere = dir.path().join("no/such/folder/out.jpg");
    one_sentence(&run(&["photo", "outgoing", text(&good), text(&nowhere)]), 1);
}

#[test]
fn bad_usage_ends_with_one_and_help_with_none() {
    for usage in [&["fly"][..], &["assess"], &["photo", "check"], &["documents", "x"], &[]] {
        let output = run(usage);
        assert_eq!(output.status.code(), Some(1), "{usage:?}");
        assert!(!output.stderr.is_empty());
    }
    let help = run(&["--help"]);
    assert!(help.status.success() && String::from_utf8(help.stdout).unwrap().contains("outgoing"));
}

#[test]
fn a_job_written_by_hand_is_assessed_and_set() {
    let dir = tempfile::tempdir().unwrap();
    let arrangement = serde_json::json!({
        "layout": "inline", "cylinders": 4, "mains": 5, "thrust_main": 3, "rods_per_crankpin": 1,
        "camshaft": "in-block", "cam_bearings": 5, "tappets": "flat-solid", "valves_per_cylinder": 2,
        "numbering": { "from": "front", "banks": "one-then-other", "first_bank": "left" },
        "front": "away-from-flywheel",
    });
    let edits: Vec<serde_json::Value> = [
        serde_json::json!({ "do": "arrange", "arrangement": arrangement }),
        serde_json::json!({ "do": "tag", "part": "main-shell.2.lower", "tag": "scoring", "grade": 3, "zones": ["middle-crown"] }),
    ]
    .into_iter()
    .map(|change| serde_json::json!({ "change": change }))
    .chain([serde_json::json!({
        "id": "000000000001-0000-0000000000000001", "change": { "do": "weigh", "part": "piston.1" },
    })])
    .collect();
    let job = serde_json::json!({ "format": "wearbook-job", "version": 1, "job": "7".repeat(32), "edits": edits });
    let file = put(&dir, "job.json", job.to_string().as_bytes());

    let json = run(&["assess", text(&file), "--json"]);
    let assessment: serde_json::Value = serde_json::from_slice(&json.stdout).unwrap();
    assert_eq!(assessment["engine"], "in-line 4, 5 mains, thrust on main 3");
    assert_eq!(assessment["progress"]["looked"], 1);
    assert!(assessment["notices"][0].as_str().unwrap().contains("newer version"));
    assert_eq!(run(&["assess", text(&file), "--json"]).stdout, json.stdout, "the same file, the same answer");

    let page = String::from_utf8(run(&["assess", text(&file)]).stdout).unwrap();
    assert!(page.contains("Causes, most likely first") && page.contains("Main 2, lower shell"), "{page}");

    let out = dir.path().join("papers/here");
    assert!(run(&["documents", text(&file), "--out", text(&out)]).status.success());
    assert!(std::fs::read(out.join("full-report.pdf")).unwrap().starts_with(b"%PDF-"));
    assert!(std::fs::read_to_string(out.join("full-report.txt")).unwrap().contains("Scoring"));
    assert!(!out.join("closing.pdf").exists(), "nothing has been done yet");
}

#[test]
fn a_slip_in_a_job_written_by_hand_is_told() {
    let dir = tempfile::tempdir().unwrap();
    let job = |change: serde_json::Value| serde_json::json!({ "format": "wearbook-job", "version": 1, "job": "7".repeat(32), "edits": [{ "change": change }] });
    let line =
        serde_json::json!({ "of": { "kind": "main-journal", "quantity": "diameter" }, "min": "2.996 in = 76.124 mm" });
    // A published misprint: TM 5-4320-300-14 p. 6-103.
    let slips = [
        (serde_json::json!({ "do": "state-line", "line": line }), "disagree"),
        (serde_json::json!({ "do": "weigh" }), "“weigh” in “do” is nothing that this version knows"),
    ];
    for (slip, because) in slips {
        let file = put(&dir, "slip.json", job(slip).to_string().as_bytes());
        let output = run(&["assess", text(&file), "--json"]);
        let told = String::from_utf8(output.stderr).unwrap();
        assert!(!output.status.success() && told.contains(because), "{told}");
    }
}
