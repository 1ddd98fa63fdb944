//! Too much crush.

use super::prelude::*;

/// The halves were pressed together too far, as when a cap was filed: both bulge inwards next to both parting lines.
pub(super) const CAUSE: Cause = Cause {
    id: "excessive-crush",
    name: "too much crush",
    plainly: "The bearing halves were squeezed too hard, so they bulged inwards where they meet.",
    prior: 0.015,
    reach: &[PlaceKind::Main, PlaceKind::Rod],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 2.5)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::CopperShowing, 0.65, Middling)
            .at(&[(Pattern::Partings, 0.85)]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::Wiping, 0.45, Middling).at(&[(Pattern::Partings, 0.85)]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::Scoring, 0.15, Slight).at(&[(Pattern::Partings, 0.80)]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::HotSpot, 0.20, Slight).at(&[(Pattern::Partings, 0.80)]),
        Sign::size(&[MainJournal], Fault::Tight, 0.20),
    ],
    check: &[
        todo("look-for-filing", "Look at the cap's joint faces for filing."),
        todo("check-tightness", "Check how tight the cap was, and that the shells are the right ones."),
    ],
    put_right: &[todo(
        "size-housing",
        "Have the housing brought to size with a cap that has not been filed; tighten to the manual's figure.",
    )],
    source: "Pattern: from memory of bearing makers' guides (heavy wear next to one or both parting faces). Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement (misassembly, shared out). Chances: our judgement.",
};
