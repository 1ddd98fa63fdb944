//! Rods that have suffered.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::Rod;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{Clean, Machine, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("rod-damage"),
    why: "A rod that ran hot or is bent is not used again; one whose shell has moved gets its big end resized.",
    source: "Common practice.",
    says: Says::OnWear(&[
        up_to(Grade::ONE, &[Rod], &[Tag::BrightBack, Tag::HotSpot], Clean),
        up_to(Grade::TWO, &[Rod], &[Tag::HandlingDamage], Clean),
        from(Grade::TWO, &[Rod], &[Tag::BrightBack], Machine),
        from(Grade::TWO, &[Rod], &[Tag::HotSpot], Replace),
        from(Grade::THREE, &[Rod], &[Tag::HandlingDamage], Replace),
    ]),
};
