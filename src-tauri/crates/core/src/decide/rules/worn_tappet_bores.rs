//! Worn bores of tappets are mended where they are.

use super::{Rule, RuleId, Says};
use crate::words::Phrase;
use crate::work::{Outcome, Work};

const BUSHED: Phrase = Phrase("Bushed for a standard {tappet}");
const REAMED: Phrase = Phrase("Reamed for an oversize {tappet}");

pub(super) const RULE: Rule = Rule {
    id: RuleId("worn-tappet-bores"),
    why: "A worn bore is mended where it is: reamed for an oversize {tappet}, or bushed for a standard one. A new standard {tappet} alone would be loose in it.",
    source: "TM 10-3930-644-14&P (oversize followers, the bore may be reamed); common practice.",
    says: Says::OnPart(|scene, part, _| {
        let plan = scene.measured.tappet_bores.as_ref().filter(|plan| plan.has(part))?;
        let work = match (plan.way, plan.size_shown.as_str()) {
            (Work::Bush, _) => BUSHED.said(scene.engine.terms()),
            (_, "") => REAMED.said(scene.engine.terms()),
            (_, size) => format!("Reamed to {size}").into(),
        };
        Some((Outcome::Machine, format!("{work}. {}", plan.because)))
    }),
};
