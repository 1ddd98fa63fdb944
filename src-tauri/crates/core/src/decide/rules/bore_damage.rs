//! Damaged bores.

use super::{Rule, RuleId, Says, surface};
use crate::engine::PartKind::Bore;

pub(super) const RULE: Rule = Rule {
    id: RuleId("bore-damage"),
    why: "A scratch that a fingernail feels below the ring travel, or torn metal, is bored out; a light one is honed. Where the spec sheet gives a depth and it was measured, the depth decides.",
    source: "TM 5-3805-281-24-2 (pits or deep scratches felt by the fingernail: liner replaced); common practice.",
    says: Says::OnPart(|scene, part, record| match part.kind {
        Bore => surface::damage(scene, part, record),
        _ => None,
    }),
};
