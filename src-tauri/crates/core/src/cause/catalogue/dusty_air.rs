//! Dust in the air.

use super::prelude::*;

/// Dust past the air cleaner: light matt scoring on all pistons and bores, worn rings; bearings suffer less.
pub(super) const CAUSE: Cause = Cause {
    id: "dusty-air",
    name: "dust drawn in with the air",
    plainly: "Dust has passed the air cleaner and worn the cylinders.",
    prior: 0.06,
    reach: &[],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::NeglectedOil, 1.3)],
    signs: &[
        Sign::new(&[Bore], Side::Any, Tag::Scoring, 0.65, Slight).at(&[(Pattern::Wide, 0.60), (Pattern::Top, 0.15)]),
        Sign::new(&[Piston], Side::Any, Tag::Scoring, 0.60, Slight)
            .at(&[(Pattern::Skirts, 0.30), (Pattern::Wide, 0.35)]),
        Sign::new(&[Rings], Side::Any, Tag::Scuffing, 0.35, Slight),
        Sign::size(&[Bore], Fault::Worn, 0.55),
        Sign::size(&[Bore], Fault::Tapered, 0.45),
        Sign::size(&[Piston], Fault::Loose, 0.40),
        Sign::size(&[Piston], Fault::WideGroove, 0.75),
        Sign::size(&[Rings], Fault::ThinRing, 0.05),
    ],
    check: &[
        todo("check-air-cleaner", "Check the air cleaner, its seat and every joint between it and the engine.")
            .looking_at(&[AirCleaner]),
        todo("look-for-dust", "Look for dust in the intake behind the cleaner.").looking_at(&[AirCleaner]),
    ],
    put_right: &[todo("renew-element", "Renew the air cleaner's element and seal its joints before the engine runs.")
        .of_way("air-cleaner")],
    source: "Pattern: textbook on automotive mechanics (light matt scoring on all cylinders: dust by the air cleaner). Prior and chances: our judgement.",
};
