//! Hourglass journal.

use super::prelude::*;

/// The journal is thinner in the middle: both edges of both shells are worn.
pub(super) const CAUSE: Cause = Cause {
    id: "hourglass-journal",
    name: "hourglass-shaped journal",
    plainly: "A journal is thinner in the middle, so the bearing carried on its edges.",
    prior: 0.012,
    reach: &[PlaceKind::Main, PlaceKind::Crankpin],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 2.0)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::CopperShowing, 0.65, Middling).at(&[(Pattern::Edges, 0.85)]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::Wiping, 0.35, Middling).at(&[(Pattern::Edges, 0.85)]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::FatigueCracks, 0.12, Slight).at(&[(Pattern::Edges, 0.80)]),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Scoring, 0.12, Slight).at(&[(Pattern::Edges, 0.70)]),
        Sign::size(&[MainJournal, Crankpin], Fault::Hourglass, 0.90),
    ],
    check: &[todo("measure-journal", "Measure the journal at both ends and in the middle.").on(&[Crankshaft])],
    put_right: &[todo("grind-journals", "Have the journals ground true.").on(&[Crankshaft])],
    source: "Pattern: a vehicle maker's inspection page (both edges worn: journal damaged). Prior and chances: our judgement.",
};
