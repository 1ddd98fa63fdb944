//! Shells thinned all alike without a score send the journals to be polished.

use super::{Rule, RuleId, Says};
use crate::engine::{At, Half, PartKind};
use crate::wear::{Grade, Tag};
use crate::work::Outcome;

/// What tells of another reason than a rough journal.
const OTHER: [Tag; 6] =
    [Tag::Scoring, Tag::EmbeddedDebris, Tag::Wiping, Tag::HotSpot, Tag::Corrosion, Tag::FatigueCracks];

pub(super) const RULE: Rule = Rule {
    id: RuleId("journal-of-thinned-shells"),
    why: "A journal that looks sound and is rough thins its shells like a fine file, all of them alike.",
    source: "A reconditioner’s printed chart (wall thinned and polished, not smeared, torn or scored).",
    says: Says::OnPart(|scene, part, record| {
        if !matches!(part.kind, PartKind::MainJournal | PartKind::Crankpin) || !record.looked_at() {
            return None;
        }
        let is_loaded = |at: At| match at {
            At::MainHalf(_, half) => half == Half::Lower,
            At::CylinderHalf(_, half) => half == Half::Upper,
            _ => false,
        };
        let loaded = scene.engine.parts().iter().filter(|part| is_loaded(part.at));
        let is_thinned = |shell: &crate::job::PartRecord| {
            shell.grade(Tag::CopperShowing) >= Some(Grade::TWO) && OTHER.iter().all(|tag| shell.grade(*tag).is_none())
        };
        let all = loaded.map(|shell| scene.job.parts.get(shell)).all(|shell| shell.is_some_and(is_thinned));
        all.then(|| {
            (Outcome::Polish, "Every loaded shell is thinned without a score: polish it, rough as it may be.".into())
        })
    }),
};
