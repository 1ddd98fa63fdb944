//! Dirt behind a shell.

use super::prelude::*;

/// A particle caught between shell and housing: one spot of the running face is pushed up and worn, and the back bears a
/// mark right behind it. One shell only.
pub(super) const CAUSE: Cause = Cause {
    id: "dirt-behind-shell",
    name: "dirt behind a shell",
    plainly: "A particle was trapped behind a bearing shell when it was fitted and pushed it out of shape.",
    prior: 0.02,
    reach: &[PlaceKind::Main, PlaceKind::Rod],
    mirror: Mirror::Halves,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 2.5)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Upper, Tag::CopperShowing, 0.55, Middling)
            .at(&[(Pattern::Spot, 0.55), (Pattern::Through, 0.30)]),
        Sign::new(&[MainShell, RodShell], Side::Upper, Tag::HotSpot, 0.40, Middling)
            .at(&[(Pattern::Spot, 0.50), (Pattern::Through, 0.35)]),
        Sign::new(&[MainShell, RodShell], Side::Upper, Tag::Wiping, 0.15, Middling)
            .at(&[(Pattern::Spot, 0.60), (Pattern::Through, 0.20)]),
        Sign::new(&[MainShell, RodShell], Side::Upper, Tag::FatigueCracks, 0.12, Middling)
            .at(&[(Pattern::Spot, 0.60), (Pattern::Through, 0.20)]),
        Sign::new(&[MainShell, RodShell], Side::Upper, Tag::EmbeddedDebris, 0.45, Middling)
            .at(&[(Pattern::Back, 0.75), (Pattern::Through, 0.15)]),
        Sign::new(&[MainShell, RodShell], Side::Upper, Tag::BrightBack, 0.25, Slight)
            .at(&[(Pattern::Back, 0.60), (Pattern::Through, 0.30)]),
    ],
    check: &[todo("look-for-dent", "Look at the housing for the dent that the particle left.")],
    put_right: &[todo(
        "clean-housings",
        "Clean housings and backs of shells with a lint-free cloth, dry, right before they are fitted.",
    )],
    source: "Pattern: an oil-analysis guide's page on bearing wear (particles between bearing and bore make a hot spot); bearing makers' guides, from memory. Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement (misassembly, shared out). Chances: our judgement.",
};
