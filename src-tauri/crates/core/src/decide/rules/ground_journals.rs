//! What must not be lost when journals are ground.

use super::{Rule, RuleId, Says};
use crate::engine::{Part, PartKind};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("ground-journals"),
    why: "Grinding must not reduce the fillet radii, takes off a hardened skin, and can raise cracks: the shaft is hardened again where its maker asks for it, and tested for cracks.",
    source: "AC 43.13-1B para 8-3 (fillet radii; nitriding again); TM 10-3930-671-24 (nitempering after regrinding); TM 5-4320-300-14 p. 6-103 (magnetic inspection, oil holes, finish).",
    says: Says::OnSet(|scene, stands| {
        let is_journal = |part: &Part| matches!(part.kind, PartKind::MainJournal | PartKind::Crankpin);
        let ground =
            scene.engine.parts().iter().copied().filter(|part| is_journal(part) && stands(*part) == Outcome::Machine);
        ground
            .map(|journal| {
                let because = "It is ground: tell the machine shop to keep the fillet radii, to stone the edges of the oil holes, to harden the shaft again if its maker asks for it, and to test it for cracks afterwards.";
                (journal, Outcome::Machine, because.into())
            })
            .collect()
    }),
};
