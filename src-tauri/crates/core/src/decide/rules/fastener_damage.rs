//! Bolts and studs.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::{self, HeadBolts, MainCapBolts, RodBolts};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{CantSay, Clean, PutBack, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("fastener-damage"),
    why: "A stretched, pitted or torn bolt breaks, and a broken rod bolt wrecks the engine: the set is renewed. One that may be stretched is measured.",
    source: "Common practice.",
    says: Says::OnWear(&[
        up_to(Grade::ONE, SETS, &[Tag::Bent], CantSay).asking("Measure the free length of each beside a new one."),
        from(Grade::TWO, SETS, &[Tag::Bent], Replace),
        up_to(Grade::ONE, SETS, &[Tag::Scuffing, Tag::HandlingDamage], PutBack),
        from(Grade::TWO, SETS, &[Tag::Scuffing, Tag::HandlingDamage], Replace),
        up_to(Grade::TWO, SETS, &[Tag::Rust], Clean),
        from(Grade::THREE, SETS, &[Tag::Rust], Replace),
    ]),
};

const SETS: &[PartKind] = &[MainCapBolts, RodBolts, HeadBolts];
