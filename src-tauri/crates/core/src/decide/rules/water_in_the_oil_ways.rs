//! Water or coolant has been round with the oil.

use super::{Rule, RuleId, Says, oil_ways};
use crate::wear::{Grade, Tag};

pub(super) const RULE: Rule = Rule {
    id: RuleId("water-in-the-oil-ways"),
    why: "Oil that is milky with water leaves sludge in the oil galleries, in the pump and on the strainer: they are opened, brushed and flushed, and the pump is taken apart. A trace of cream in a cold spot is condensation.",
    source: "Common practice.",
    says: Says::OnPart(|scene, part, record| {
        let outcome = oil_ways::cleaned(part.kind).filter(|_| record.looked_at())?;
        let is_milky = |part: &&crate::engine::Part| {
            let grade = scene.job.parts.get(part).and_then(|record| record.grade(Tag::Milky));
            oil_ways::holds_oil(**part) && grade.is_some_and(|grade| grade >= Grade::TWO)
        };
        let milky = scene.engine.outside().iter().find(is_milky)?;
        let label = scene.engine.label(*milky);
        Some((outcome, format!("{label}, milky: its sludge stays behind in the oil galleries.")))
    }),
};
