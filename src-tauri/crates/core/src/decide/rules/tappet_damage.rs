//! Tappets that don't go back.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::Tappet;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{PutBack, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("tappet-damage"),
    why: "A {tappet} that is pitted, spalled, dished, stuck or rusted would wear its lobe.",
    source: "Aircraft piston-engine overhaul manual, para 6-45 (any spalling or pitting: reject); TM 9-4310-397-14 (pitting or galling: replace).",
    says: Says::OnWear(&[
        from(Grade::ONE, &[Tappet], &[Tag::Spalling, Tag::DishedFace], Replace),
        from(Grade::TWO, &[Tappet], &[Tag::Pitting], Replace),
        from(Grade::TWO, &[Tappet], &[Tag::StuckPlunger, Tag::Rust, Tag::Scuffing], Replace),
        up_to(Grade::TWO, &[Tappet], &[Tag::Scoring, Tag::HandlingDamage], PutBack),
        from(Grade::THREE, &[Tappet], &[Tag::Scoring, Tag::HandlingDamage], Replace),
    ]),
};
