//! A journal that can't be saved takes the crankshaft with it.

use super::{Rule, RuleId, Says};
use crate::engine::{At, Part, PartKind};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("crankshaft-as-one"),
    why: "The crankshaft is one piece: what condemns a journal condemns the shaft, and a new shaft brings new journals.",
    source: "Common practice; new shells with a new crankshaft: TM 9-2320-302-34.",
    says: Says::OnSet(|scene, stands| {
        let engine = scene.engine;
        let shaft = Part { kind: PartKind::Crankshaft, at: At::Engine };
        let is_journal = |part: &&Part| matches!(part.kind, PartKind::MainJournal | PartKind::Crankpin);
        let lost = engine
            .parts()
            .iter()
            .find(|part| (is_journal(part) || **part == shaft) && stands(**part) == Outcome::Replace);
        let Some(lost) = lost else { return vec![] };
        let because = format!("{} can’t be used again, and the crankshaft is one piece.", engine.label(*lost));
        let others = engine.parts().iter().filter(|part| (is_journal(part) || **part == shaft) && *part != lost);
        others.map(|part| (*part, Outcome::Replace, because.clone())).collect()
    }),
};
