//! Parts that eyes alone can't pass.

use super::{Rule, Says};
use crate::decide::Outcome;
use crate::engine::PartKind;

pub(super) const RULE: Rule = Rule {
    id: "measure-first",
    why: "Size and form decide whether it can be used again, and eyes can’t see them.",
    source: "TM 5-3805-262-34 (journals at two stations, two directions); NAVEDTRA 14076 (bores at three levels, two directions); common practice.",
    says: Says::OnPart(|_, part, record| {
        if !record.looked_at() {
            return None;
        }
        let how = match part.kind {
            PartKind::MainJournal | PartKind::Crankpin | PartKind::CamJournal => {
                "Measure it at two stations and in two directions at right angles."
            }
            PartKind::Bore => "Measure it at three levels and in two directions at right angles.",
            PartKind::Piston => "Measure its skirt and its bore: the clearance decides.",
            _ => return None,
        };
        Some((Outcome::CantSay, how.into()))
    }),
};
