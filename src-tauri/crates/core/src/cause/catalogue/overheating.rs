//! Overheating.

use super::prelude::*;

/// The engine ran too hot: temper colours on both halves, softened and torn lining, marked pistons.
pub(super) const CAUSE: Cause = Cause {
    id: "overheating",
    name: "overheating",
    plainly: "The engine has run too hot: parts are discoloured or softened by heat.",
    prior: 0.05,
    reach: &[],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::Overheated, 8.0)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::HotSpot, 0.50, Severe).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Wiping, 0.20, Severe).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::LiningLoss, 0.15, Severe).at(UNDER_LOAD),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::HotSpot, 0.35, Severe).at(ALL_OVER),
        Sign::new(&[Crankshaft, Rod], Side::Any, Tag::HotSpot, 0.25, Middling),
        Sign::new(&[Piston], Side::Any, Tag::Scuffing, 0.40, Middling)
            .at(&[(Pattern::Skirts, 0.45), (Pattern::Wide, 0.25)]),
        Sign::new(&[Bore], Side::Any, Tag::Scuffing, 0.35, Middling)
            .at(&[(Pattern::Wide, 0.40), (Pattern::OneSide, 0.20)]),
        Sign::new(&[Piston], Side::Any, Tag::Seizure, 0.20, Severe)
            .at(&[(Pattern::Skirts, 0.40), (Pattern::Wide, 0.30)]),
        Sign::new(&[Piston], Side::Any, Tag::HotSpot, 0.20, Middling),
        Sign::new(&[Rings], Side::Any, Tag::Scuffing, 0.20, Middling),
        Sign::new(&[Block], Side::Any, Tag::Cracks, 0.15, Middling),
    ],
    check: &[
        todo(
            "check-cooling",
            "Check the cooling system: pump, thermostat, radiator, belts and hoses, scale in the block.",
        ),
        todo("test-block-and-head", "Have the block and the head tested for cracks and flatness.").on(&[Block]),
        todo(
            "test-crankshaft",
            "Have the crankshaft tested for cracks and hardness: heat may have destroyed its heat treatment.",
        ),
    ],
    put_right: &[
        todo("mend-cooling", "Put right whatever made it run hot before it runs again."),
        todo("renew-crankshaft", "Renew a crankshaft that is discoloured by heat."),
    ],
    source: "Pattern: Neale, The Tribology Handbook, plain bearing failures (wiping, fatigue); a reconditioner's printed chart (lining melted, wiped, torn away); TM 9-4310-397-14 (a discoloured crankshaft is replaced). Prior and chances: our judgement.",
};
