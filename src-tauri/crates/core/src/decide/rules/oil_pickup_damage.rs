//! The oil pick-up with its strainer.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::OilPickup;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{Clean, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("oil-pickup-damage"),
    why: "A strainer shows what went round with the oil and is washed out; a pipe that is bent, cracked or loose draws air and is renewed.",
    source: "Common practice.",
    says: Says::OnWear(&[
        up_to(Grade::FOUR, &[OilPickup], &[Tag::EmbeddedDebris, Tag::Deposits], Clean),
        up_to(Grade::TWO, &[OilPickup], &[Tag::HandlingDamage], Clean),
        from(Grade::THREE, &[OilPickup], &[Tag::HandlingDamage], Replace),
    ]),
};
