//! Poor journal finish.

use super::prelude::*;

/// Journals left rough by grinding have worn the shells thin: worn and polished, but neither smeared, torn nor scored; no
/// heat, no particles; every journal alike.
pub(super) const CAUSE: Cause = Cause {
    id: "poor-journal-finish",
    name: "rough journals after grinding",
    plainly: "The journals were left rough when they were ground, and have worn the bearings down like a fine file.",
    prior: 0.02,
    reach: &[],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 3.0)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::CopperShowing, 0.75, Middling).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::CopperShowing, 0.15, Slight).at(ALL_OVER),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Scoring, 0.20, Slight).at(ALL_OVER),
        Sign::size(&[MainJournal, Crankpin], Fault::Loose, 0.50),
    ],
    check: &[
        todo("look-at-journals", "Feel and look at the journals: grinding marks under the polish.").on(&[Crankshaft]),
        todo("ask-who-ground", "Ask who ground the shaft, when, and whether it was polished afterwards."),
    ],
    put_right: &[todo(
        "polish-journals",
        "Have every journal polished, in the direction of rotation, to the finish that the manual asks for.",
    )],
    source: "Pattern: a reconditioner's printed chart (wall thinned, worn and polished but not smeared, torn or scored; every journal of a fresh regrind). Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement. Chances: our judgement.",
};
