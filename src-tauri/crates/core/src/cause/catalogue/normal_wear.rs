//! Normal wear.

use super::prelude::*;

/// A long life: an even pattern over about two thirds of the surface, fading towards the parting lines.
pub(super) const CAUSE: Cause = Cause {
    id: "normal-wear",
    name: "normal wear",
    plainly: "The engine is worn by long ordinary use.",
    prior: 0.5,
    reach: &[],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 0.2)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::LooksEven, 0.75, Middling).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::Scoring, 0.20, Slight).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::CopperShowing, 0.10, Slight).at(UNDER_LOAD),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::LooksEven, 0.75, Slight).at(ALL_OVER),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Scoring, 0.15, Slight).at(ALL_OVER),
        Sign::new(&[Tappet, Lobe], Side::Any, Tag::LooksEven, 0.70, Slight),
        Sign::new(&[Lobe], Side::Any, Tag::WornNose, 0.12, Slight).at(&[(Pattern::Nose, 0.50), (Pattern::Wide, 0.30)]),
        Sign::new(&[Piston, Bore], Side::Any, Tag::LooksEven, 0.65, Slight),
        Sign::new(&[Piston, Bore], Side::Any, Tag::Scoring, 0.10, Slight),
        Sign::size(&[MainJournal, Crankpin], Fault::Worn, 0.20),
        Sign::size(&[MainJournal, Crankpin], Fault::Loose, 0.20),
        Sign::size(&[MainJournal, Crankpin], Fault::OutOfRound, 0.03),
        Sign::size(&[Bore], Fault::Worn, 0.30),
        Sign::size(&[Bore], Fault::Tapered, 0.25),
        Sign::size(&[Piston], Fault::Loose, 0.20),
        Sign::size(&[Lobe], Fault::Worn, 0.10),
        Sign::size(&[Piston], Fault::WideGroove, 0.07),
        Sign::size(&[Rings], Fault::ThinRing, 0.06),
    ],
    check: &[todo(
        "measure-everything",
        "Measure everything against the wear limits of the engine's manual: even wear can still be too much wear.",
    )],
    put_right: &[todo("renew-worn", "Renew what is renewed at every overhaul, and machine what is beyond its limit.")],
    source: "Pattern: a reconditioner's printed chart (uniform over about two thirds of the surface, fading towards the parting lines). Prior and chances: our judgement.",
};
