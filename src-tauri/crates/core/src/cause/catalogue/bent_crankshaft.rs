//! Bent crankshaft.

use super::prelude::*;

/// Both halves of the complete set of mains are worn, more towards the centre.
pub(super) const CAUSE: Cause = Cause {
    id: "bent-crankshaft",
    name: "bent crankshaft",
    plainly: "The crankshaft is bent, so it rubbed on both halves of its bearings, hardest in the middle.",
    prior: 0.015,
    reach: &[],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 1.3)],
    signs: &[
        Sign::new(&[MainShell], Side::LoadedCentreWorst, Tag::CopperShowing, 0.75, Middling).at(UNDER_LOAD),
        Sign::new(&[MainShell], Side::UnloadedCentreWorst, Tag::CopperShowing, 0.70, Middling).at(UNDER_LOAD),
        Sign::new(&[MainShell], Side::LoadedCentreWorst, Tag::Wiping, 0.40, Middling).at(UNDER_LOAD),
        Sign::new(&[MainShell], Side::UnloadedCentreWorst, Tag::Wiping, 0.35, Middling).at(UNDER_LOAD),
        Sign::size(&[Crankshaft], Fault::Bent, 0.90),
        Sign::size(&[Crankshaft], Fault::RunsOut, 0.60),
        Sign::size(&[MainJournal], Fault::RunsOut, 0.70).on_side(Side::AnyCentreWorst),
    ],
    check: &[
        todo(
            "measure-bend",
            "Lay the crankshaft on V-blocks at its end mains: half of the indicator reading at the centre main is the bend.",
        ),
        todo("check-main-line", "Check the line of the main bores, to tell the two apart.").on(&[Block]),
        todo("test-for-cracks", "Have the crankshaft tested for cracks.").on(&[Crankshaft]),
    ],
    put_right: &[todo(
        "straighten-crankshaft",
        "Have the crankshaft straightened if its manual allows it, ground true or renewed.",
    )],
    source: "Pattern: from memory of printed trade guides (both halves of the complete set, centre greatest); measuring: TM 10-3930-653-14&P. Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement (misalignment, shared out). Chances: our judgement.",
};
