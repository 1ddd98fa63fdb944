//! Damaged bores.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::Bore;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{Clean, Machine};

pub(super) const RULE: Rule = Rule {
    id: RuleId("bore-damage"),
    why: "A scratch that a fingernail feels below the ring travel, or torn metal, is bored out; a light one is honed.",
    source: "TM 5-3805-281-24-2 (pits or deep scratches felt by the fingernail: liner replaced); common practice.",
    says: Says::OnWear(&[
        up_to(Grade::ONE, &[Bore], &[Tag::Scoring, Tag::Scuffing, Tag::Rust, Tag::Pitting, Tag::Seizure], Clean),
        from(Grade::TWO, &[Bore], &[Tag::Scoring, Tag::Pitting], Machine),
        from(Grade::TWO, &[Bore], &[Tag::Scuffing, Tag::Rust, Tag::Seizure], Machine),
    ]),
};
