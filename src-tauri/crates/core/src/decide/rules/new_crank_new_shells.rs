//! New shells with a new crankshaft.

use super::{Rule, RuleId, Says, shells};
use crate::engine::{At, Part, PartKind};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("new-crank-new-shells"),
    why: "Shells have worn in with their journals: a new crankshaft runs in new shells.",
    source: "TM 9-2320-302-34.",
    says: Says::OnSet(|scene, stands| {
        if stands(Part { kind: PartKind::Crankshaft, at: At::Engine }) != Outcome::Replace {
            return vec![];
        }
        let shells = scene.engine.parts().iter().copied().filter(|part| shells::is_shell(*part));
        shells
            .map(|shell| (shell, Outcome::Replace, "The crankshaft is renewed, and new shells go with it.".into()))
            .collect()
    }),
};
