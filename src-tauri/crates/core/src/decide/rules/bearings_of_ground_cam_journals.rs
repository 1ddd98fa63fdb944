//! Bearings of cam journals that are ground.

use super::{Rule, RuleId, Says};
use crate::engine::{Part, PartKind};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("bearings-of-ground-cam-journals"),
    why: "A cam journal that is ground is smaller than its old bearing: a bearing of that size goes in, or oil pressure is lost there.",
    source: "Common practice.",
    says: Says::OnSet(|scene, stands| {
        let ground = |journal: &Part| journal.kind == PartKind::CamJournal && stands(*journal) == Outcome::Machine;
        let bearing = |journal: Part| Part { kind: PartKind::CamBearing, at: journal.at };
        let because = |journal: Part| format!("{} is ground, and it comes to that size.", scene.engine.label(journal));
        let journals = scene.engine.parts().iter().copied().filter(ground);
        journals.map(|journal| (bearing(journal), Outcome::Replace, because(journal))).collect()
    }),
};
