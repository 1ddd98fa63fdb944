//! Tapered journal.

use super::prelude::*;

/// The journal is thicker at one end: the same edge of both shells is worn, at that journal only.
pub(super) const CAUSE: Cause = Cause {
    id: "tapered-journal",
    name: "tapered journal",
    plainly: "A journal is thicker at one end, so the bearing carried on one edge.",
    prior: 0.02,
    reach: &[PlaceKind::Main, PlaceKind::Crankpin],
    mirror: Mirror::Ends,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 2.0)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::CopperShowing, 0.65, Middling).at(&[(Pattern::Front, 0.88)]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::Wiping, 0.35, Middling).at(&[(Pattern::Front, 0.88)]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::FatigueCracks, 0.12, Slight).at(&[(Pattern::Front, 0.88)]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::Scoring, 0.12, Slight).at(&[(Pattern::Front, 0.70)]),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Scoring, 0.12, Slight).at(&[(Pattern::Front, 0.70)]),
        Sign::size(&[MainJournal, Crankpin], Fault::Tapered, 0.90),
    ],
    check: &[todo("measure-journal", "Measure the journal at both ends, in two directions.").on(&[Crankshaft])],
    put_right: &[todo("grind-journals", "Have the journals ground true.").on(&[Crankshaft])],
    source: "Pattern: a vehicle maker's inspection page (one edge worn: journal tapered or bearing not seated). Prior and chances: our judgement.",
};
