//! Cautions on a paper, with the line above all of them.

use super::paper::Block;
use crate::caution::{Caution, GOVERNS, gravest};
use crate::engine::PartKind;
use crate::list::ListItem;
use crate::money::PriceKey;
use crate::work::Work;

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
    let is_ground =
        |of: PriceKey| of.work == Work::Machine && matches!(of.kind, PartKind::MainJournal | PartKind::Crankpin);
    let grinds = work.iter().filter_map(|item| item.of.as_ref()?.work()).any(is_ground);
    let of_journals = if grinds { "Finish every journal of a group to one size. Keep the fillet radii." } else { "" };
    let rows = gravest(|row| work.iter().any(|item| item.cautions.contains(&row)));
    let lines = rows.iter().map(|row| format!("{}: {}", row.about, row.line));
    let governs = format!("{GOVERNS} {of_journals}").trim_end().to_owned();
    vec![Block::Caution(lines.chain([governs]).collect::<Vec<_>>().join("\n"))]
}
