//! What is looked at with another part needs no line of its own.

use super::{Rule, RuleId, Says};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("seen-along"),
    why: "A part that is looked at with another has no line of its own until something asks for one.",
    source: "TM 10-3930-653-14&P p. 4-40 (a follower falls slowly of its own weight in a good bore); common practice.",
    says: Says::OnPart(|scene, part, _| {
        let with = scene.job.seen_with(part)?;
        let label = scene.engine.label(with);
        let record = scene.job.parts.get(&with).filter(|record| record.looked_at());
        Some(match record.map(|record| record.worst()) {
            Some(None) => (Outcome::PutBack, format!("Nothing was found on it when this was looked at: {label}.")),
            Some(Some(_)) => (Outcome::PutBack, format!("What was found is told of this: {label}.")),
            None => (Outcome::CantSay, format!("Look at it when this is looked at: {label}.")),
        })
    }),
};
