//! Main bores out of line.

use super::Severity::{Middling, Slight};
use super::{Cause, Side, Sign};
use crate::engine::PartKind::*;
use crate::job::HistoryFact;
use crate::wear::Tag;

/// A distorted crankcase: the complete set of mains is worn on one half, more towards the centre; the rods are not.
pub(super) const CAUSE: Cause = Cause {
    id: "misaligned-main-bores",
    name: "main bearing bores out of line",
    plainly: "The main bearing bores are out of line, so the shaft rubbed hardest in the middle of the engine.",
    prior: 0.06,
    shifts: &[(HistoryFact::Overheated, 2.0), (HistoryFact::RecentRebuild, 1.5)],
    signs: &[
        Sign::new(&[MainShell], Side::LoadedCentreWorst, Tag::CopperShowing, 0.75, Middling),
        Sign::new(&[MainShell], Side::LoadedCentreWorst, Tag::Wiping, 0.45, Middling),
        Sign::new(&[MainShell], Side::LoadedCentreWorst, Tag::HotSpot, 0.25, Slight),
        Sign::new(&[MainShell], Side::UnloadedCentreWorst, Tag::CopperShowing, 0.35, Slight),
        Sign::new(&[MainShell], Side::UnloadedCentreWorst, Tag::Wiping, 0.15, Slight),
        Sign::new(&[HousingBore], Side::Any, Tag::BrightBack, 0.15, Slight),
    ],
    check: &[
        "Check the line of the main bores with a straight-edge and feeler, or have them measured.",
        "Check the crankshaft for bend: half of the total indicator reading at the centre main.",
        "Make sure that every cap sits in its own place, the right way round.",
    ],
    source: "Pattern: from memory of printed trade guides (degree varies from bearing to bearing, centre main usually greatest). Prior: published shares (misalignment, common practice), scaled: our judgement. Chances: our judgement.",
};
