//! Both halves of a bearing go together.

use super::{Rule, RuleId, Says, shells};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("both-halves"),
    why: "Upper and lower shell are made as a pair: when one is discarded, so is the other.",
    source: "TM 10-3930-653-14&P (both shells, matched); TM 9-2320-302-34.",
    says: Says::OnPart(|scene, part, _| {
        let mut others = shells::recorded(scene).filter(|(other, _)| {
            other.kind == part.kind
                && *other != part
                && (other.at.main(), other.at.cylinder()) == (part.at.main(), part.at.cylinder())
        });
        let (other, _) = others.find(|(other, record)| shells::failure(*other, record).is_some())?;
        let label = scene.engine.label(other);
        Some((Outcome::Replace, format!("{label} is discarded, and both halves are renewed together.")))
    }),
};
