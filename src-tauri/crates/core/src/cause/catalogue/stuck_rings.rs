//! Rings stuck in their grooves.

use super::prelude::*;

/// Deposits hold the rings in their grooves: they no longer follow the wall, gas and oil pass.
pub(super) const CAUSE: Cause = Cause {
    id: "stuck-rings",
    name: "rings stuck in their grooves",
    plainly: "Burnt oil holds the rings of a piston fast, so that gas passes down and oil up.",
    prior: 0.05,
    reach: &[PlaceKind::Rod],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::NeglectedOil, 2.5), (HistoryFact::LongStorage, 1.5)],
    signs: &[
        Sign::new(&[Rings], Side::Any, Tag::Deposits, 0.80, Middling),
        Sign::new(&[Piston], Side::Any, Tag::Deposits, 0.55, Middling)
            .at(&[(Pattern::Lands, 0.75), (Pattern::Wide, 0.10)]),
        Sign::new(&[Bore], Side::Any, Tag::Scuffing, 0.12, Slight).at(&[(Pattern::Wide, 0.60)]),
    ],
    check: &[todo("measure-ring-grooves", "Measure groove clearance and ring gap once the grooves are clean.")],
    put_right: &[
        todo("clean-ring-grooves", "Clean ring grooves and oil return holes without cutting into the lands."),
        todo("find-what-burnt-it", "Find what burnt the oil: wrong or old oil, heat, rings without clearance."),
    ],
    source: "Pattern: NAVEDTRA 14075 (rings stick by wrong clearance, heat, the oil, or as they were fitted). Prior and chances: our judgement.",
};
