//! Bond failure.

use super::prelude::*;

/// The lining has come away cleanly from its steel back, in patches.
pub(super) const CAUSE: Cause = Cause {
    id: "bond-failure",
    name: "lining not bonded to its back",
    plainly: "The bearing metal has come off its steel back: a fault of the bearing itself.",
    prior: 0.010,
    reach: &[PlaceKind::Main, PlaceKind::Rod],
    mirror: Mirror::Halves,
    fits: any,
    shifts: &[],
    signs: &[Sign::new(&[MainShell, RodShell], Side::Upper, Tag::LiningLoss, 0.75, Severe)
        .at(&[(Pattern::Wide, 0.35), (Pattern::Spot, 0.30)])],
    check: &[todo(
        "look-at-bare-patches",
        "Look at the bare patches: clean steel without remains of lining, and no net of cracks around.",
    )],
    put_right: &[todo("fit-other-make", "Fit shells of another make or batch.")],
    source: "Pattern: NAVEDTRA 14075 and a US marine-engineer examination item (clean separation from the backing). Prior and chances: our judgement.",
};
