//! Worn thrust faces of the crankshaft.

use super::{Rule, RuleId, Says};
use crate::engine::PartKind;
use crate::sizing::{doubtful_thrust, worn_thrust};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("thrust-faces"),
    why: "Thrust faces that are worn or torn are dressed flat and square, and the thrust bearing comes as much thicker: a new one on a torn face wipes again.",
    source: "TM 5-2815-241-34&P p. 2-216 (thrust width and flatness of the face); common practice.",
    says: Says::OnPart(|scene, part, _| {
        if part.kind != PartKind::Crankshaft {
            return None;
        }
        let worn = worn_thrust(scene.measured).map(|because| (Outcome::Machine, because));
        worn.or_else(|| doubtful_thrust(scene.measured).map(|because| (Outcome::CantSay, because)))
    }),
};
