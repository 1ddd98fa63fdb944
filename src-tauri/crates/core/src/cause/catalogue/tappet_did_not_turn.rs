//! Tappet that did not turn.

use super::prelude::*;

/// The cam wiped the same line of the foot at every turn: a channel or hollow in the foot, a worn lobe.
pub(super) const CAUSE: Cause = Cause {
    id: "tappet-did-not-turn",
    name: "{tappet} that did not turn",
    plainly: "A {tappet} stopped turning, so the cam wore it and itself down.",
    prior: 0.06,
    reach: &[PlaceKind::Valve],
    mirror: Mirror::None,
    fits: |arrangement| arrangement.tappets.is_flat(),
    shifts: &[(HistoryFact::RecentRebuild, 1.5)],
    signs: &[
        Sign::new(&[Tappet], Side::Any, Tag::DishedFace, 0.80, Middling)
            .at(&[(Pattern::Centre, 0.35), (Pattern::Wide, 0.35)]),
        Sign::new(&[Tappet], Side::Any, Tag::Scuffing, 0.35, Middling)
            .at(&[(Pattern::Wide, 0.35), (Pattern::Rim, 0.20)]),
        Sign::new(&[Tappet], Side::Any, Tag::Scoring, 0.25, Middling),
        Sign::new(&[Lobe], Side::Any, Tag::WornNose, 0.70, Middling)
            .at(&[(Pattern::Nose, 0.55), (Pattern::Wide, 0.25)]),
        Sign::new(&[Lobe], Side::Any, Tag::Scuffing, 0.35, Middling)
            .at(&[(Pattern::Nose, 0.40), (Pattern::Wide, 0.20)]),
        Sign::size(&[Lobe], Fault::Worn, 0.70),
    ],
    check: &[
        todo("check-tappet-turns", "Check that the {tappet} turns freely in its bore and that its foot is crowned."),
        todo("check-taper-and-spring", "Check the lobe's taper and the spring's force.").on(&[Camshaft]),
    ],
    put_right: &[RENEW_CAMSHAFT],
    source: "Pattern: NAVEDTRA 14076 (shallow channel: the follower failed to revolve); an owners' club note (cupped face). Prior and chances: our judgement.",
};
