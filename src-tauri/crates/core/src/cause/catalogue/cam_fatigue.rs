//! Surface fatigue of cam and tappet.

use super::prelude::*;

/// The hardened surfaces break up: pits and flakes on the foot and on the nose of its lobe.
pub(super) const CAUSE: Cause = Cause {
    id: "cam-fatigue",
    name: "surface fatigue of cam and {tappet}",
    plainly: "The hardened face of a cam or {tappet} is breaking up.",
    prior: 0.04,
    reach: &[PlaceKind::Valve],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::WorkedHard, 1.3)],
    signs: &[
        Sign::new(&[Tappet], Side::Any, Tag::Spalling, 0.60, Middling).at(&[
            (Pattern::Ring, 0.35),
            (Pattern::Centre, 0.20),
            (Pattern::Wide, 0.20),
        ]),
        Sign::new(&[Tappet], Side::Any, Tag::Pitting, 0.60, Middling).at(&[
            (Pattern::Ring, 0.35),
            (Pattern::Centre, 0.20),
            (Pattern::Wide, 0.20),
        ]),
        Sign::new(&[Lobe], Side::Any, Tag::Spalling, 0.45, Middling).at(&[(Pattern::Nose, 0.70)]),
        Sign::new(&[Lobe], Side::Any, Tag::Pitting, 0.45, Middling).at(&[(Pattern::Nose, 0.70)]),
        Sign::size(&[Lobe], Fault::Worn, 0.20),
    ],
    check: &[
        todo("look-with-magnifier", "Look at the nose of each lobe and at each foot with a magnifier of ten times."),
        todo("check-springs", "Check spring forces and valve clearance."),
    ],
    put_right: &[RENEW_CAMSHAFT],
    source: "Pattern: NAVEDTRA 14076 (surface disintegration: fatigue of the hardened surface); an aircraft piston-engine overhaul manual (spalling or pitting rejects). Prior and chances: our judgement.",
};
