//! Debris has been round with the oil.

use super::{Rule, RuleId, Says};
use crate::engine::PartKind;
use crate::wear::{Grade, Tag};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("debris-in-the-oil-ways"),
    why: "What was embedded in the shells is still in the oil galleries: they are opened, brushed and flushed, and the pump that carried it is taken apart.",
    source: "Common practice.",
    says: Says::OnPart(|scene, part, record| {
        let outcome = match part.kind {
            PartKind::Block | PartKind::Crankshaft | PartKind::OilPickup => Outcome::Clean,
            PartKind::OilPump => Outcome::RebuildHere,
            _ => return None,
        };
        if !record.looked_at() {
            return None;
        }
        let embedded = scene.engine.parts().iter().find(|other| {
            scene
                .job
                .parts
                .get(other)
                .and_then(|record| record.grade(Tag::EmbeddedDebris))
                .is_some_and(|grade| grade >= Grade::TWO)
        })?;
        let label = scene.engine.label(*embedded);
        Some((
            outcome,
            format!("Debris was found embedded ({label}): open and clean the oil galleries, and take the pump apart."),
        ))
    }),
};
