//! Cautions on a paper, with the line above all of them.

use super::paper::Block;
use crate::caution::{Caution, GOVERNS, gravest};
use crate::list::ListItem;

/// What governs the work, and what the reader of this paper must know besides; that may be empty.
pub(super) fn governs(besides: &str) -> Block {
    Block::Caution(format!("{GOVERNS} {besides}").trim_end().into())
}

/// The rows, a line each, and what governs the work.
pub(super) fn governed(rows: &[&Caution]) -> Block {
    let lines = rows.iter().map(|row| format!("{}: {}", row.about, row.line));
    Block::Caution(lines.chain([GOVERNS.to_owned()]).collect::<Vec<_>>().join("\n"))
}

/// What must be minded in some work; nothing where there is none.
pub(super) fn cautioned<'a>(work: impl Iterator<Item = &'a ListItem>) -> Vec<Block> {
    let work: Vec<&ListItem> = work.collect();
    if work.is_empty() {
        return vec![];
    }
    vec![governed(&gravest(|row| work.iter().any(|item| item.cautions.contains(&row))))]
}
