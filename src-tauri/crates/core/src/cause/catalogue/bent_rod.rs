//! Bent or twisted rod.

use super::prelude::*;

/// The rod stands askew on its pin: wear on opposite edges of the upper and the lower shell, a piston worn on one side.
pub(super) const CAUSE: Cause = Cause {
    id: "bent-rod",
    name: "bent or twisted rod",
    plainly: "A connecting rod is bent or twisted, so its bearing and piston run askew.",
    prior: 0.02,
    reach: &[PlaceKind::Rod],
    mirror: Mirror::Ends,
    fits: any,
    shifts: &[(HistoryFact::WorkedHard, 1.3)],
    signs: &[
        Sign::new(&[RodShell], Side::Upper, Tag::CopperShowing, 0.55, Middling).at(&[(Pattern::Front, 0.85)]),
        Sign::new(&[RodShell], Side::Lower, Tag::CopperShowing, 0.55, Middling).at(&[(Pattern::Rear, 0.85)]),
        Sign::new(&[RodShell], Side::Upper, Tag::FatigueCracks, 0.35, Middling).at(&[(Pattern::Front, 0.85)]),
        Sign::new(&[RodShell], Side::Lower, Tag::FatigueCracks, 0.35, Middling).at(&[(Pattern::Rear, 0.85)]),
        Sign::new(&[RodShell], Side::Upper, Tag::Wiping, 0.25, Middling).at(&[(Pattern::Front, 0.85)]),
        Sign::new(&[RodShell], Side::Lower, Tag::Wiping, 0.25, Middling).at(&[(Pattern::Rear, 0.85)]),
        Sign::new(&[RodShell], Side::Upper, Tag::Scoring, 0.30, Middling).at(&[(Pattern::Front, 0.85)]),
        Sign::new(&[RodShell], Side::Lower, Tag::Scoring, 0.30, Middling).at(&[(Pattern::Rear, 0.85)]),
        Sign::new(&[Piston], Side::Any, Tag::Scuffing, 0.50, Middling).at(&[
            (Pattern::OneSide, 0.50),
            (Pattern::Wide, 0.15),
            (Pattern::Pins, 0.10),
        ]),
        Sign::new(&[Piston], Side::Any, Tag::Scoring, 0.30, Middling).at(&[
            (Pattern::OneSide, 0.50),
            (Pattern::Wide, 0.15),
            (Pattern::Pins, 0.10),
        ]),
        Sign::new(&[Bore], Side::Any, Tag::Scuffing, 0.30, Middling).at(&[(Pattern::Askew, 0.65)]),
        Sign::size(&[Rod], Fault::Bent, 0.80),
        Sign::size(&[Rod], Fault::Twisted, 0.45),
    ],
    check: &[
        todo("check-rod", "Check the rod for bend and twist."),
        todo("ask-what-bent-it", "Ask for water in the cylinder, overspeed or a seized piston: they bend rods."),
    ],
    put_right: &[todo(
        "straighten-rod",
        "Have the rod straightened if its manual allows it, or renew it; check its {piston-pin} and bore.",
    )],
    source: "Pattern: NAVEDTRA 14075 (cracking at the opposite ends of the upper and the lower shell, heavy wear or scoring on the piston). Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement (misalignment, shared out). Chances: our judgement.",
};
