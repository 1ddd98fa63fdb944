//! Scratched, pitted or marked journals.

use super::{Rule, RuleId, Says, surface};
use crate::engine::PartKind::{CamJournal, Crankpin, MainJournal};

pub(super) const RULE: Rule = Rule {
    id: RuleId("journal-scratches"),
    why: "A mark that catches a fingernail would cut the new bearing, so the journal is ground; one that is only seen or felt may polish out. How deep is too deep differs from manual to manual: where the spec sheet gives a depth and it was measured, the depth decides.",
    source: "TM 10-4320-307-24 (slight marks: polish with crocus cloth, else grind or replace); TM 5-2815-241-34&P p. 2-216 (to 0.020 in deep grind, deeper discard); fingernail test: common practice.",
    says: Says::OnPart(|scene, part, record| match part.kind {
        MainJournal | Crankpin | CamJournal => surface::damage(scene, part, record),
        _ => None,
    }),
};
