//! Broken ring, clip or loose pin.

use super::prelude::*;

/// Deep scoring in one cylinder only.
pub(super) const CAUSE: Cause = Cause {
    id: "broken-ring",
    name: "broken ring, clip or loose {piston-pin}",
    plainly: "A broken ring or a loose pin has scored its cylinder deeply.",
    prior: 0.02,
    reach: &[PlaceKind::Rod],
    mirror: Mirror::None,
    fits: any,
    shifts: &[],
    signs: &[
        Sign::new(&[Bore], Side::Any, Tag::Scoring, 0.88, Severe).at(&[
            (Pattern::OneSide, 0.35),
            (Pattern::Wide, 0.25),
            (Pattern::Askew, 0.20),
        ]),
        Sign::new(&[Piston], Side::Any, Tag::Scoring, 0.60, Severe).at(&[
            (Pattern::Lands, 0.25),
            (Pattern::OneSide, 0.25),
            (Pattern::Pins, 0.20),
        ]),
        Sign::new(&[Rings], Side::Any, Tag::Cracks, 0.60, Severe),
    ],
    check: &[todo("look-for-piece", "Look for the missing piece: ring, clip, pin plug.")],
    put_right: &[todo("find-every-piece", "Find every piece before the engine is closed; renew clips and rings.")],
    source: "Pattern: textbook on automotive mechanics (deep scoring in one cylinder: broken ring, clip or loose pin). Prior and chances: our judgement.",
};
