//! Dirt in the oil.

use super::prelude::*;

/// Hard particles carried round by the oil: fine scratches in the direction of movement, embedded particles with bright
/// rings, on many bearings at once.
pub(super) const CAUSE: Cause = Cause {
    id: "dirt-in-oil",
    name: "dirt in the oil",
    plainly: "Hard particles in the oil have scratched the bearings and shafts.",
    prior: 0.27,
    reach: &[],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::NeglectedOil, 2.5), (HistoryFact::RecentRebuild, 1.5)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Scoring, 0.75, Middling).at(CARRIED_UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::Scoring, 0.35, Slight).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::EmbeddedDebris, 0.65, Middling).at(CARRIED_UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::EmbeddedDebris, 0.30, Slight).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::CopperShowing, 0.18, Slight).at(UNDER_LOAD),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Scoring, 0.40, Slight).at(ALL_OVER),
        Sign::new(&[ThrustFace], Side::Any, Tag::Scoring, 0.30, Slight),
        Sign::new(&[ThrustFace], Side::Any, Tag::EmbeddedDebris, 0.25, Slight),
        Sign::new(&[CamBearing], Side::Any, Tag::Scoring, 0.40, Slight),
        Sign::new(&[CamBearing], Side::Any, Tag::EmbeddedDebris, 0.35, Slight),
        Sign::new(&[OilPump], Side::Any, Tag::Scoring, 0.60, Middling),
        Sign::new(&[OilPump], Side::Any, Tag::EmbeddedDebris, 0.20, Slight),
        Sign::new(&[OilPickup], Side::Any, Tag::EmbeddedDebris, 0.35, Slight),
        Sign::new(&[CamJournal], Side::Any, Tag::Scoring, 0.30, Slight).at(ALL_OVER),
        Sign::new(&[Piston, Bore], Side::Any, Tag::Scoring, 0.22, Slight),
        Sign::new(&[Tappet, Lobe], Side::Any, Tag::Scoring, 0.12, Slight),
        Sign::new(&[Tappet], Side::Any, Tag::StuckPlunger, 0.06, Slight),
        Sign::size(&[MainJournal, Crankpin], Fault::Worn, 0.25),
        Sign::size(&[MainJournal, Crankpin], Fault::Loose, 0.25),
    ],
    check: &[
        todo("cut-filter", "Cut the oil filter open and look at what it held; check its by-pass valve.")
            .looking_at(&[OilFilter]),
        todo("measure-oil-pump", "Take the oil pump apart and measure it."),
        todo(
            "look-for-way-in",
            "Look for the way in: air cleaner, breather, filler, an earlier repair that was not washed out.",
        )
        .looking_at(&[AirCleaner, Breather, OilFiller]),
    ],
    put_right: &[
        todo("flush-oil-ways", "Open every oil gallery of block and crankshaft, brush and flush it.")
            .on(&[Block, Crankshaft]),
        todo("flush-cooler", "Flush or renew the oil cooler and the lines."),
        todo("remove-particles", "Remove particles that are pressed into the journals before new shells go in.")
            .on(&[Crankshaft]),
    ],
    source: "Pattern: Neale, The Tribology Handbook, plain bearing failures (foreign matter: fine score marks in the direction of motion, embedded particles with haloes). Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement. Chances: our judgement.",
};
