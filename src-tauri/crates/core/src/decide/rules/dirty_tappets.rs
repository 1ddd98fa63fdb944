//! Tappets that are only dirty.

use super::{Rule, RuleId, Says, WearLine, read, up_to};
use crate::engine::PartKind::Tappet;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{Clean, RebuildHere};

const LINES: &[WearLine] = &[
    up_to(Grade::FOUR, &[Tappet], &[Tag::Deposits], RebuildHere),
    up_to(Grade::ONE, &[Tappet], &[Tag::StuckPlunger, Tag::Rust, Tag::Scuffing], RebuildHere),
];

pub(super) const RULE: Rule = Rule {
    id: RuleId("dirty-tappets"),
    why: "A {tappet} that is only dirty is cleaned and put back to its own lobe. A hydraulic one is taken apart for it; its inner parts are never mixed with another’s.",
    source: "TM 5-4210-230-14&P-1; NAVEDTRA 14076 (varnish and abrasive particles: clean, don’t mix parts).",
    says: Says::OnPart(|scene, part, record| {
        let (outcome, seen) = read(LINES, part, record)?;
        // A solid tappet has nothing inside.
        Some((if scene.engine.arrangement().tappets.is_hydraulic() { outcome } else { Clean }, seen))
    }),
};
