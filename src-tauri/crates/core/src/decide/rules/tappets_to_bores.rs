//! A mended bore takes a new tappet.

use super::{Rule, RuleId, Says};
use crate::engine::{Part, PartKind};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("tappets-to-bores"),
    why: "A reamed bore takes a {tappet} of its oversize, and a bushed one is finished to a new standard {tappet}.",
    source: "TM 10-3930-644-14&P (oversize followers); common practice.",
    says: Says::OnSet(|scene, stands| {
        let new = |tappet: &Part| stands(Part { kind: PartKind::TappetBore, at: tappet.at }) == Outcome::Machine;
        let tappets = scene.engine.parts().iter().copied().filter(|part| part.kind == PartKind::Tappet && new(part));
        let because = "Its bore is reamed or bushed, so it is renewed in that size.";
        tappets.map(|tappet| (tappet, Outcome::Replace, because.into())).collect()
    }),
};
