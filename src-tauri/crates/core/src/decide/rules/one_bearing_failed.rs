//! One bearing failed, all bearings renewed.

use super::{Rule, RuleId, Says, shells};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("one-bearing-failed"),
    why: "What made one bearing fail has worked on all of them: if one or more fail, all main and rod bearings are renewed.",
    source: "TM 9-2815-237-34 para 2-10 c (caution).",
    says: Says::OnPart(|scene, part, _| {
        if !shells::is_shell(part) {
            return None;
        }
        let (failed, _) = shells::recorded(scene)
            .find(|(other, record)| *other != part && shells::failure(*other, record).is_some())?;
        let label = scene.engine.label(failed);
        Some((Outcome::Replace, format!("{label} has failed, so all main and rod bearings are renewed.")))
    }),
};
