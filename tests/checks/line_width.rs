//! Lines of the page are no wider than those of the Rust code, which its formatter keeps: two files fit side by side.

use crate::repository_files;

/// As in `rustfmt.toml`.
const WIDEST: usize = 120;

#[test]
fn no_line_of_the_page_is_wider_than_those_of_the_rest() {
    let mut wide = Vec::new();
    let of_page = repository_files().into_iter().filter(|file| file.starts_with("ui") && !file.starts_with("ui/types"));
    for file in of_page.filter(|file| file.extension().is_some_and(|kind| kind == "js" || kind == "css")) {
        let Ok(text) = std::fs::read_to_string(wearbook_tests::checkout().join(&file)) else { continue };
        let lines = text.lines().enumerate().filter(|(_, line)| line.chars().count() > WIDEST);
        wide.extend(lines.map(|(nth, _)| format!("{}:{}", file.display(), nth + 1)));
    }
    assert!(wide.is_empty(), "more than {WIDEST} signs stand in\n{}", wide.join("\n"));
}
