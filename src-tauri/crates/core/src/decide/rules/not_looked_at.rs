//! Nobody has looked at it.

use super::{Rule, RuleId, Says};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("not-looked-at"),
    why: "Not looked at is not the same as clean.",
    source: "Common practice.",
    says: Says::OnPart(|scene, part, record| {
        if record.looked_at()
            || part.kind.row().always_renewed
            || scene.job.seen_with(part).is_some()
            || scene.job.is_taken_apart(part)
        {
            return None;
        }
        let because = match part.seen_with() {
            Some(with) => format!("{} is marked: look at what it runs in.", scene.engine.label(with)),
            None => "Look at it: nothing has been recorded yet.".into(),
        };
        Some((Outcome::CantSay, because))
    }),
};
