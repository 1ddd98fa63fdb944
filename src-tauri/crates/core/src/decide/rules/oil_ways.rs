//! What the rules about the ways of the oil share: what is cleaned when something has been round with it. No rule itself.

use crate::engine::{Part, PartKind};
use crate::work::Outcome;

/// What is done to a part through which all the oil runs; none to others.
pub(super) fn cleaned(kind: PartKind) -> Option<Outcome> {
    match kind {
        PartKind::Block | PartKind::Crankshaft | PartKind::OilPickup => Some(Outcome::Clean),
        PartKind::OilPump => Some(Outcome::RebuildHere),
        _ => None,
    }
}

/// Whether what lies outside the parts holds what went round with the oil.
pub(super) fn holds_oil(part: Part) -> bool {
    matches!(part.kind, PartKind::EngineOil | PartKind::OilFilter | PartKind::DrainPlug | PartKind::Sump)
}
