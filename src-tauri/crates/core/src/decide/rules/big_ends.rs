//! A rod whose big end is out of size or round, on which manuals and machine shops disagree.

use super::{Rule, RuleId, Says, judged};
use crate::engine::PartKind::Rod;
use crate::measure::Quantity::{BigEndBore, OutOfRound};
use crate::sheet::Dispute;
use crate::work::Outcome::{CantSay, Machine, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("big-ends"),
    why: "A big end out of size or round is resized by most machine shops; one manual renews rod and cap. The spec sheet says which is followed.",
    source: "Common practice (resize); TM 9-2815-255-24 (rod and cap).",
    says: Says::OnPart(|scene, part, _| {
        let is_renewed = scene.job.sheet.follows_other(Dispute::BigEnds);
        let remedy = |quantity| {
            let is_big_end = part.kind == Rod && matches!(quantity, BigEndBore | OutOfRound);
            is_big_end.then_some(if is_renewed { Replace } else { Machine })
        };
        let (outcome, because) = judged::gravest(scene, part, remedy)?;
        if outcome == CantSay {
            return Some((outcome, because));
        }
        Some((outcome, format!("{because} {}", Dispute::BigEnds.sentence(is_renewed, scene.engine.terms()))))
    }),
};
