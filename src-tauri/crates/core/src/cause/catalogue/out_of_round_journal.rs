//! Out-of-round journal.

use super::prelude::*;

/// A journal out of round pounds its bearing: fatigue on both halves, oil leaks away.
pub(super) const CAUSE: Cause = Cause {
    id: "out-of-round-journal",
    name: "journal out of round",
    plainly: "A journal is no longer round and has been pounding its bearing.",
    prior: 0.015,
    reach: &[PlaceKind::Main, PlaceKind::Crankpin],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::WorkedHard, 1.5)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::FatigueCracks, 0.30, Middling).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::CopperShowing, 0.30, Slight).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::HotSpot, 0.12, Slight).at(UNDER_LOAD),
        Sign::size(&[MainJournal, Crankpin], Fault::OutOfRound, 0.92),
    ],
    check: &[todo("measure-journal", "Measure the journal in two directions at both ends.").on(&[Crankshaft])],
    put_right: &[todo("grind-journals", "Have the journals ground true.").on(&[Crankshaft])],
    source: "Pattern: NAVEDTRA 14075 (out-of-round journals: pounding, oil leakage, overheating). Prior and chances: our judgement.",
};
