//! Cautions on a paper, with the line above all of them.

use super::paper::Block;
use crate::caution::{Caution, GOVERNS};

/// The rows, a line each; none if there are none.
pub(super) fn cautions(rows: &[&Caution]) -> Option<Block> {
    let lines: Vec<String> = rows.iter().map(|row| format!("{}: {}", row.about, row.line)).collect();
    (!lines.is_empty()).then(|| Block::Caution(lines.join("\n")))
}

/// What governs the work, and what the reader of this paper must know besides; that may be empty.
pub(super) fn governs(besides: &str) -> Block {
    Block::Caution(format!("{GOVERNS} {besides}").trim_end().into())
}

/// The rows, a line each, and what governs the work.
pub(super) fn governed(rows: &[&Caution]) -> Block {
    let lines = rows.iter().map(|row| format!("{}: {}", row.about, row.line));
    Block::Caution(lines.chain([GOVERNS.to_owned()]).collect::<Vec<_>>().join("\n"))
}
