//! The core depends on serde, a pool of threads and small pure crates alone, so it can neither read a file nor ask for the time.

use std::process::Command;

/// What may stand below the core, and what those are made from.
const ALLOWED: &[&str] = &[
    "wearbook-core",
    // To and from JSON, and what that is made from.
    "serde",
    "serde_core",
    "serde_derive",
    "serde_json",
    "itoa",
    "memchr",
    "zmij",
    // Error messages.
    "thiserror",
    "thiserror-impl",
    // Work done side by side; the figures are the same on one thread.
    "rayon",
    "rayon-core",
    "crossbeam-deque",
    "crossbeam-epoch",
    "crossbeam-utils",
    "either",
    // What the derives are made from; they run at build time only.
    "proc-macro2",
    "quote",
    "syn",
    "unicode-ident",
];

#[test]
fn the_core_depends_on_nothing_but_serde_threads_and_small_pure_crates() {
    let tree = Command::new(env!("CARGO"))
        .args(["tree", "--package", "wearbook-core", "--edges", "normal", "--prefix", "none", "--format", "{p}"])
        .current_dir(wearbook_tests::checkout())
        .output()
        .unwrap();
    assert!(tree.status.success(), "cargo tree: {}", String::from_utf8_lossy(&tree.stderr));
    let tree = String::from_utf8(tree.stdout).unwrap();
    let names: Vec<&str> = tree.lines().filter_map(|line| line.split(' ').next()).collect();
    assert!(names.contains(&"serde"), "the list of dependencies can't be read: {tree}");
    let foreign: Vec<&&str> = names.iter().filter(|name| !ALLOWED.contains(name)).collect();
    assert!(foreign.is_empty(), "wearbook-core must not depend on {foreign:?}");
}
