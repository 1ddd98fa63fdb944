//! Thrust cap out of line.

use super::prelude::*;

/// The two halves of the thrust main do not stand in one plane: only the upper or only the lower half of the faces
/// carries.
pub(super) const CAUSE: Cause = Cause {
    id: "thrust-cap-misaligned",
    name: "thrust bearing halves out of line",
    plainly: "The halves of the thrust bearing were not in line, so only one of them carried.",
    prior: 0.008,
    reach: &[PlaceKind::Thrust],
    mirror: Mirror::Halves,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 3.0)],
    signs: &[
        Sign::new(&[ThrustFace], Side::Any, Tag::CopperShowing, 0.55, Middling).at(&[(Pattern::Upper, 0.85)]),
        Sign::new(&[ThrustFace], Side::Any, Tag::Wiping, 0.50, Middling).at(&[(Pattern::Upper, 0.85)]),
        Sign::new(&[ThrustFace], Side::Any, Tag::Scoring, 0.35, Slight).at(&[(Pattern::Upper, 0.80)]),
        Sign::new(&[ThrustFace], Side::Any, Tag::HotSpot, 0.15, Slight).at(&[(Pattern::Upper, 0.80)]),
    ],
    check: &[todo("check-cap-lined-up", "Check how the thrust cap was lined up when it was tightened.")],
    put_right: &[todo(
        "line-up-faces",
        "Line the thrust faces up by moving the shaft to and fro before the cap is tightened.",
    )],
    source: "Pattern: a printed trade guide (only the upper or only the lower half of the flange carries). Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement (misassembly, shared out). Chances: our judgement.",
};
