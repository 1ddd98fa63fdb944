//! Overload.

use super::prelude::*;

/// Too much load too often, lugging or detonation: fatigue of the loaded halves only, upper rod and lower main shells.
pub(super) const CAUSE: Cause = Cause {
    id: "overload",
    name: "overload or detonation",
    plainly: "The engine was worked too hard, or its firing was too hard: the loaded bearing halves are fatigued.",
    prior: 0.06,
    reach: &[],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::WorkedHard, 4.0)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::FatigueCracks, 0.60, Middling).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::LiningLoss, 0.35, Middling).at(UNDER_LOAD),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::CopperShowing, 0.30, Slight).at(UNDER_LOAD),
        Sign::new(&[Piston], Side::Any, Tag::Cracks, 0.10, Middling)
            .at(&[(Pattern::Lands, 0.40), (Pattern::Head, 0.30)]),
        Sign::new(&[Piston], Side::Any, Tag::Pitting, 0.15, Middling)
            .at(&[(Pattern::Head, 0.60), (Pattern::Lands, 0.20)]),
        Sign::new(&[Crankshaft, Rod], Side::Any, Tag::Cracks, 0.05, Middling),
    ],
    check: &[
        todo("check-timing", "Check ignition or injection timing, fuel grade and boost against the engine's manual."),
        todo("ask-use", "Ask how the engine is used: loads, gears, revolutions."),
        todo("test-for-cracks", "Have the rods and the crankshaft tested for cracks and straightness.")
            .on(&[Crankshaft, Rod]),
    ],
    put_right: &[
        todo("set-timing", "Set timing and fuelling right."),
        todo(
            "agree-use",
            "Agree with the customer how the engine is to be used, or fit what bears the load if the manual offers it.",
        ),
    ],
    source: "Pattern: a marine help page (worn only on the top bearings of the rods and the lower bearings of the block: fatigue, detonation, lugging); US marine-engineer examination item (only the lower half of a main fails: overload); TM 55-1905-221-14-3 (loaded halves show distress first). Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement. Chances: our judgement.",
};
