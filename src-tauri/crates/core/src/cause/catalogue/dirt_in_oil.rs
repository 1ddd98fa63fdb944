//! Dirt in the oil.

use super::Severity::{Middling, Slight};
use super::{Cause, Side, Sign};
use crate::engine::PartKind::*;
use crate::job::HistoryFact;
use crate::wear::Tag;

/// Hard particles carried round by the oil: fine scratches in the direction of movement, embedded particles with bright
/// rings, on many bearings at once.
pub(super) const CAUSE: Cause = Cause {
    id: "dirt-in-oil",
    name: "dirt in the oil",
    plainly: "Hard particles in the oil have scratched the bearings and shafts.",
    prior: 0.27,
    shifts: &[(HistoryFact::NeglectedOil, 2.5), (HistoryFact::RecentRebuild, 1.5)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Scoring, 0.75, Middling),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::Scoring, 0.45, Slight),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::EmbeddedDebris, 0.65, Middling),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::EmbeddedDebris, 0.40, Slight),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::CopperShowing, 0.22, Slight),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Scoring, 0.50, Slight),
        Sign::new(&[ThrustFace], Side::Any, Tag::Scoring, 0.30, Slight),
        Sign::new(&[ThrustFace], Side::Any, Tag::EmbeddedDebris, 0.25, Slight),
        Sign::new(&[CamBearing], Side::Any, Tag::Scoring, 0.40, Slight),
        Sign::new(&[CamBearing], Side::Any, Tag::EmbeddedDebris, 0.35, Slight),
        Sign::new(&[OilPump], Side::Any, Tag::Scoring, 0.60, Middling),
        Sign::new(&[Piston, Bore], Side::Any, Tag::Scoring, 0.22, Slight),
        Sign::new(&[Tappet, Lobe], Side::Any, Tag::Scoring, 0.12, Slight),
    ],
    check: &[
        "Open every oil way of block and crankshaft, brush and flush it.",
        "Cut the oil filter open and look at what it held; check its by-pass valve.",
        "Take the oil pump apart and measure it.",
        "Look for the way in: air cleaner, breather, filler, an earlier repair that was not washed out.",
    ],
    source: "Pattern: Neale, The Tribology Handbook, plain bearing failures (foreign matter). Prior: published shares of premature bearing failure (common practice), scaled: our judgement. Chances: our judgement.",
};
