//! What can be wrong in an engine so that somebody hears, sees or smells it: the step between a cause and a complaint. It is
//! read off what was found, place by place.

use std::collections::BTreeMap;

use crate::engine::{Engine, Part, PartKind};
use crate::figure::Figure;
use crate::job::Job;
use crate::measure::{Conformity, Phase, Quantity};
use crate::wear::{Grade, Tag};

/// Something that is wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) enum Trouble {
    RodBearing,
    MainBearing,
    CamBearing,
    EndFloat,
    PinBush,
    PistonSlap,
    Rings,
    Bore,
    ValveTrain,
    OilPump,
    PickUp,
    ChamberMarks,
    Seized,
    BentRod,
    WaterWayIn,
    FuelInOil,
    OilLow,
    PluggedAirCleaner,
    BlockedBreather,
    WetOutside,
}

/// How it shows.
pub(super) struct TroubleRow {
    /// In words that follow a place or stand alone: "worn or failed rod bearing".
    pub(super) name: &'static str,
    kinds: &'static [PartKind],
    tags: &'static [Tag],
    /// Sizes beyond their limit that show it.
    sizes: &'static [Quantity],
}

impl Trouble {
    /// All of them.
    pub(super) const ALL: [Self; 20] = [
        Self::RodBearing,
        Self::MainBearing,
        Self::CamBearing,
        Self::EndFloat,
        Self::PinBush,
        Self::PistonSlap,
        Self::Rings,
        Self::Bore,
        Self::ValveTrain,
        Self::OilPump,
        Self::PickUp,
        Self::ChamberMarks,
        Self::Seized,
        Self::BentRod,
        Self::WaterWayIn,
        Self::FuelInOil,
        Self::OilLow,
        Self::PluggedAirCleaner,
        Self::BlockedBreather,
        Self::WetOutside,
    ];

    pub(super) fn row(self) -> TroubleRow {
        use PartKind::*;
        use Tag::*;
        const BEARING: &[Tag] = &[CopperShowing, Wiping, LiningLoss, Seizure, FatigueCracks, Scoring];
        let row = |name, kinds, tags, sizes| TroubleRow { name, kinds, tags, sizes };
        match self {
            Self::RodBearing => {
                row("worn or failed rod bearing", &[RodShell, Crankpin], BEARING, &[Quantity::Clearance])
            }
            Self::MainBearing => {
                row("worn or failed main bearing", &[MainShell, MainJournal], BEARING, &[Quantity::Clearance])
            }
            Self::CamBearing => row("worn camshaft bearing", &[CamBearing], BEARING, &[Quantity::Clearance]),
            Self::EndFloat => row(
                "end float of the crankshaft",
                &[ThrustFace, Crankshaft],
                &[Wiping, CopperShowing],
                &[Quantity::EndFloat],
            ),
            Self::PinBush => row("loose pin", &[Rod, Piston], &[], &[Quantity::PinClearance]),
            Self::PistonSlap => row("piston loose in its bore", &[Piston], &[], &[Quantity::Clearance, Quantity::Wear]),
            Self::Rings => row(
                "worn, stuck or broken rings",
                &[Rings],
                &[Scuffing, Cracks, Deposits, Seizure, Scoring],
                &[Quantity::RingGap],
            ),
            Self::Bore => row("worn or scored bore", &[Bore], &[Scoring, Scuffing], &[Quantity::Wear, Quantity::Taper]),
            Self::ValveTrain => row(
                "worn lobe or follower",
                &[Lobe, Tappet, Pushrod],
                &[WornNose, Spalling, DishedFace, StuckPlunger, Pitting, Bent, Scuffing],
                &[Quantity::LiftLoss, Quantity::HeightLoss],
            ),
            Self::OilPump => row(
                "worn oil pump",
                &[OilPump, PumpGears, PumpBody, PumpCover],
                &[Scoring, Scuffing, Seizure],
                &[Quantity::EndClearance, Quantity::SideClearance, Quantity::Backlash],
            ),
            Self::PickUp => row("blocked or loose pick-up", &[OilPickup], &[Deposits, EmbeddedDebris, Cracks], &[]),
            Self::ChamberMarks => {
                row("marks of detonation", &[Piston, RodShell], &[Pitting, FatigueCracks, Cracks], &[])
            }
            Self::Seized => {
                row("seizure", &[RodShell, MainShell, Crankpin, MainJournal, Piston, Bore], &[Seizure], &[])
            }
            Self::BentRod => row("bent rod", &[Rod], &[Bent], &[Quantity::Bend, Quantity::Twist]),
            Self::WaterWayIn => row(
                "way for water into the oil or the chamber",
                &[CorePlugs, Block, Coolant, EngineOil, OilFiller],
                &[Rust, Cracks, OilFilm, Milky],
                &[],
            ),
            Self::FuelInOil => row("fuel in the oil", &[EngineOil], &[FuelSmell], &[]),
            Self::OilLow => row("too little oil", &[EngineOil], &[LowLevel], &[]),
            Self::PluggedAirCleaner => row("plugged air cleaner", &[AirCleaner], &[Plugged], &[]),
            Self::BlockedBreather => row("blocked breather", &[Breather], &[Plugged], &[]),
            Self::WetOutside => row("oil leak outside", &[AsReceived], &[Leak], &[]),
        }
    }

    /// The most that it is likely at one place, and where: by what was found there (our judgement, by grade and verdict).
    pub(super) fn found(self, engine: &Engine, job: &Job, figures: &BTreeMap<Part, Vec<Figure>>) -> Found {
        let row = self.row();
        let mut found = Found { trouble: self, at: vec![], looked: 0, open: 0 };
        let parts = engine.parts().iter().chain(engine.outside());
        for part in parts.copied().filter(|part| row.kinds.contains(&part.kind)) {
            let record = job.parts.get(&part).filter(|record| record.looked_at());
            let sizes: Vec<Conformity> = figures
                .get(&part)
                .into_iter()
                .flatten()
                .filter(|figure| figure.phase == Phase::Found && row.sizes.contains(&figure.quantity))
                .filter_map(|figure| figure.verdict)
                .collect();
            let seen = record.and_then(|record| row.tags.iter().filter_map(|tag| record.grade(*tag)).max());
            let chance = match (seen, sizes.iter().max()) {
                (_, Some(Conformity::Outside)) => 0.95,
                (Some(grade), Some(_)) => by_grade(grade) * 0.5,
                (Some(grade), None) => by_grade(grade),
                (None, Some(Conformity::TooClose)) => 0.4,
                (None, Some(Conformity::Within)) => 0.0,
                (None, None) if record.is_some() => 0.0,
                (None, None) => {
                    found.open += 1;
                    continue;
                }
            };
            found.looked += 1;
            if chance > 0.0 {
                found.at.push((part, chance));
            }
        }
        found.at.sort_by(|a, b| b.1.total_cmp(&a.1));
        found
    }
}

/// How likely a part with such a finding fails its task (our judgement).
fn by_grade(grade: Grade) -> f64 {
    match grade.number() {
        1 => 0.03,
        2 => 0.40,
        3 => 0.85,
        _ => 0.97,
    }
}

/// What was found of a trouble.
#[derive(Debug, Clone)]
pub(super) struct Found {
    pub(super) trouble: Trouble,
    /// The parts on which something was found, each with how likely it is there, likeliest first.
    pub(super) at: Vec<(Part, f64)>,
    /// How many were looked at, and how many not.
    pub(super) looked: usize,
    pub(super) open: usize,
}
