//! Worn or broken lobes.

use super::{Rule, RuleId, Says, at, from, up_to};
use crate::engine::PartKind::Lobe;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{Polish, PutBack, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("lobe-damage"),
    why: "Any pit or flake on a lobe, and a nose that is worn down, rejects the camshaft; very light score marks may stay while the lift is within limits.",
    source: "Aircraft piston-engine overhaul manual, para 6-46 (any distress of the lobe rejects the camshaft); TM 9-4310-397-14 (very light score marks acceptable if lift is within limits).",
    says: Says::OnWear(&[
        up_to(Grade::ONE, &[Lobe], &[Tag::Scoring, Tag::WornNose], PutBack),
        up_to(Grade::ONE, &[Lobe], &[Tag::Rust, Tag::Scuffing], Polish),
        at(Grade::TWO, &[Lobe], &[Tag::Scoring], Polish),
        from(Grade::ONE, &[Lobe], &[Tag::Pitting, Tag::Spalling], Replace),
        from(Grade::TWO, &[Lobe], &[Tag::WornNose, Tag::Rust, Tag::Scuffing], Replace),
        from(Grade::THREE, &[Lobe], &[Tag::Scoring], Replace),
    ]),
};
