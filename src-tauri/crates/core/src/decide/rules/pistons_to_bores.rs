//! Bored cylinders take new pistons.

use super::{Rule, Says};
use crate::decide::Outcome;
use crate::engine::{Part, PartKind};

pub(super) const RULE: Rule = Rule {
    id: "pistons-to-bores",
    why: "A bored or renewed cylinder takes a piston of its own size; the old one would slap.",
    source: "Common practice; TM 10-3930-653-14&P p.4-33 (oversize pistons).",
    says: Says::OnSet(|scene, stands| {
        let engine = scene.engine;
        let new = |piston: &Part| stands(Part { kind: PartKind::Bore, at: piston.at }) >= Outcome::Machine;
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
