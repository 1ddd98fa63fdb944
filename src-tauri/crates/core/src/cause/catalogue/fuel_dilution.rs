//! Fuel in the oil.

use super::prelude::*;

/// Fuel has thinned the oil: worn and pitted loaded halves with a dark colour, pitted journals, bores washed dry.
pub(super) const CAUSE: Cause = Cause {
    id: "fuel-dilution",
    name: "fuel in the oil",
    plainly: "Fuel has thinned the oil, so it no longer kept the surfaces apart.",
    prior: 0.02,
    reach: &[],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::NeglectedOil, 1.5)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::CopperShowing, 0.50, Middling).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Corrosion, 0.45, Slight).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Pitting, 0.40, Slight).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Scoring, 0.08, Slight).at(UNDER_LOAD),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Pitting, 0.30, Slight).at(ALL_OVER),
        Sign::new(&[Bore], Side::Any, Tag::Scuffing, 0.35, Slight)
            .at(&[(Pattern::OneSide, 0.50), (Pattern::Wide, 0.20)]),
        Sign::new(&[Piston], Side::Any, Tag::Scuffing, 0.25, Slight)
            .at(&[(Pattern::OneSide, 0.50), (Pattern::Skirts, 0.20)]),
        Sign::size(&[MainJournal, Crankpin], Fault::Loose, 0.25),
        Sign::size(&[Bore], Fault::Worn, 0.30),
        Sign::size(&[Rings], Fault::ThinRing, 0.60),
        Sign::size(&[Piston], Fault::WideGroove, 0.03),
    ],
    check: &[
        todo("check-for-flooding", "Check carburettor or injectors, fuel pump and choke for flooding."),
        todo("analyse-oil", "Smell the oil and have it analysed."),
        todo("ask-cold-starts", "Ask about many cold starts and much idling."),
    ],
    put_right: &[
        todo("mend-fuel-system", "Put the fuel system right before the engine runs again.").of_way("fuel"),
        todo("change-oil", "Change oil and filter after the first warm run."),
    ],
    source: "Pattern: an oil-analysis guide's page on bearing wear (worn, pitted, dark green colouration, loaded area, journals may pit). Prior and chances: our judgement.",
};
