//! Main bearing bores that do not lie in one line.

use super::{Rule, RuleId, Says, judged};
use crate::engine::{At, Part, PartKind};
use crate::measure::Quantity::{LineAdjacent, LineOverall};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("line-of-bores"),
    why: "Bores out of line are bored in one line, all of them at one setting.",
    source: "TM 55-1905-221-14-4 p. 6-540 (bore, or scrap the block); limits: the spec sheet.",
    says: Says::OnPart(|scene, part, _| {
        let block = Part { kind: PartKind::Block, at: At::Engine };
        let remedy = |quantity| matches!(quantity, LineAdjacent | LineOverall).then_some(Outcome::Machine);
        let (outcome, because) = judged::gravest(scene, block, remedy)?;
        // What can't be said yet is measured on the block; what is bored are its bores.
        let about = if outcome == Outcome::Machine { PartKind::HousingBore } else { PartKind::Block };
        (part.kind == about).then_some((outcome, because))
    }),
};
