//! Blocked oil drilling.

use super::prelude::*;

/// One bearing had no oil while its neighbours had: a wiped, overheated loaded half and a marked journal at one place.
pub(super) const CAUSE: Cause = Cause {
    id: "blocked-oil-way",
    name: "blocked oil drilling to one bearing",
    plainly: "One bearing got no oil: its oil drilling was blocked or its shell was fitted wrongly.",
    prior: 0.015,
    reach: &[PlaceKind::Main, PlaceKind::Crankpin],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::NeglectedOil, 1.5), (HistoryFact::RecentRebuild, 1.5)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Wiping, 0.75, Severe).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::HotSpot, 0.60, Severe).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::Wiping, 0.30, Middling).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::HotSpot, 0.35, Middling).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Seizure, 0.30, Severe).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::Seizure, 0.20, Severe).at(ALL_OVER),
        Sign::new(&[Rod], Side::Any, Tag::HotSpot, 0.30, Middling),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Scoring, 0.35, Middling).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::CopperShowing, 0.35, Middling).at(UNDER_LOAD),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::HotSpot, 0.55, Severe)
            .at(&[(Pattern::Wide, 0.50), (Pattern::OilHole, 0.20)]),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Scoring, 0.40, Middling).at(ALL_OVER),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Seizure, 0.30, Severe).at(ALL_OVER),
    ],
    check: &[
        todo("probe-oil-way", "Pass a wire through the oil drilling of this bearing, in the block and in the shaft.")
            .on(&[Block, Crankshaft]),
        todo("check-shell-holes", "Check that the holes of the shells meet the oil drilling."),
    ],
    put_right: &[
        todo("clean-oil-ways", "Open and clean every oil drilling, plugs out.").on(&[Block, Crankshaft]),
        todo("align-shell-holes", "Fit each shell with its hole over the oil drilling."),
    ],
    source: "Pattern: a reconditioner's printed chart (one journal: blocked passage or misplaced shell). Prior and chances: our judgement.",
};
