//! One journal ground, all of its group ground.

use std::collections::BTreeMap;

use super::{Rule, RuleId, Says};
use crate::engine::{Part, PartKind};
use crate::job::PartRecord;
use crate::sheet::Dispute;
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("journals-as-a-group"),
    why: "If one main journal is ground, all mains are ground to one common size; the same for the crankpins. One manual grinds all journals of the shaft: the spec sheet says which is followed.",
    source: "TM 5-3805-262-34 p.4-50 (if one or more journals are to be ground, grind all) and two further manuals (per group).",
    says: Says::OnSet(|scene, stands| {
        let engine = scene.engine;
        let mut all = Vec::new();
        let is_whole_shaft = scene.job.sheet.follows_other(Dispute::GroundJournals);
        let groups: &[&[PartKind]] = match is_whole_shaft {
            true => &[&[PartKind::MainJournal, PartKind::Crankpin]],
            false => &[&[PartKind::MainJournal], &[PartKind::Crankpin]],
        };
        for kinds in groups {
            let group: Vec<Part> = engine.parts().iter().copied().filter(|part| kinds.contains(&part.kind)).collect();
            // By a person's word the plan takes the others along already: that manuals disagree is told all the same.
            let by_hand = group.iter().find(|part| is_by_hand(&scene.job.parts, **part));
            let is_ground = |part: Part| stands(part) == Outcome::Machine;
            let Some(first) = by_hand.or_else(|| group.iter().find(|part| is_ground(**part))) else { continue };
            let because = format!(
                "{} must be ground, and others with it. {}",
                engine.label(*first),
                Dispute::GroundJournals.sentence(is_whole_shaft, engine.terms())
            );
            all.extend(
                group
                    .iter()
                    .filter(|part| !is_ground(**part) || by_hand.is_some_and(|own| own != *part))
                    .map(|part| (*part, Outcome::Machine, because.clone())),
            );
        }
        all
    }),
};

/// Whether a person had it ground.
fn is_by_hand(records: &BTreeMap<Part, PartRecord>, part: Part) -> bool {
    let overrule = records.get(&part).and_then(|record| record.overrule.as_ref());
    overrule.is_some_and(|overrule| overrule.outcome == Outcome::Machine)
}
