//! Oil starvation.

use super::prelude::*;

/// Too little oil: streaked and smeared lining at the centre of the loaded halves, heat, pick-up on the journals; worst
/// where the oil comes last, if it is known at which end it comes first.
pub(super) const CAUSE: Cause = Cause {
    id: "oil-starvation",
    name: "oil starvation",
    plainly: "The bearings have run short of oil, so metal touched metal.",
    prior: 0.07,
    reach: &[],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::LowOilPressure, 5.0), (HistoryFact::NeglectedOil, 1.5)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::LoadedFarWorst, Tag::Wiping, 0.65, Severe).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::LoadedFarWorst, Tag::HotSpot, 0.45, Severe).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::LoadedFarWorst, Tag::CopperShowing, 0.40, Middling).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Scoring, 0.30, Middling).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::LoadedFarWorst, Tag::Seizure, 0.20, Severe).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::Wiping, 0.30, Middling).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::HotSpot, 0.25, Severe).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::Seizure, 0.15, Severe).at(ALL_OVER),
        Sign::new(&[Rod], Side::Any, Tag::HotSpot, 0.20, Middling),
        Sign::new(&[MainJournal, Crankpin], Side::AnyFarWorst, Tag::HotSpot, 0.35, Severe).at(ALL_OVER),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Scoring, 0.30, Middling).at(ALL_OVER),
        Sign::new(&[MainJournal, Crankpin], Side::AnyFarWorst, Tag::Seizure, 0.20, Severe).at(ALL_OVER),
        Sign::new(&[ThrustFace, CamBearing], Side::Any, Tag::Wiping, 0.25, Middling),
        Sign::new(&[Piston], Side::Any, Tag::Scuffing, 0.35, Middling)
            .at(&[(Pattern::Skirts, 0.50), (Pattern::Wide, 0.20)]),
        Sign::new(&[Bore], Side::Any, Tag::Scuffing, 0.35, Middling)
            .at(&[(Pattern::Wide, 0.30), (Pattern::OneSide, 0.30)]),
        Sign::new(&[Lobe], Side::Any, Tag::WornNose, 0.20, Middling)
            .at(&[(Pattern::Nose, 0.50), (Pattern::Wide, 0.30)]),
        Sign::new(&[Tappet, Lobe], Side::Any, Tag::Scuffing, 0.20, Slight),
        Sign::new(&[OilPump], Side::Any, Tag::Scoring, 0.15, Middling),
        Sign::new(&[OilPump], Side::Any, Tag::Deposits, 0.20, Middling),
        Sign::new(&[OilPickup], Side::Any, Tag::Deposits, 0.25, Severe),
    ],
    check: &[
        todo("check-oil-pump", "Check the oil pump's clearances, its relief valve and its drive."),
        todo("check-pick-up", "Check the pick-up and its pipe for blockage and for drawing air."),
        todo("ask-oil-level", "Ask how low the oil level was and what the pressure gauge showed."),
    ],
    put_right: &[
        todo(
            "blow-oil-ways",
            "Blow through every oil gallery and make sure that each shell's hole meets its oil gallery.",
        )
        .on(&[Block, Crankshaft]),
        todo("prime-oil", "Prime the oil system before the first start and watch the pressure."),
    ],
    source: "Pattern: Neale, The Tribology Handbook, plain bearing failures (wiping); a reconditioner's printed chart (streaked and smeared, worst at the centre of the loaded shell, pick-up on the journal). Whole thrust surfaces of pistons marked when oil is short: textbook. Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement. Those farthest from the pump worst: from memory. Chances: our judgement.",
};
