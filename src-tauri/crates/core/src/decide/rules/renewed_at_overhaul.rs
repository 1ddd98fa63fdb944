//! Parts that are renewed at every overhaul.

use super::{Rule, RuleId, Says};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("renewed-at-overhaul"),
    why: "Bearing shells, thrust faces, rings and core plugs are renewed at every overhaul; shells always as both halves and as a whole set.",
    source: "TM 9-2815-237-34 para 2-10 c (all bearings renewed if one fails); TM 9-2320-302-34 (both halves); TM 10-3930-647-14&P (rings disturbed after 50 hours of running); common practice.",
    says: Says::OnPart(|_, part, _| {
        let because = "Renewed at every overhaul, whatever the old one looks like.";
        part.kind.row().always_renewed.then(|| (Outcome::Replace, because.into()))
    }),
};
