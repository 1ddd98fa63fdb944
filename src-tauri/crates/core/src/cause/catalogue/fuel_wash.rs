//! Fuel wash in one cylinder.

use super::prelude::*;

/// Liquid fuel has washed the oil off the wall: narrow, long marks on one side of piston and bore, sound rings.
pub(super) const CAUSE: Cause = Cause {
    id: "fuel-wash",
    name: "fuel wash",
    plainly: "Liquid fuel has washed the oil off the wall of a cylinder.",
    prior: 0.02,
    reach: &[PlaceKind::Rod],
    mirror: Mirror::None,
    fits: any,
    shifts: &[],
    signs: &[
        Sign::new(&[Bore], Side::Any, Tag::Scuffing, 0.60, Middling).at(&[(Pattern::OneSide, 0.80)]),
        Sign::new(&[Piston], Side::Any, Tag::Scuffing, 0.60, Middling).at(&[(Pattern::OneSide, 0.80)]),
        Sign::new(&[Bore], Side::Any, Tag::Scoring, 0.15, Slight).at(&[(Pattern::OneSide, 0.70)]),
        Sign::size(&[Rings], Fault::ThinRing, 0.60),
    ],
    check: &[todo("check-cylinder", "Check injector, plug and compression of this cylinder.")],
    put_right: &[todo("mend-fuelling", "Put the fuelling of this cylinder right before the engine runs again.")],
    source: "Pattern: a piston maker's guide (narrow, long friction marks on one side, ring zone undamaged). Prior and chances: our judgement.",
};
