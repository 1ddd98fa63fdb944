//! One rod shell worn to the copper, all rod shells renewed.

use super::{Rule, RuleId, Says, shells};
use crate::engine::PartKind;
use crate::wear::{Grade, Tag};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("rod-shells-to-copper"),
    why: "If the overlay of one rod shell is worn to the copper across its face, all rod shells are renewed: they have run as long.",
    source: "TM 9-2320-302-34 WP 0041.",
    says: Says::OnPart(|scene, part, _| {
        if part.kind != PartKind::RodShell {
            return None;
        }
        let is_across = |grade| grade >= Grade::THREE;
        let (worn, _) = shells::recorded(scene).find(|(other, record)| {
            other.kind == PartKind::RodShell && record.grade(Tag::CopperShowing).is_some_and(is_across)
        })?;
        let label = scene.engine.label(worn);
        Some((Outcome::Replace, format!("{label} is worn to the copper across its face: all rod shells are renewed.")))
    }),
};
