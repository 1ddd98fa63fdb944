//! One journal ground, all of its group ground.

use super::{Rule, Says};
use crate::decide::Outcome;
use crate::engine::{Part, PartKind};

pub(super) const RULE: Rule = Rule {
    id: "journals-as-a-group",
    why: "If one main journal is ground, all mains are ground to one common size; the same for the crankpins. The two groups may differ.",
    source: "TM 5-3805-262-34 p.4-50 (if one or more journals are to be ground, grind all) and two further manuals (per group).",
    says: Says::OnSet(|engine, stands| {
        let mut all = Vec::new();
        for kind in [PartKind::MainJournal, PartKind::Crankpin] {
            let group: Vec<Part> = engine.parts().iter().copied().filter(|part| part.kind == kind).collect();
            let Some(first) = group.iter().find(|part| stands(**part) == Outcome::Machine) else { continue };
            let because = format!(
                "{} must be ground, so all of its group are ground to one size.",
                first.label(engine.arrangement())
            );
            all.extend(
                group
                    .iter()
                    .filter(|part| stands(**part) != Outcome::Machine)
                    .map(|part| (*part, Outcome::Machine, because.clone())),
            );
        }
        all
    }),
};
