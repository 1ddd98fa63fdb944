//! A broken-up tappet sends the eye to its lobe.

use super::{Rule, RuleId, Says};
use crate::engine::{Part, PartKind};
use crate::wear::{Grade, Tag};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("lobe-of-a-spalled-tappet"),
    why: "Where a {tappet} or its roller is spalled, pitted or scored, its lobe is looked at through a glass of ten times; any distress of the surface, or feathering at its edge, rejects the camshaft.",
    source: "Aircraft piston-engine overhaul manual, para 6-46; TM 55-1905-220-14-4 (roller scored, flaked or chipped: inspect the camshaft closely).",
    says: Says::OnPart(|scene, part, record| {
        if part.kind != PartKind::Lobe || record.worst().is_some() {
            return None;
        }
        let tappet = Part { kind: PartKind::Tappet, at: part.at };
        let on_it = scene.job.parts.get(&tappet)?;
        let is_roller = scene.engine.arrangement().tappets.is_roller();
        let broken = [Tag::Spalling, Tag::Pitting].into_iter().find(|tag| on_it.grade(*tag).is_some());
        let scored = on_it.grade(Tag::Scoring).filter(|grade| is_roller && *grade >= Grade::TWO).map(|_| Tag::Scoring);
        let seen = broken.or(scored)?.row().name;
        let label = scene.engine.label(tappet);
        Some(match record.looked_at() {
            false => (
                Outcome::CantSay,
                format!(
                    "{label} shows {seen}: look at the nose and the edges of the lobe through a glass of ten times."
                ),
            ),
            true => (
                Outcome::PutBack,
                format!(
                    "{label} shows {seen}, and the lobe was found sound: only a look through a glass of ten times tells."
                ),
            ),
        })
    }),
};
