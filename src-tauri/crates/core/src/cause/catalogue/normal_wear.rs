//! Normal wear.

use super::Severity::{Middling, Slight};
use super::{Cause, Side, Sign};
use crate::engine::PartKind::*;
use crate::job::HistoryFact;
use crate::wear::Tag;

/// A long life: an even pattern over about two thirds of the surface, fading towards the parting lines.
pub(super) const CAUSE: Cause = Cause {
    id: "normal-wear",
    name: "normal wear",
    plainly: "The engine is worn by long ordinary use.",
    prior: 0.50,
    shifts: &[(HistoryFact::RecentRebuild, 0.2)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::LooksEven, 0.75, Middling),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::Scoring, 0.20, Slight),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::CopperShowing, 0.12, Slight),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::LooksEven, 0.75, Slight),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Scoring, 0.15, Slight),
        Sign::new(&[Tappet, Lobe], Side::Any, Tag::LooksEven, 0.70, Slight),
        Sign::new(&[Lobe], Side::Any, Tag::WornNose, 0.15, Slight),
        Sign::new(&[Piston, Bore], Side::Any, Tag::LooksEven, 0.65, Slight),
        Sign::new(&[Piston, Bore], Side::Any, Tag::Scoring, 0.10, Slight),
    ],
    check: &[
        "Measure everything against the wear limits of the engine's manual: even wear can still be too much wear.",
    ],
    source: "Pattern: common practice (uniform over about two thirds of the surface). Prior and chances: our judgement.",
};
