//! Thrust overload, on either face.

use super::prelude::*;

/// The shaft was pushed hard against the front face; the other face is hardly touched.
pub(super) const FRONT_FACE: Cause = Cause {
    id: "thrust-overload-front",
    name: "thrust overload on the front face",
    signs: &signs(Side::FrontFace),
    ..REAR_FACE
};

/// The shaft was pushed hard against the rear face.
pub(super) const REAR_FACE: Cause = Cause {
    id: "thrust-overload-rear",
    name: "thrust overload on the rear face",
    plainly: "Something has pushed the crankshaft hard towards one end and worn its thrust bearing.",
    prior: 0.02,
    reach: &[PlaceKind::Thrust],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::RecentRebuild, 1.3)],
    signs: &signs(Side::RearFace),
    check: &[
        todo("check-clutch", "Check the clutch's free travel, or the converter's pressure and end clearance."),
        todo(
            "check-what-is-driven",
            "Check what is driven from either end for misalignment and for pushing on the shaft.",
        ),
        todo("check-thrust-faces", "Check the finish and squareness of the shaft's thrust faces.").on(&[Crankshaft]),
    ],
    put_right: &[todo(
        "mend-push",
        "Put right what pushes on the shaft, and check the {end-float} when the mains are tightened.",
    )],
    source: "Pattern: common practice (one face worn, the other nearly new; finish, misalignment, overload). Prior and chances: our judgement.",
};

const fn signs(side: Side) -> [Sign; 4] {
    [
        Sign::new(&[ThrustFace], side, Tag::Wiping, 0.60, Middling).at(&[(Pattern::Wide, 0.75)]),
        Sign::new(&[ThrustFace], side, Tag::Scoring, 0.45, Middling).at(&[(Pattern::Wide, 0.75)]),
        Sign::new(&[ThrustFace], side, Tag::CopperShowing, 0.45, Middling).at(&[(Pattern::Wide, 0.75)]),
        Sign::new(&[ThrustFace], side, Tag::HotSpot, 0.25, Middling).at(&[(Pattern::Wide, 0.75)]),
    ]
}
