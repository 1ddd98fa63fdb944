//! Parts that are renewed at every overhaul.

use super::{Rule, RuleId, Says};
use crate::engine::PartKind;
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("renewed-at-overhaul"),
    why: "Bearing shells, thrust faces, rings and core plugs are renewed at every overhaul; shells always as both halves and as a whole set.",
    source: "TM 9-2815-237-34 para 2-10 c (all bearings renewed if one fails); TM 9-2320-302-34 (both halves); TM 10-3930-647-14&P (rings disturbed after 50 hours of running); common practice.",
    says: Says::OnPart(|_, part, _| {
        let row = part.kind.row();
        if !row.always_renewed {
            return None;
        }
        let size = match part.kind {
            PartKind::MainShell | PartKind::RodShell => " Order only when every journal’s size is known.",
            PartKind::Rings => " Order only when the size of the bores is known.",
            _ => "",
        };
        Some((Outcome::Replace, format!("Renewed at every overhaul, whatever the old one looks like.{size}")))
    }),
};
