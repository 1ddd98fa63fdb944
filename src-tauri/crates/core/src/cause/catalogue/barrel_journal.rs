//! Barrel journal.

use super::prelude::*;

/// The journal is thicker in the middle: a band in the middle of the width is worn.
pub(super) const CAUSE: Cause = Cause {
    id: "barrel-journal",
    name: "barrel-shaped journal",
    plainly: "A journal is thicker in the middle, so the bearing carried on a narrow band.",
    prior: 0.015,
    reach: &[PlaceKind::Main, PlaceKind::Crankpin],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 2.0)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::CopperShowing, 0.65, Middling).at(&[(Pattern::Band, 0.85)]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::Wiping, 0.35, Middling).at(&[(Pattern::Band, 0.85)]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::FatigueCracks, 0.12, Slight).at(&[(Pattern::Band, 0.80)]),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Scoring, 0.12, Slight).at(&[(Pattern::Band, 0.70)]),
        Sign::size(&[MainJournal, Crankpin], Fault::Barrel, 0.90),
    ],
    check: &[todo("measure-journal", "Measure the journal at both ends and in the middle.").on(&[Crankshaft])],
    put_right: &[todo("grind-journals", "Have the journals ground true.").on(&[Crankshaft])],
    source: "Pattern: from memory of bearing makers' guides (wear band in the centre of the width). Prior and chances: our judgement.",
};
