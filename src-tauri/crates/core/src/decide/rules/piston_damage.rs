//! Damaged pistons.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::Piston;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{Clean, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("piston-damage"),
    why: "A skirt whose metal is torn or dragged, or an eaten crown, is not used again; light streaks and carbon are cleaned off without scraping the skirt.",
    source: "Common practice.",
    says: Says::OnWear(&[
        up_to(Grade::TWO, &[Piston], &[Tag::Scuffing, Tag::Scoring, Tag::Deposits], Clean),
        from(Grade::THREE, &[Piston], &[Tag::Scuffing, Tag::Scoring], Replace),
        from(Grade::THREE, &[Piston], &[Tag::Deposits], Clean),
        up_to(Grade::ONE, &[Piston], &[Tag::Seizure, Tag::Pitting], Clean),
        up_to(Grade::TWO, &[Piston], &[Tag::HotSpot, Tag::HandlingDamage], Clean),
        from(Grade::TWO, &[Piston], &[Tag::Seizure, Tag::Pitting], Replace),
        from(Grade::THREE, &[Piston], &[Tag::HotSpot, Tag::HandlingDamage], Replace),
    ]),
};
