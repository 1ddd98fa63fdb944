//! What can be wrong in an engine so that somebody hears, sees or smells it: the step between a cause and a complaint. It is
//! read off what was found, place by place.

use std::collections::BTreeMap;

use crate::engine::{Engine, Part, PartKind};
use crate::figure::Figure;
use crate::job::{Job, PartRecord};
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
    PistonDamage,
    Grooves,
    Rings,
    Bore,
    ValveTrain,
    Gears,
    OilPump,
    PickUp,
    ChamberMarks,
    FatiguedShells,
    Seized,
    BentRod,
    CorePlugs,
    CrackedCasting,
    WaterInOil,
    WaterInChamber,
    OilToCoolant,
    CoolantLow,
    CoolantLeak,
    CoolingFouled,
    FuelInOil,
    OilLow,
    FilterPlugged,
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
    pub(super) const ALL: [Self; 32] = [
        Self::RodBearing,
        Self::MainBearing,
        Self::CamBearing,
        Self::EndFloat,
        Self::PinBush,
        Self::PistonSlap,
        Self::PistonDamage,
        Self::Grooves,
        Self::Rings,
        Self::Bore,
        Self::ValveTrain,
        Self::Gears,
        Self::OilPump,
        Self::PickUp,
        Self::ChamberMarks,
        Self::FatiguedShells,
        Self::Seized,
        Self::BentRod,
        Self::CorePlugs,
        Self::CrackedCasting,
        Self::WaterInOil,
        Self::WaterInChamber,
        Self::OilToCoolant,
        Self::CoolantLow,
        Self::CoolantLeak,
        Self::CoolingFouled,
        Self::FuelInOil,
        Self::OilLow,
        Self::FilterPlugged,
        Self::PluggedAirCleaner,
        Self::BlockedBreather,
        Self::WetOutside,
    ];

    pub(super) fn row(self) -> TroubleRow {
        use PartKind::*;
        use Tag::*;
        const BEARING: &[Tag] = &[CopperShowing, Wiping, LiningLoss, Seizure, FatigueCracks, Scoring, LooksEven];
        // A journal or a wall that has gone beyond its limit leaves the bearing loose.
        const LOOSE: &[Quantity] =
            &[Quantity::Clearance, Quantity::Strip, Quantity::Diameter, Quantity::Wear, Quantity::Wall];
        let row = |name, kinds, tags, sizes| TroubleRow { name, kinds, tags, sizes };
        match self {
            Self::RodBearing => row("worn or failed rod bearing", &[RodShell, Crankpin], BEARING, LOOSE),
            Self::MainBearing => row("worn or failed main bearing", &[MainShell, MainJournal], BEARING, LOOSE),
            Self::CamBearing => row("worn camshaft bearing", &[CamBearing, CamJournal], BEARING, LOOSE),
            Self::EndFloat => row(
                "end float of the crankshaft",
                &[ThrustFace, Crankshaft],
                &[Wiping, CopperShowing],
                &[Quantity::EndFloat, Quantity::Thickness],
            ),
            Self::PinBush => row(
                "loose pin",
                &[Rod, Piston],
                &[],
                &[Quantity::PinClearance, Quantity::SmallEndBore, Quantity::PinBore, Quantity::PinDiameter],
            ),
            Self::PistonSlap => row(
                "piston loose in its bore",
                &[Piston],
                &[],
                &[Quantity::Clearance, Quantity::Wear, Quantity::Diameter],
            ),
            Self::PistonDamage => {
                row("damaged piston", &[Piston], &[Cracks, Scuffing, Scoring, Seizure, HotSpot, Pitting], &[])
            }
            Self::Grooves => row("rings loose in their grooves", &[Piston], &[], &[Quantity::GrooveClearance]),
            Self::Rings => {
                row("worn, stuck or broken rings", &[Rings], &[Scuffing, Cracks, Deposits], &[Quantity::RingGap])
            }
            Self::Bore => row(
                "worn or scored bore",
                &[Bore],
                &[Scoring, Scuffing],
                &[Quantity::Wear, Quantity::Taper, Quantity::Diameter],
            ),
            Self::ValveTrain => row(
                "worn lobe or follower",
                &[Lobe, Tappet, Pushrod],
                &[WornNose, Spalling, DishedFace, StuckPlunger, Pitting, Bent, Scuffing],
                &[Quantity::LiftLoss, Quantity::HeightLoss],
            ),
            Self::Gears => row(
                "worn or broken gear of a drive",
                &[TimingDrive, AuxiliaryDrive, AuxiliaryGear],
                &[Spalling, Pitting, Cracks, Scuffing],
                &[Quantity::Backlash],
            ),
            Self::OilPump => row(
                "worn oil pump",
                &[OilPump, PumpGears, PumpBody, PumpCover],
                &[Scoring, Pitting, Cracks],
                &[Quantity::EndClearance, Quantity::SideClearance, Quantity::Backlash, Quantity::CoverWear],
            ),
            Self::PickUp => row("blocked or loose pick-up", &[OilPickup], &[Deposits, EmbeddedDebris, Cracks], &[]),
            Self::ChamberMarks => row("marks of detonation", &[Piston], &[Pitting, Cracks], &[]),
            Self::FatiguedShells => {
                row("bearing shells fatigued by load", &[RodShell, MainShell], &[FatigueCracks, LiningLoss], &[])
            }
            Self::Seized => {
                row("seizure", &[RodShell, MainShell, Crankpin, MainJournal, Piston, Bore], &[Seizure], &[])
            }
            Self::BentRod => row("bent rod", &[Rod], &[], &[Quantity::Bend, Quantity::Twist]),
            Self::CorePlugs => row("core plug that is eaten away", &[CorePlugs], &[Rust, Corrosion], &[]),
            Self::CrackedCasting => row("crack in block or bore", &[Block, Bore], &[Cracks], &[]),
            Self::WaterInOil => {
                row("coolant that went into the oil", &[EngineOil, OilFiller, Breather, Sump], &[Milky], &[])
            }
            // Nobody sees into a chamber that works: it is told by what is missing.
            Self::WaterInChamber => {
                row("water in a combustion chamber, since coolant is missing", &[Coolant], &[LowLevel], &[])
            }
            Self::OilToCoolant => row("oil that went into the coolant", &[Coolant], &[OilFilm], &[]),
            Self::CoolantLow => row("too little coolant", &[Coolant], &[LowLevel], &[]),
            Self::CoolantLeak => row("coolant leak outside", &[Coolant], &[Leak], &[]),
            Self::CoolingFouled => row("scale or sludge in the cooling", &[Coolant], &[Deposits], &[]),
            Self::FuelInOil => row("oil thinned by fuel", &[EngineOil], &[FuelSmell], &[]),
            Self::OilLow => row("too little oil", &[EngineOil], &[LowLevel], &[]),
            Self::FilterPlugged => row("plugged oil filter", &[OilFilter], &[Plugged], &[]),
            Self::PluggedAirCleaner => row("plugged air cleaner", &[AirCleaner], &[Plugged], &[]),
            Self::BlockedBreather => row("blocked breather", &[Breather], &[Plugged], &[]),
            Self::WetOutside => row("oil leak outside", &[AsReceived], &[Leak], &[]),
        }
    }

    /// How likely it is at each place, by what was found there (our judgement, by tag, grade and verdict).
    pub(super) fn found(self, engine: &Engine, job: &Job, figures: &BTreeMap<Part, Vec<Figure>>) -> Found {
        let row = self.row();
        let mut found = Found { trouble: self, at: vec![], looked: 0, open: vec![] };
        let is_looked_at = |part| job.parts.get(&part).is_some_and(PartRecord::looked_at);
        let parts = engine.parts().iter().chain(engine.outside());
        for part in parts.copied().filter(|part| row.kinds.contains(&part.kind)) {
            let measured = figures
                .get(&part)
                .into_iter()
                .flatten()
                .filter(|figure| figure.phase == Phase::Found && row.sizes.contains(&figure.quantity))
                .filter_map(|figure| Some(by_verdict(figure.verdict?)));
            let seen = |tag: &Tag| Some(by_tag(part.kind, *tag, job.parts.get(&part)?.grade(*tag)?));
            // What is torn or stuck is so within any limit.
            let worst = row.tags.iter().filter_map(seen).chain(measured).max_by(f64::total_cmp);
            let is_seen = || is_looked_at(part) || job.seen_with(part).is_some_and(is_looked_at);
            let Some(chance) = worst.or_else(|| is_seen().then_some(0.0)) else {
                found.open.push(part);
                continue;
            };
            found.looked += 1;
            if chance > 0.0 {
                found.at.push((part, chance));
            }
        }
        found.at.sort_by(|a, b| b.1.total_cmp(&a.1));
        found.open.sort_by_key(|part| row.kinds.iter().position(|kind| *kind == part.kind));
        found
    }
}

/// How likely a part of such a size fails its task (our judgement). What is at its limit still does it, as a rule: a bearing
/// that is not loose enough knocks by thin oil only (TM 55-1905-223-24-3 para 2-13 to 2-17).
fn by_verdict(verdict: Conformity) -> f64 {
    match verdict {
        Conformity::Within => 0.0,
        Conformity::TooClose => 0.1,
        Conformity::Outside => 0.95,
    }
}

/// How likely a part with such a finding fails its task (our judgement). Marks of the first grade are no failure, however many
/// they are; what is evenly worn fails once its running layer is gone; a score makes no bearing loose before metal is gone with
/// it, and counts a grade less there.
fn by_tag(kind: PartKind, tag: Tag, grade: Grade) -> f64 {
    use PartKind::{CamBearing, CamJournal, Crankpin, MainJournal, MainShell, RodShell};
    let is_bearing = matches!(kind, MainShell | MainJournal | RodShell | Crankpin | CamBearing | CamJournal);
    let less = u8::from(is_bearing && tag == Tag::Scoring && grade > Grade::ONE);
    match (tag.is_damage(), grade.number() - less) {
        (true, 1) | (false, 1 | 2) => 0.0,
        (true, 2) => 0.40,
        (true, 3) => 0.85,
        (true, _) => 0.97,
        (false, 3) => 0.15,
        (false, _) => 0.80,
    }
}

/// What was found of a trouble.
#[derive(Debug, Clone)]
pub(super) struct Found {
    pub(super) trouble: Trouble,
    /// The parts on which something was found, each with how likely it is there, likeliest first.
    pub(super) at: Vec<(Part, f64)>,
    /// How many parts were looked at or measured.
    pub(super) looked: usize,
    /// Those that were not, what shows it first.
    pub(super) open: Vec<Part>,
}

impl Found {
    /// How likely it is anywhere, 0 to 1.
    pub(super) fn anywhere(&self) -> f64 {
        1.0 - self.at.iter().map(|(_, likely)| 1.0 - likely).product::<f64>()
    }

    /// Which share of what would show it was looked at, 0 to 1; all where the engine has nothing of the kind.
    pub(super) fn share_looked_at(&self) -> f64 {
        match self.looked + self.open.len() {
            0 => 1.0,
            all => self.looked as f64 / all as f64,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A kind on which neither can be found would stay open for ever.
    #[test]
    fn every_kind_of_a_row_can_show_it() {
        for trouble in Trouble::ALL {
            let TroubleRow { kinds, tags, sizes, .. } = trouble.row();
            for kind in kinds {
                let is_seen = tags.iter().any(|tag| kind.row().tags.contains(tag));
                assert!(is_seen || sizes.iter().any(|size| kind.has(*size).is_some()), "{trouble:?} on {kind:?}");
            }
        }
    }
}
