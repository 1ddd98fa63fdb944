//! A scored shell sends the eye to its journal.

use super::{Rule, RuleId, Says, shells};
use crate::engine::PartKind;
use crate::wear::{Grade, Tag};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("journal-of-a-scored-shell"),
    why: "What scored a shell may be stuck in the journal, where it would score the new shell too.",
    source: "NAVEDTRA 14075 (rough spots and burrs: remove with a fine oil stone and crocus cloth); common practice.",
    says: Says::OnPart(|scene, part, record| {
        if !matches!(part.kind, PartKind::MainJournal | PartKind::Crankpin) || record.looked_at() {
            return None;
        }
        let is_marked = |grade: Option<Grade>| grade.is_some_and(|grade| grade >= Grade::TWO);
        let (shell, _) = shells::at(scene, part).find(|(_, record)| {
            is_marked(record.grade(Tag::Scoring)) || is_marked(record.grade(Tag::EmbeddedDebris))
        })?;
        let label = scene.engine.label(shell);
        Some((
            Outcome::CantSay,
            format!(
                "{label} is scored or full of debris: look at the journal for scores and for particles stuck in it."
            ),
        ))
    }),
};
