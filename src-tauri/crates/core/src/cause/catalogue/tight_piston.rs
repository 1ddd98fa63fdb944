//! Too little clearance between piston and bore.

use super::prelude::*;

/// The piston was fitted too tight: it has seized on both sides of its skirt, over the width of the bore.
pub(super) const CAUSE: Cause = Cause {
    id: "tight-piston",
    name: "too little piston clearance",
    plainly: "A piston was too tight in its bore and has seized on both sides.",
    prior: 0.01,
    reach: &[PlaceKind::Rod],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 4.0)],
    signs: &[
        Sign::new(&[Piston], Side::Any, Tag::Seizure, 0.50, Severe)
            .at(&[(Pattern::Skirts, 0.65), (Pattern::Wide, 0.15)]),
        Sign::new(&[Piston], Side::Any, Tag::Scuffing, 0.50, Middling)
            .at(&[(Pattern::Skirts, 0.70), (Pattern::Wide, 0.10)]),
        Sign::new(&[Bore], Side::Any, Tag::Scuffing, 0.45, Middling).at(&[(Pattern::Wide, 0.70)]),
        Sign::new(&[Bore], Side::Any, Tag::Seizure, 0.30, Severe).at(&[(Pattern::Wide, 0.70)]),
        Sign::size(&[Piston], Fault::Tight, 0.70),
    ],
    check: &[todo("measure-piston-fit", "Measure the other pistons in their bores: a batch may be too tight.")],
    put_right: &[todo("fit-pistons", "Bore and hone each cylinder to its own piston, to the manual's clearance.")],
    source: "Pattern: a piston maker's guide (too little clearance marks both sides of the skirt; one side alone is failing oil or cooling). Prior and chances: our judgement.",
};
