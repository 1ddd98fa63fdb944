//! Out-of-round housing bore.

use super::prelude::*;

/// A stretched rod or a distorted cap: the bore is oval, so the shell is pinched near both parting lines or at the
/// crown. Mostly rods.
pub(super) const CAUSE: Cause = Cause {
    id: "oval-housing",
    name: "housing bore out of round",
    plainly: "The seat of a bearing is no longer round, so the bearing was pinched.",
    prior: 0.012,
    reach: &[PlaceKind::Main, PlaceKind::Rod],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::WorkedHard, 1.5), (HistoryFact::RecentRebuild, 1.5)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::CopperShowing, 0.50, Middling)
            .at(&[(Pattern::Crown, 0.45), (Pattern::Partings, 0.40)]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::Wiping, 0.25, Middling)
            .at(&[(Pattern::Crown, 0.45), (Pattern::Partings, 0.40)]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::FatigueCracks, 0.12, Slight)
            .at(&[(Pattern::Crown, 0.45), (Pattern::Partings, 0.40)]),
        Sign::size(&[HousingBore, Rod], Fault::OutOfRound, 0.90),
    ],
    check: &[todo("measure-bore", "Measure the bore in two directions with its cap tightened.")],
    put_right: &[todo("size-bore", "Have the bore brought back to size and round, or renew the rod.")],
    source: "Pattern: a reconditioner's printed chart (narrow wear zone in the crown); from memory (near both parting lines). Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement (misassembly, shared out). Chances: our judgement.",
};
