//! Shifted, reversed or swapped cap.

use super::prelude::*;

/// The cap is not where the bore was made: wear near the parting lines, on opposite sides of the upper and the lower half.
pub(super) const CAUSE: Cause = Cause {
    id: "shifted-cap",
    name: "shifted or reversed cap",
    plainly: "A bearing cap sat shifted, the wrong way round or in the wrong place.",
    prior: 0.015,
    reach: &[PlaceKind::Main, PlaceKind::Rod],
    mirror: Mirror::Sides,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 3.0)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Upper, Tag::CopperShowing, 0.60, Middling)
            .at(&[(Pattern::Left, 0.75), (Pattern::Spot, 0.08)]),
        Sign::new(&[MainShell, RodShell], Side::Lower, Tag::CopperShowing, 0.60, Middling)
            .at(&[(Pattern::Right, 0.75), (Pattern::Spot, 0.08)]),
        Sign::new(&[MainShell, RodShell], Side::Upper, Tag::Wiping, 0.35, Middling).at(&[(Pattern::Left, 0.75)]),
        Sign::new(&[MainShell, RodShell], Side::Lower, Tag::Wiping, 0.35, Middling).at(&[(Pattern::Right, 0.75)]),
        Sign::new(&[MainShell, RodShell], Side::Upper, Tag::FatigueCracks, 0.25, Middling).at(&[(Pattern::Left, 0.75)]),
        Sign::new(&[MainShell, RodShell], Side::Lower, Tag::FatigueCracks, 0.25, Middling)
            .at(&[(Pattern::Right, 0.75)]),
        Sign::new(&[MainShell, RodShell], Side::Upper, Tag::Scoring, 0.15, Slight).at(&[(Pattern::Left, 0.70)]),
        Sign::new(&[MainShell, RodShell], Side::Lower, Tag::Scoring, 0.15, Slight).at(&[(Pattern::Right, 0.70)]),
    ],
    check: &[
        todo("compare-cap-marks", "Compare the marks of cap and housing: number, side, direction."),
        todo("check-dowels", "Check dowels, locating faces and bolts for play, and whether the right socket has room."),
    ],
    put_right: &[todo(
        "place-caps",
        "Put every cap back in its own place and the right way round; have the bore measured with the cap tightened.",
    )],
    source: "Pattern: a reconditioner's printed chart (wear near the parting lines on opposite sides of both halves). Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement (misassembly, shared out). Chances: our judgement.",
};
