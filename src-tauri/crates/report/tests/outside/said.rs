//! What other programs say about a PDF.

#![allow(clippy::unwrap_used, reason = "clippy.toml lets tests unwrap, but not the functions that they share")]

use std::path::Path;
use std::process::Command;
use std::sync::atomic::{AtomicUsize, Ordering};

/// What a program prints about a PDF; none, and a line that says so, when the program is not there.
pub(crate) fn said(program: &str, arguments: &[&str], pdf: &[u8]) -> Option<String> {
    static COUNT: AtomicUsize = AtomicUsize::new(0);
    let nth = COUNT.fetch_add(1, Ordering::Relaxed);
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("{}-{nth}.pdf", env!("CARGO_CRATE_NAME")));
    std::fs::write(&file, pdf).unwrap();
    let arguments =
        arguments.iter().map(|argument| if *argument == "FILE" { file.as_path() } else { Path::new(argument) });
    let answer = Command::new(program).args(arguments).output();
    std::fs::remove_file(&file).unwrap();
    match answer {
        Ok(output) => {
            assert!(output.status.success(), "{program}: {}", String::from_utf8_lossy(&output.stderr));
            Some(String::from_utf8_lossy(&output.stdout).into_owned())
        }
        Err(_) => {
            eprintln!("skipped: {program} is not installed");
            None
        }
    }
}

/// Without white space and marks that show nothing, for line ends fall where the sheet wants them.
pub(crate) fn squeezed(text: &str) -> String {
    let shown = |letter: &char| {
        !letter.is_whitespace() && !letter.is_control() && !matches!(letter, '\u{200b}' | '\u{2066}'..='\u{2069}')
    };
    text.chars().filter(shown).collect()
}
