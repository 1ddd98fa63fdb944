//! Looked at and sound.

use super::{Rule, RuleId, Says};
use crate::engine::PartKind;
use crate::words::Phrase;
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("nothing-found"),
    why: "A part that was looked at and shows no damage goes back to its own place.",
    source: "Common practice; matched parts stay matched: TM 5-3810-289-34 (pushrod with what it stands on), TM 10-3930-653-14&P.",
    says: Says::OnPart(|scene, part, record| {
        if !record.looked_at() || record.worst().is_some() || part.kind.row().always_renewed {
            return None;
        }
        let place = match part.kind {
            PartKind::Tappet => "It goes back to its own lobe and nowhere else.",
            PartKind::Pushrod => "It goes back between its own {tappet} and rocker, the same way up.",
            PartKind::Lobe => "It goes back with its own {tappet}.",
            PartKind::Rod | PartKind::Piston => "It goes back to its own cylinder, the same way round.",
            _ => "It was looked at and shows no damage.",
        };
        Some((Outcome::PutBack, Phrase(place).said(scene.engine.terms()).into()))
    }),
};
