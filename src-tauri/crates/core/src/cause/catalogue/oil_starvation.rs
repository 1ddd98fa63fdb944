//! Oil starvation.

use super::Severity::{Middling, Severe, Slight};
use super::{Cause, Side, Sign};
use crate::engine::PartKind::*;
use crate::job::HistoryFact;
use crate::wear::Tag;

/// Too little oil: streaked and smeared lining on the loaded halves, heat, pick-up on the journals.
pub(super) const CAUSE: Cause = Cause {
    id: "oil-starvation",
    name: "oil starvation",
    plainly: "The bearings have run short of oil, so metal touched metal.",
    prior: 0.07,
    shifts: &[(HistoryFact::LowOilPressure, 5.0), (HistoryFact::NeglectedOil, 1.5)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Wiping, 0.65, Severe),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::HotSpot, 0.45, Middling),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::CopperShowing, 0.45, Middling),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Scoring, 0.35, Middling),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Seizure, 0.12, Severe),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::Wiping, 0.12, Slight),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::HotSpot, 0.35, Middling),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Scoring, 0.30, Middling),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Seizure, 0.12, Severe),
        Sign::new(&[ThrustFace, CamBearing], Side::Any, Tag::Wiping, 0.25, Middling),
        Sign::new(&[Piston, Bore], Side::Any, Tag::Scuffing, 0.35, Middling),
        Sign::new(&[Lobe], Side::Any, Tag::WornNose, 0.20, Middling),
        Sign::new(&[Tappet, Lobe], Side::Any, Tag::Scuffing, 0.20, Slight),
    ],
    check: &[
        "Check the oil pump's clearances, its relief valve and its drive.",
        "Check the pick-up and its pipe for blockage and for drawing air.",
        "Blow through every oil way and make sure that each shell's hole meets its oil way.",
        "Ask how low the oil level was and what the pressure gauge showed.",
    ],
    source: "Pattern: Neale, The Tribology Handbook, plain bearing failures (wiping); common practice. Prior: published shares of premature bearing failure (common practice), scaled: our judgement. Chances: our judgement.",
};
