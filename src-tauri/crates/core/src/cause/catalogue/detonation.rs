//! Detonation or pre-ignition in one cylinder.

use super::prelude::*;

/// A pitted, eroded or melted crown, broken lands and rings, a fatigued upper shell, in one cylinder.
pub(super) const CAUSE: Cause = Cause {
    id: "detonation",
    name: "detonation or pre-ignition",
    plainly: "The charge in a cylinder fired too early or too hard and damaged its piston.",
    prior: 0.015,
    reach: &[PlaceKind::Rod],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::WorkedHard, 2.0)],
    signs: &[
        Sign::new(&[Piston], Side::Any, Tag::Pitting, 0.55, Middling)
            .at(&[(Pattern::Head, 0.65), (Pattern::Lands, 0.20)]),
        Sign::new(&[Piston], Side::Any, Tag::Cracks, 0.35, Middling)
            .at(&[(Pattern::Lands, 0.50), (Pattern::Head, 0.30)]),
        Sign::new(&[Piston], Side::Any, Tag::HotSpot, 0.40, Severe).at(&[(Pattern::Head, 0.75)]),
        Sign::new(&[Piston], Side::Any, Tag::Seizure, 0.12, Severe),
        Sign::new(&[Rings], Side::Any, Tag::Cracks, 0.30, Middling),
        Sign::new(&[RodShell], Side::Loaded, Tag::FatigueCracks, 0.30, Middling).at(UNDER_LOAD),
    ],
    check: &[
        todo("check-ignition", "Check plug, injector, timing and mixture of this cylinder."),
        todo("look-for-lean-mixture", "Look for glowing deposits and for a lean mixture by leaking air."),
    ],
    put_right: &[todo("mend-ignition", "Put ignition or injection right before the engine runs again.")],
    source: "Pattern: FAA material (pre-ignition and detonation: melted or eroded crown, deep pitting, damage to rings and skirt; depressed heads). Prior and chances: our judgement.",
};
