//! Main bores out of line.

use super::prelude::*;

/// A distorted crankcase: the complete set of mains is worn on one half, more towards the centre; the rods are not.
pub(super) const CAUSE: Cause = Cause {
    id: "misaligned-main-bores",
    name: "main bearing bores out of line",
    plainly: "The main bearing bores are out of line, so the shaft rubbed hardest in the middle of the engine.",
    prior: 0.04,
    reach: &[],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::Overheated, 2.0), (HistoryFact::RecentRebuild, 1.5)],
    signs: &[
        Sign::new(&[MainShell], Side::LoadedCentreWorst, Tag::CopperShowing, 0.75, Middling).at(UNDER_LOAD),
        Sign::new(&[MainShell], Side::LoadedCentreWorst, Tag::Wiping, 0.45, Middling).at(UNDER_LOAD),
        Sign::new(&[MainShell], Side::LoadedCentreWorst, Tag::HotSpot, 0.25, Slight).at(UNDER_LOAD),
        Sign::new(&[MainShell], Side::UnloadedCentreWorst, Tag::CopperShowing, 0.12, Slight).at(UNDER_LOAD),
        Sign::new(&[MainShell], Side::UnloadedCentreWorst, Tag::Wiping, 0.06, Slight).at(UNDER_LOAD),
        Sign::new(&[HousingBore], Side::Any, Tag::BrightBack, 0.15, Slight),
        Sign::size(&[Block], Fault::OutOfLine, 0.85),
        Sign::size(&[MainJournal], Fault::Loose, 0.25).on_side(Side::AnyCentreWorst),
    ],
    check: &[
        todo(
            "check-main-line",
            "Check the line of the main bores with a straight-edge and feeler, or have them measured.",
        )
        .on(&[Block]),
        todo("check-bend", "Check the crankshaft for bend, to tell the two apart.").on(&[Crankshaft]),
        todo("check-cap-places", "Make sure that every cap sits in its own place, the right way round."),
    ],
    put_right: &[todo("line-bore", "Have the main bores line-bored or honed before new shells go in.").on(&[Block])],
    source: "Pattern: from memory of printed trade guides (upper or lower halves of the complete set, degree varies from bearing to bearing, centre main usually greatest). Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement (misalignment, shared out between bores, crankshaft and rods). Chances: our judgement.",
};
