//! Rust, dirt and knocks on the big pieces.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::{Block, Camshaft, Crankshaft};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{Clean, Machine};

pub(super) const RULE: Rule = Rule {
    id: RuleId("rust-and-dirt"),
    why: "A film or a stain is cleaned off; pits in a working face are machined out.",
    source: "Common practice.",
    says: Says::OnWear(&[
        up_to(Grade::TWO, &[Block, Crankshaft, Camshaft], &[Tag::Rust, Tag::HandlingDamage], Clean),
        up_to(Grade::FOUR, &[Block], &[Tag::Deposits], Clean),
        up_to(Grade::TWO, &[Block], &[Tag::Corrosion], Clean),
        from(Grade::THREE, &[Block, Crankshaft, Camshaft], &[Tag::Rust, Tag::HandlingDamage], Machine),
        from(Grade::THREE, &[Block], &[Tag::Corrosion], Machine),
    ]),
};
