//! Parts that eyes alone can't pass.

use super::{Rule, RuleId, Says};
use crate::engine::PartKind;
use crate::measure::{Phase, Quantity};
use crate::sizing::Missing;
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("measure-first"),
    why: "Size and form decide whether it can be used again, and eyes can’t see them.",
    source: "TM 5-3805-262-34 (journals at two stations, two directions); NAVEDTRA 14076 (bores at three levels, two directions); common practice.",
    says: Says::OnPart(|scene, part, record| {
        if !record.looked_at() {
            return None;
        }
        let how = match part.kind {
            PartKind::MainJournal | PartKind::Crankpin | PartKind::Bore => {
                let plan = scene.measured.plan_of(part).filter(|plan| !plan.settled)?;
                // What is missing on this part, or on the others of its group: they all go to one size.
                let own = plan.missing.iter().find(|missing| missing.part == Some(part));
                let missing = own.or(plan.missing.first()).map(Missing::sentence);
                return Some((Outcome::CantSay, missing.unwrap_or_else(|| plan.because.clone())));
            }
            PartKind::CamJournal => "Measure it at two stations and in two directions at right angles.",
            PartKind::MainCapBolts | PartKind::RodBolts | PartKind::HeadBolts => {
                "Measure their free length beside a new one: stretch can’t be seen. Bolts that the manual calls to be used once are renewed."
            }
            PartKind::Piston => "Measure its skirt and its bore: the clearance decides.",
            _ => return None,
        };
        let decides = match part.kind {
            PartKind::Piston => Quantity::Clearance,
            PartKind::CamJournal => Quantity::Diameter,
            _ => Quantity::Length,
        };
        let measured = scene.measured.figures(part, Phase::Found).any(|figure| figure.quantity == decides);
        (!measured).then(|| (Outcome::CantSay, how.into()))
    }),
};
