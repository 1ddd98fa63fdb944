//! Torn bores of tappets.

use super::{Rule, RuleId, Says, surface};
use crate::engine::PartKind::TappetBore;

pub(super) const RULE: Rule = Rule {
    id: RuleId("tappet-bore-damage"),
    why: "What is only seen or felt in the bore of a {tappet} is stroked with a stone and washed out; what catches a fingernail is reamed out, or bushed.",
    source: "TM 10-3930-644-14&P (the bore may be reamed); fingernail test: common practice.",
    says: Says::OnPart(|scene, part, record| match part.kind {
        TappetBore => surface::damage(scene, part, record),
        _ => None,
    }),
};
