//! Too little crush.

use super::prelude::*;

/// The shell was not held: its back is polished or fretted, it may have turned.
pub(super) const CAUSE: Cause = Cause {
    id: "insufficient-crush",
    name: "too little crush: the shell has moved",
    plainly: "A bearing shell was not held tight and has been moving in its seat.",
    prior: 0.02,
    reach: &[PlaceKind::Main, PlaceKind::Rod],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 1.5)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::BrightBack, 0.80, Middling).at(&[(Pattern::Back, 0.90)]),
        Sign::new(&[HousingBore, Rod], Side::Any, Tag::BrightBack, 0.55, Middling),
        Sign::new(&[HousingBore], Side::Any, Tag::Seizure, 0.12, Severe),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::HotSpot, 0.15, Middling).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::FatigueCracks, 0.08, Slight).at(ALL_OVER),
        Sign::size(&[HousingBore, Rod], Fault::OutOfRound, 0.15),
    ],
    check: &[
        todo("measure-housing", "Measure the housing bore with its cap tightened."),
        todo("check-bolts", "Check bolts and nuts for stretch, joint faces for dirt and burrs."),
    ],
    put_right: &[todo(
        "size-housing",
        "Have an oversize or damaged housing brought to size; renew the bolts; tighten to the manual's figure.",
    )],
    source: "Pattern: Neale, The Tribology Handbook, plain bearing failures (fretting); TM 55-1905-221-14-3, TM 5-4310-379-14 (bright spots on the back: it has been moving, discard). Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement (misassembly, shared out). Chances: our judgement.",
};
