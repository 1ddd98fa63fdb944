//! Nobody has looked at it.

use super::{Rule, RuleId, Says};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("not-looked-at"),
    why: "Not looked at is not the same as clean.",
    source: "Common practice.",
    says: Says::OnPart(|_, part, record| {
        let open = !record.looked_at() && !part.kind.row().always_renewed;
        open.then(|| (Outcome::CantSay, "Look at it: nothing has been recorded yet.".into()))
    }),
};
