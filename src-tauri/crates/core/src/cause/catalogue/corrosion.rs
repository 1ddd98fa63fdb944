//! Corrosion by water or acid.

use super::prelude::*;

/// Water, coolant or acid in the oil, or long standing: dull, etched and pitted surfaces on both halves of all
/// positions; rust on tappets, lobes and bores.
pub(super) const CAUSE: Cause = Cause {
    id: "corrosion",
    name: "corrosion by water or acid",
    plainly: "Water, coolant or acid has eaten the surfaces, often during long standing.",
    prior: 0.05,
    reach: &[],
    mirror: Mirror::None,
    fits: any,
    shifts: &[(HistoryFact::LongStorage, 4.0), (HistoryFact::CoolantInOil, 10.0), (HistoryFact::NeglectedOil, 2.0)],
    signs: &[
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::Corrosion, 0.68, Middling).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Unloaded, Tag::Corrosion, 0.55, Middling).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Any, Tag::Pitting, 0.35, Middling).at(ALL_OVER),
        Sign::new(&[MainShell, RodShell], Side::Loaded, Tag::CopperShowing, 0.20, Middling).at(ALL_OVER),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Corrosion, 0.35, Middling).at(ALL_OVER),
        Sign::new(&[MainJournal, Crankpin], Side::Any, Tag::Pitting, 0.25, Slight).at(ALL_OVER),
        Sign::new(&[CamBearing, CamJournal], Side::Any, Tag::Corrosion, 0.30, Middling),
        Sign::new(&[Tappet, Lobe, Bore], Side::Any, Tag::Rust, 0.40, Middling),
        Sign::new(&[Tappet, Lobe], Side::Any, Tag::Pitting, 0.30, Middling),
        Sign::new(&[Tappet, Lobe], Side::Any, Tag::Spalling, 0.12, Middling),
        Sign::new(&[Bore], Side::Any, Tag::Pitting, 0.15, Slight),
        Sign::new(&[Tappet], Side::Any, Tag::StuckPlunger, 0.20, Middling),
        Sign::new(&[CorePlugs], Side::Any, Tag::Rust, 0.60, Middling),
        Sign::new(&[Block, Crankshaft, Camshaft], Side::Any, Tag::Rust, 0.30, Middling),
    ],
    check: &[
        todo("pressure-test-cooling", "Pressure-test the cooling system, head gasket, oil cooler and core plugs."),
        todo("look-for-condensation", "Look for condensation: short runs, a missing thermostat, a blocked breather."),
        todo("ask-how-long-it-stood", "Ask how long it stood and how old the oil was."),
    ],
    put_right: &[
        todo("stop-leak", "Find and stop the leak, and flush the whole oil system."),
        todo("fresh-oil", "Use fresh oil at once after assembly and run the engine warm."),
    ],
    source: "Pattern: Neale, The Tribology Handbook, plain bearing failures (corrosion: lead phase removed; organic acids, coolant leakage); followers: public exhibit on defective aircraft engine parts (spalling starts with corrosion). Prior: published shares of premature bearing failure (a bearing maker's printed guide, population unknown), scaled: our judgement, raised because engines also come in after standing. Chances: our judgement.",
};
