//! Overload.

use super::Severity::{Middling, Slight};
use super::{Cause, Side, Sign};
use crate::engine::PartKind::*;
use crate::job::HistoryFact;
use crate::wear::Tag;

/// Too much load too often, lugging or detonation: fatigue of the loaded halves only, upper rod and lower main shells.
pub(super) const CAUSE: Cause = Cause {
    id: "overload",
    name: "overload",
    plainly: "The engine was worked too hard, or its firing was too hard: the loaded bearing halves are fatigued.",
    prior: 0.06,
    shifts: &[(HistoryFact::WorkedHard, 4.0)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::FatigueCracks, 0.60, Middling),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::LiningLoss, 0.35, Middling),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::CopperShowing, 0.30, Slight),
        Sign::new(&[Piston], Side::Any, Tag::Cracks, 0.10, Middling),
        Sign::new(&[Piston], Side::Any, Tag::Pitting, 0.15, Middling),
    ],
    check: &[
        "Check ignition or injection timing, fuel grade and boost against the engine's manual.",
        "Ask how the engine is used: loads, gears, revolutions.",
        "Check that rods are straight and the crankshaft is free of cracks.",
    ],
    source: "Pattern: common practice; US marine-engineer examination item (only the lower half of a main fails: overload); TM 55-1905-221-14-3 (loaded halves show distress first). Prior: published shares (common practice), scaled: our judgement. Chances: our judgement.",
};
