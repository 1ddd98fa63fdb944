//! Cavitation.

use super::prelude::*;

/// Vapour bubbles have eaten sharp-edged pits, mostly into the unloaded halves near grooves and oil holes; positions of
/// one kind are alike.
pub(super) const CAUSE: Cause = Cause {
    id: "cavitation",
    name: "cavitation",
    plainly: "Vapour bubbles in the oil film have eaten pits into the bearings.",
    prior: 0.015,
    reach: &[],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::WorkedHard, 1.3)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::Pitting, 0.60, Middling).at(&[
            (Pattern::Spot, 0.40),
            (Pattern::Crown, 0.15),
            (Pattern::Band, 0.15),
        ]),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::LiningLoss, 0.15, Middling).at(&[(Pattern::Spot, 0.40)]),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Pitting, 0.10, Slight).at(&[(Pattern::Spot, 0.40)]),
    ],
    check: &[
        todo("check-for-foam", "Check the oil for foaming: level, pick-up, a leak on the suction side."),
        todo("check-clearances", "Check running clearances: much clearance makes it worse."),
        todo("ask-overspeed", "Ask for overspeed and vibration."),
    ],
    put_right: &[todo(
        "mend-suction",
        "Put right level and suction, and fit the shells that the maker names for this engine.",
    )],
    source: "Pattern: Neale, The Tribology Handbook, plain bearing failures (cavitation erosion: isolated areas, sometimes associated with grooves); an oil-analysis guide's page on bearing wear (often the unloaded half). Prior and chances: our judgement.",
};
