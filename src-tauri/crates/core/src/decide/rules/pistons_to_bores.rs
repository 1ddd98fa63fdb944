//! Bored cylinders take new pistons.

use super::{Rule, RuleId, Says};
use crate::engine::{Part, PartKind};
use crate::sizing::Action;
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("pistons-to-bores"),
    why: "A bored or renewed cylinder takes a piston of its own size; the old one would slap. A sleeved one is brought back to the size of the old.",
    source: "Common practice; TM 10-3930-653-14&P p.4-33 (oversize pistons).",
    says: Says::OnSet(|scene, stands| {
        let engine = scene.engine;
        // A sleeved bore is brought back to the size of the pistons.
        let is_sleeved = |bore| scene.measured.plan_of(bore).is_some_and(|plan| plan.action == Action::Sleeve);
        let new = |piston: &Part| {
            let bore = Part { kind: PartKind::Bore, at: piston.at };
            stands(bore) == Outcome::Replace || stands(bore) == Outcome::Machine && !is_sleeved(bore)
        };
        let pistons = engine.parts().iter().copied().filter(|part| part.kind == PartKind::Piston && new(part));
        pistons
            .map(|piston| {
                (
                    piston,
                    Outcome::Replace,
                    "Its cylinder is bored or renewed, so it takes a piston of that size.".into(),
                )
            })
            .collect()
    }),
};
