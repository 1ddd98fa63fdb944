//! What the mechanic of the story saw, in strip-down order.

use wearbook_core::wear::Grade;
use wearbook_core::wear::Tag::{
    self, Bent, BrightBack, CopperShowing, Deposits, DishedFace, EmbeddedDebris, Grit, LooksEven, Missing, Pitting,
    Rust, Scoring, Scuffing, SoftFlakes, StuckPlunger, Thickened, Torn, WornNose,
};
use wearbook_core::wear::Zone::{
    self, Back, FootCentre, FootRing, FrontCrown, JournalFront, JournalMiddle, MiddleCrown, MiddleLeft, MiddleThrust,
    Nose, RearCrown, ThrustSkirt, TopThrust,
};

/// One look at one part.
pub(super) struct Observation {
    pub(super) part: &'static str,
    pub(super) seen: Seen,
    pub(super) photo: bool,
    pub(super) note: &'static str,
}

/// What was seen.
pub(super) enum Seen {
    /// Nothing wrong.
    Clean,
    /// These tags.
    Tags(&'static [(Tag, Grade, &'static [Zone])]),
}

const G1: Grade = Grade::ONE;
const G2: Grade = Grade::TWO;
const G3: Grade = Grade::THREE;
const G4: Grade = Grade::FOUR;

const fn clean(part: &'static str) -> Observation {
    Observation { part, seen: Seen::Clean, photo: false, note: "" }
}

const fn tagged(part: &'static str, tags: &'static [(Tag, Grade, &'static [Zone])]) -> Observation {
    Observation { part, seen: Seen::Tags(tags), photo: false, note: "" }
}

impl Observation {
    const fn photographed(self) -> Self {
        Self { photo: true, ..self }
    }

    const fn noted(self, note: &'static str) -> Self {
        Self { note, ..self }
    }
}

/// Before the engine was opened, and the sump as it came off.
pub(super) const OUTSIDE: &[Observation] = &[
    tagged("engine-oil", &[(Thickened, G2, &[]), (Grit, G1, &[])]),
    tagged("oil-filter", &[(Grit, G3, &[]), (SoftFlakes, G2, &[])]).noted("Wood dust in every fold."),
    clean("coolant"),
    tagged("air-cleaner", &[(Torn, G3, &[]), (Grit, G2, &[])])
        .noted("The element is split along a fold; dust in the duct behind it."),
    tagged("oil-filler", &[(Missing, G4, &[]), (Grit, G2, &[])]).noted("No lid; dust round the neck."),
    tagged("sump", &[(Grit, G2, &[]), (SoftFlakes, G1, &[])]),
];

pub(super) const OBSERVATIONS: &[Observation] = &[
    clean("head-bolts"),
    clean("pushrod.1.intake.1"),
    clean("pushrod.1.exhaust.1"),
    clean("pushrod.2.intake.1"),
    clean("pushrod.2.exhaust.1"),
    tagged("pushrod.3.intake.1", &[(Deposits, G2, &[])]),
    clean("pushrod.3.exhaust.1"),
    clean("pushrod.4.intake.1"),
    clean("pushrod.4.exhaust.1"),
    tagged("oil-pump", &[(Scoring, G2, &[]), (EmbeddedDebris, G2, &[])]).noted("Gritty paste behind the relief valve."),
    tagged("oil-pickup", &[(EmbeddedDebris, G2, &[])]).noted("Wood dust and bright flakes in the strainer."),
    clean("timing-drive"),
    clean("auxiliary-drive"),
    // Rod by rod.
    tagged("rod-shell.1.lower", &[(Scoring, G1, &[MiddleCrown])]),
    tagged("rod-shell.1.upper", &[(Scoring, G2, &[MiddleCrown, FrontCrown]), (EmbeddedDebris, G2, &[MiddleCrown])])
        .photographed(),
    clean("rod.1"),
    tagged("piston.1", &[(LooksEven, G2, &[ThrustSkirt])]),
    clean("rod-shell.2.lower"),
    tagged(
        "rod-shell.2.upper",
        &[
            (Scoring, G3, &[FrontCrown, MiddleCrown, RearCrown]),
            (CopperShowing, G2, &[MiddleCrown]),
            (EmbeddedDebris, G2, &[RearCrown]),
        ],
    )
    .photographed()
    .noted("The worst of the rod shells. This is the knock."),
    clean("rod.2"),
    tagged("piston.2", &[(Scoring, G1, &[ThrustSkirt])]),
    tagged("rod-shell.3.lower", &[(Scoring, G1, &[MiddleCrown])]),
    tagged("rod-shell.3.upper", &[(Scoring, G2, &[MiddleCrown]), (EmbeddedDebris, G1, &[MiddleCrown])]).photographed(),
    clean("rod.3"),
    tagged("piston.3", &[(Scuffing, G3, &[ThrustSkirt])]).photographed(),
    tagged("rod-shell.4.lower", &[(Scoring, G1, &[FrontCrown])]),
    tagged(
        "rod-shell.4.upper",
        &[
            (Scoring, G3, &[FrontCrown, MiddleCrown]),
            (EmbeddedDebris, G3, &[MiddleCrown, RearCrown]),
            (CopperShowing, G2, &[FrontCrown]),
        ],
    )
    .photographed(),
    clean("rod.4"),
    tagged("piston.4", &[(LooksEven, G2, &[ThrustSkirt])]),
    tagged("rod-bolts", &[(Bent, G2, &[])]).noted("Two are longer than the others."),
    clean("main-cap-bolts"),
    // Main caps.
    tagged("main-shell.1.lower", &[(Scoring, G2, &[MiddleCrown]), (EmbeddedDebris, G2, &[FrontCrown])]).photographed(),
    tagged("main-shell.2.lower", &[(Scoring, G2, &[MiddleCrown, RearCrown]), (EmbeddedDebris, G2, &[MiddleCrown])])
        .photographed(),
    tagged(
        "main-shell.3.lower",
        &[
            (Scoring, G3, &[FrontCrown, MiddleCrown, RearCrown]),
            (CopperShowing, G3, &[MiddleCrown, RearCrown]),
            (EmbeddedDebris, G2, &[MiddleLeft]),
        ],
    )
    .photographed(),
    tagged("main-shell.4.lower", &[(Scoring, G2, &[MiddleCrown]), (CopperShowing, G1, &[MiddleCrown])]).photographed(),
    tagged("main-shell.5.lower", &[(Scoring, G1, &[MiddleCrown])]),
    clean("crankshaft"),
    clean("main-shell.1.upper"),
    tagged("main-shell.2.upper", &[(Scoring, G1, &[MiddleCrown])]),
    tagged("main-shell.3.upper", &[(EmbeddedDebris, G1, &[MiddleCrown]), (BrightBack, G1, &[Back])]).photographed(),
    clean("main-shell.4.upper"),
    clean("thrust-face.front"),
    tagged("thrust-face.rear", &[(LooksEven, G1, &[])]),
    tagged("main-journal.1", &[(LooksEven, G1, &[])]),
    tagged("main-journal.2", &[(Scoring, G1, &[JournalMiddle])]),
    tagged("main-journal.3", &[(Scoring, G2, &[JournalMiddle, JournalFront])]).photographed(),
    tagged("main-journal.4", &[(LooksEven, G1, &[])]),
    tagged("crankpin.1", &[(Scoring, G1, &[JournalMiddle])]),
    tagged("crankpin.2", &[(Scoring, G3, &[JournalFront, JournalMiddle])])
        .photographed()
        .noted("Catches the nail over half the width."),
    tagged("crankpin.3", &[(Scoring, G1, &[JournalMiddle])]),
    tagged("crankpin.4", &[(Scoring, G2, &[JournalMiddle])]),
    // Valve gear.
    tagged("tappet.1.intake.1", &[(Deposits, G2, &[])]),
    clean("tappet.1.exhaust.1"),
    tagged("tappet.2.intake.1", &[(DishedFace, G2, &[FootCentre, FootRing])]).photographed(),
    clean("tappet.2.exhaust.1"),
    tagged("tappet.3.intake.1", &[(Pitting, G1, &[FootRing])]).photographed(),
    tagged("tappet.3.exhaust.1", &[(StuckPlunger, G1, &[])]),
    clean("tappet.4.intake.1"),
    clean("tappet.4.exhaust.1"),
    tagged("lobe.1.intake.1", &[(LooksEven, G1, &[Nose])]),
    tagged("lobe.1.exhaust.1", &[(LooksEven, G1, &[Nose])]),
    tagged("lobe.2.intake.1", &[(WornNose, G2, &[Nose])]).photographed(),
    tagged("lobe.2.exhaust.1", &[(LooksEven, G1, &[Nose])]),
    tagged("lobe.3.intake.1", &[(Scoring, G1, &[Nose])]),
    clean("lobe.3.exhaust.1"),
    clean("lobe.4.intake.1"),
    tagged("cam-bearing.1.1", &[(Scoring, G1, &[])]),
    tagged("cam-bearing.1.2", &[(Scoring, G1, &[])]),
    // The bare block.
    tagged("bore.1", &[(LooksEven, G2, &[])]),
    tagged("bore.2", &[(LooksEven, G2, &[])]),
    tagged("bore.3", &[(Scoring, G2, &[TopThrust, MiddleThrust])]).photographed(),
    tagged("bore.4", &[(LooksEven, G2, &[])]),
    clean("housing-bore.1"),
    clean("housing-bore.2"),
    clean("housing-bore.3"),
    clean("housing-bore.4"),
    clean("housing-bore.5"),
    tagged("block", &[(Deposits, G2, &[])]).noted("Sludge with wood dust under the camshaft."),
    tagged("core-plugs", &[(Rust, G2, &[])]),
];
