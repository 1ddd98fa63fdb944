//! Main bores whose caps are renewed: a new cap does not fit the half that it comes upon.

use super::{Rule, RuleId, Says};
use crate::engine::PartKind::HousingBore;
use crate::work::Outcome::Machine;

pub(super) const RULE: Rule = Rule {
    id: RuleId("renewed-caps"),
    why: "The bore of a new cap is finished together with its own half in the block: of one cap on the line of the others, of several all in one line.",
    source: "TM 5-3805-260-24 (one cap that bore, more than one all of them); TM 55-1905-221-14-4 p. 6-540 (a replaced cap is line-bored).",
    says: Says::OnPart(|scene, part, _| {
        let caps = &scene.job.renewed_caps;
        match caps.len() {
            _ if part.kind != HousingBore => None,
            0 => None,
            1 => {
                caps.contains(&part).then(|| (Machine, "Its cap is renewed: bore it to the line of the others.".into()))
            }
            n => Some((Machine, format!("{n} caps are renewed: bore all of the line at one setting."))),
        }
    }),
};
