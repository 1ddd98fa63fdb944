//! A mended bore takes a new tappet.

use super::{Rule, RuleId, Says};
use crate::engine::{Part, PartKind};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("tappets-to-bores"),
    why: "A reamed bore takes a {tappet} of its oversize, and a bushed one is finished to a new standard {tappet}.",
    source: "TM 10-3930-644-14&P (oversize followers); common practice.",
    says: Says::OnSet(|scene, stands| {
        let plan = scene.measured.tappet_bores.as_ref();
        let because = |tappet: Part| {
            let bore = Part { kind: PartKind::TappetBore, at: tappet.at };
            match stands(bore) {
                Outcome::Machine => Some("Its bore is reamed or bushed, so it is renewed in that size."),
                Outcome::Replace if plan.is_some_and(|plan| plan.has(bore)) => {
                    Some("It ran in a worn bore, and goes into no new one.")
                }
                _ => None,
            }
        };
        let tappets = scene.engine.parts().iter().copied().filter(|part| part.kind == PartKind::Tappet);
        tappets.filter_map(|tappet| Some((tappet, Outcome::Replace, because(tappet)?.to_owned()))).collect()
    }),
};
