//! Tight piston pin.

use super::prelude::*;

/// The pin seized in its bosses or got no oil: marks beside the pin, at forty-five degrees to it.
pub(super) const CAUSE: Cause = Cause {
    id: "tight-pin",
    name: "{piston-pin} too tight or dry",
    plainly: "A {piston-pin} was too tight or ran dry, so the piston could not move freely.",
    prior: 0.008,
    reach: &[PlaceKind::Rod],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 2.0)],
    signs: &[
        Sign::new(&[Piston], Side::Any, Tag::Scuffing, 0.55, Middling).at(&[(Pattern::Pins, 0.80)]),
        Sign::new(&[Piston], Side::Any, Tag::Seizure, 0.45, Severe).at(&[(Pattern::Pins, 0.80)]),
    ],
    check: &[todo("check-pin-fit", "Check the fit of the pin in piston and rod, and the oil feed of the small end.")],
    put_right: &[todo("fit-pins", "Fit pins to the manual's clearance and oil them at assembly.")],
    source: "Pattern: a piston maker's guide (seizure at forty-five degrees beside the pin: fit too tight, small end dry). Prior and chances: our judgement.",
};
