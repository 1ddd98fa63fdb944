//! Main journals that run out: the crankshaft is bent.

use super::{Rule, RuleId, Says};
use crate::engine::PartKind;
use crate::sizing::{bent_mains, doubtful_mains};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("bent-crankshaft"),
    why: "A main journal that runs out further than the sheet allows lies on a bent shaft: it is straightened and tested for cracks, or ground true, before any bearing is chosen.",
    source: "Common practice.",
    says: Says::OnPart(|scene, part, _| {
        if part.kind != PartKind::Crankshaft {
            return None;
        }
        let bent = bent_mains(scene.measured).into_iter().map(|own| (Outcome::Machine, own));
        let doubtful = doubtful_mains(scene.measured).into_iter().map(|own| (Outcome::CantSay, own));
        let (outcome, (journal, figure)) = bent.chain(doubtful).next()?;
        Some((outcome, format!("{}: {} {}", scene.engine.label(journal), figure.name, figure.because)))
    }),
};
