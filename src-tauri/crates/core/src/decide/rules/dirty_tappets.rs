//! Tappets that are only dirty.

use super::{Rule, Says, up_to};
use crate::decide::Outcome::RebuildHere;
use crate::engine::PartKind::Tappet;
use crate::wear::{Grade, Tag};

pub(super) const RULE: Rule = Rule {
    id: "dirty-tappets",
    why: "A tappet that is only dirty is taken apart, cleaned and put back to its own lobe; its inner parts are never mixed with another’s.",
    source: "TM 5-4210-230-14&P-1; NAVEDTRA 14076 (varnish and abrasive particles: clean, don’t mix parts).",
    says: Says::OnWear(&[
        up_to(Grade::FOUR, &[Tappet], &[Tag::Deposits], RebuildHere),
        up_to(Grade::ONE, &[Tappet], &[Tag::StuckPlunger, Tag::Rust, Tag::Scuffing], RebuildHere),
    ]),
};
