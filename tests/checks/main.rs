//! Checks on the repository itself: what no single crate can see about itself.

#![allow(
    clippy::unwrap_used,
    clippy::string_slice,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "all of this crate is tests, and a test may stop where it is"
)]

mod actions_match;
mod core_is_pure;
mod imports;
mod ladder;
mod line_width;
mod phone_projects;
mod words;

use std::path::PathBuf;
use std::process::Command;

/// All files that git knows, as paths from the top of the checkout.
fn repository_files() -> Vec<PathBuf> {
    // Those not yet added are part of what will be committed.
    let listed = Command::new("git")
        .args(["ls-files", "--cached", "--others", "--exclude-standard", "-z"])
        .current_dir(wearbook_tests::checkout())
        .output()
        .unwrap();
    assert!(listed.status.success(), "git could not list the files: {}", String::from_utf8_lossy(&listed.stderr));
    let names = String::from_utf8(listed.stdout).unwrap();
    names.split('\0').filter(|name| !name.is_empty()).map(PathBuf::from).collect()
}
