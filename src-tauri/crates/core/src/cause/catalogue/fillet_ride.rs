//! Fillet ride.

use super::prelude::*;

/// The shell touches the radius at the end of the journal: narrow heavy wear along its extreme edges, rubbed fillets.
pub(super) const CAUSE: Cause = Cause {
    id: "fillet-ride",
    name: "shell riding on the fillet",
    plainly: "A shell was touching the rounded corner at the end of its journal.",
    prior: 0.015,
    reach: &[PlaceKind::Main, PlaceKind::Crankpin],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 3.0)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::CopperShowing, 0.45, Middling).at(&[
            (Pattern::Edges, 0.45),
            (Pattern::Front, 0.20),
            (Pattern::Rear, 0.20),
        ]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::Wiping, 0.50, Middling).at(&[
            (Pattern::Edges, 0.45),
            (Pattern::Front, 0.20),
            (Pattern::Rear, 0.20),
        ]),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::LiningLoss, 0.15, Middling).at(&[
            (Pattern::Edges, 0.45),
            (Pattern::Front, 0.20),
            (Pattern::Rear, 0.20),
        ]),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Scoring, 0.60, Middling).at(&[(Pattern::Fillet, 0.85)]),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::HotSpot, 0.25, Slight).at(&[(Pattern::Fillet, 0.85)]),
    ],
    check: &[
        todo("gauge-fillets", "Gauge the fillet radii against the manual.").on(&[Crankshaft]),
        todo("check-shell-width", "Check that the shells are the right width and have their chamfers."),
    ],
    put_right: &[todo("grind-fillets", "Have the fillets ground to the right radius.").on(&[Crankshaft])],
    source: "Pattern: from memory of bearing makers' guides (narrow excessive wear along the extreme edges, after grinding). Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement (misassembly, shared out). Chances: our judgement.",
};
