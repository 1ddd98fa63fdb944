//! Words that must not stand in the repository: places of the machine on which it was written.

use std::path::Path;

use crate::repository_files;

/// Each is written in two halves, so that this file does not hold it.
const PLACES: &[(&str, &str)] = &[("/wo", "rk/"), ("/ro", "ot/"), ("/ho", "me/"), ("/Us", "ers/"), ("C:\\Us", "ers\\")];

/// The two public registries; a lock file may name no other.
const REGISTRIES: &[&str] = &["https://registry.npmjs.org/", "registry+https://github.com/rust-lang/crates.io-index"];

#[test]
fn no_file_names_a_place_of_the_machine_it_was_written_on() {
    let mut found = Vec::new();
    for (path, text) in texts() {
        for (line, content) in text.lines().enumerate() {
            let named = PLACES.iter().map(|(start, end)| format!("{start}{end}")).find(|place| holds(content, place));
            found.extend(named.map(|place| format!("{}:{} holds {place}", path, line + 1)));
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// A place begins where no longer path goes on: `a/home/b` is not one.
fn holds(line: &str, place: &str) -> bool {
    line.match_indices(place).any(|(at, _)| {
        let before = line[..at].chars().next_back();
        !before.is_some_and(|c| c.is_alphanumeric() || "._-~}".contains(c))
    })
}

#[test]
fn lock_files_name_the_public_registries_alone() {
    for (path, text) in texts().filter(|(path, _)| path.ends_with("Cargo.lock") || path.ends_with("package-lock.json"))
    {
        for line in text.lines().map(str::trim) {
            let value = line.strip_prefix("\"resolved\": \"").or_else(|| line.strip_prefix("source = \""));
            let Some(value) = value else { continue };
            assert!(REGISTRIES.iter().any(|registry| value.starts_with(registry)), "{path}: {line}");
        }
    }
}

/// Every text file of the repository with its path.
fn texts() -> impl Iterator<Item = (String, String)> {
    let top = wearbook_tests::checkout();
    let files: Vec<_> = repository_files();
    assert!(files.iter().any(|file| file == Path::new("Cargo.lock")), "the list of files is not that of the checkout");
    files.into_iter().filter_map(move |file| {
        // What is deleted but not yet committed, and pictures, have no text.
        let text = std::fs::read_to_string(top.join(&file)).ok()?;
        Some((file.display().to_string(), text))
    })
}
