//! Tappet stuck by varnish or dirt.

use super::prelude::*;

/// A hydraulic plunger that does not move: varnish, or a chip under its valve.
pub(super) const CAUSE: Cause = Cause {
    id: "stuck-tappet",
    name: "hydraulic {tappet} stuck by varnish or dirt",
    plainly: "A hydraulic {tappet} has stuck, by varnish or by dirt.",
    prior: 0.06,
    reach: &[PlaceKind::Valve],
    mirror: Mirror::None,
    fits: |arrangement| matches!(arrangement.tappets, Tappets::FlatHydraulic | Tappets::RollerHydraulic),
    shifts: &[(HistoryFact::NeglectedOil, 3.0), (HistoryFact::LongStorage, 2.0)],
    signs: &[
        Sign::new(&[Tappet], Side::Any, Tag::StuckPlunger, 0.88, Middling).at(&[(Pattern::Plunger, 0.75)]),
        Sign::new(&[Tappet], Side::Any, Tag::Deposits, 0.60, Middling)
            .at(&[(Pattern::Plunger, 0.45), (Pattern::Body, 0.25)]),
    ],
    check: &[
        todo("take-tappet-apart", "Take the {tappet} apart and look under its valve."),
        todo("check-oil-ways", "Check the oil galleries to the {tappets}."),
    ],
    put_right: &[todo("clean-tappets", "Clean each {tappet} by itself, without exchanging its pieces, or renew it.")],
    source: "Pattern: TM 5-4210-230-14&P-1; NAVEDTRA 14076 (resinous deposits, abrasive particles, stuck or scored check valve). Prior and chances: our judgement.",
};
