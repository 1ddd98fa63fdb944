//! The table of part kinds: one row each. Whatever differs between kinds stands here, so that adding a kind is adding
//! a row.

use serde::{Deserialize, Serialize};

use super::{Arrangement, Cylinders, Positions};
use crate::wear::{Tag, Zone, ZoneMap};
use crate::words::Phrase;
use crate::work::Outcome;

/// A kind of part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
#[allow(missing_docs, reason = "the names are the trade's own; each row of the table describes its kind")]
pub enum PartKind {
    MainShell,
    MainJournal,
    HousingBore,
    ThrustFace,
    RodShell,
    Crankpin,
    Rod,
    Piston,
    Rings,
    Bore,
    Tappet,
    TappetBore,
    Pushrod,
    Lobe,
    CamJournal,
    CamBearing,
    Camshaft,
    Crankshaft,
    OilPump,
    PumpGears,
    PumpBody,
    PumpCover,
    OilPickup,
    TimingDrive,
    AuxiliaryDrive,
    AuxiliaryShaft,
    AuxiliaryBushes,
    AuxiliaryGear,
    CorePlugs,
    Block,
    MainCapBolts,
    RodBolts,
    HeadBolts,
    // Outside the parts that are judged.
    AsReceived,
    EngineOil,
    OilFilter,
    DrainPlug,
    Coolant,
    AirCleaner,
    OilFiller,
    Breather,
    Sump,
}

/// What sets one kind of part apart from the others.
#[derive(Debug)]
pub struct KindRow {
    /// The written form in part names.
    pub id: &'static str,
    /// The full name in the singular, lower case.
    pub name: Phrase,
    /// The word that follows a position: "Main 3, upper *shell*".
    pub short: Phrase,
    /// Which positions it has.
    pub positions: Positions,
    /// The tags that make sense for it; the five nearest to hand come first.
    pub tags: &'static [Tag],
    /// The zones that can be marked on it.
    pub zones: ZoneMap,
    /// What can be done about it, mildest first; nothing about what lies outside the judged parts.
    pub outcomes: &'static [Outcome],
    /// Whether it is renewed at an overhaul whatever it looks like (common practice).
    pub always_renewed: bool,
}

use Outcome::{Clean, Machine, Polish, PutBack, RebuildHere, Replace};
use PartKind::*;
use Tag::*;

const SHELL_TAGS: &[Tag] = &[
    Scoring,
    EmbeddedDebris,
    Pitting,
    HotSpot,
    CopperShowing,
    Wiping,
    FatigueCracks,
    LiningLoss,
    Corrosion,
    BrightBack,
    Seizure,
    HandlingDamage,
    LooksEven,
];
const BOLT_TAGS: &[Tag] = &[Bent, HandlingDamage, Rust, Cracks, Scuffing, LooksEven];
const JOURNAL_TAGS: &[Tag] = &[Scoring, HotSpot, Pitting, Corrosion, Seizure, Cracks, HandlingDamage, LooksEven];

impl PartKind {
    /// What brings it along when that is renewed: a journal and a lobe come with their shaft, a bore with its block unless it is
    /// a liner or barrel of its own. The
    /// bore of a tappet is in the block where the camshaft is, else in a head.
    pub fn comes_with(self, arrangement: &Arrangement) -> Option<Self> {
        match self {
            MainJournal | Crankpin => Some(Crankshaft),
            Lobe | CamJournal => Some(Camshaft),
            Bore => (!arrangement.construction.has_cylinders_of_their_own()).then_some(Block),
            HousingBore => Some(Block),
            TappetBore => arrangement.is_cam_in_block().then_some(Block),
            _ => self.detail_of(),
        }
    }

    /// Whether it has a back, which is looked at by itself.
    pub fn has_back(self) -> bool {
        self.row().zones.zones().contains(&Zone::Back)
    }

    /// What is ordered when it is renewed, in the singular, lower case: of a worn cylinder its liner or barrel, where it is a
    /// piece of its own; of a main bore its cap.
    pub fn renewed_as(self, arrangement: &Arrangement) -> Phrase {
        match (self, arrangement.construction.cylinders) {
            (Bore, Some(Cylinders::WetLiners)) => Phrase("cylinder liner"),
            (Bore, Some(Cylinders::Barrels)) => Phrase("cylinder barrel"),
            (HousingBore, _) => Phrase("main bearing cap"),
            _ => self.row().name,
        }
    }

    /// The parts into which it is taken apart to be rebuilt; none for most. They are to be had one by one as well.
    pub fn details(self) -> &'static [Self] {
        match self {
            OilPump => &[PumpGears, PumpBody, PumpCover],
            AuxiliaryDrive => &[AuxiliaryShaft, AuxiliaryBushes, AuxiliaryGear],
            _ => &[],
        }
    }

    /// What is taken apart into it and others.
    pub fn detail_of(self) -> Option<Self> {
        [OilPump, AuxiliaryDrive].into_iter().find(|whole| whole.details().contains(&self))
    }

    /// Whether there is one for each valve, so that a manual may tell intake and exhaust apart.
    pub fn is_by_port(self) -> bool {
        matches!(self.row().positions, Positions::EachValve | Positions::EachTappet | Positions::EachPushrod)
    }

    /// Every kind, in the order of the table.
    pub const ALL: [Self; 42] = [
        MainShell,
        MainJournal,
        HousingBore,
        ThrustFace,
        RodShell,
        Crankpin,
        Rod,
        Piston,
        Rings,
        Bore,
        Tappet,
        TappetBore,
        Pushrod,
        Lobe,
        CamJournal,
        CamBearing,
        Camshaft,
        Crankshaft,
        OilPump,
        PumpGears,
        PumpBody,
        PumpCover,
        OilPickup,
        TimingDrive,
        AuxiliaryDrive,
        AuxiliaryShaft,
        AuxiliaryBushes,
        AuxiliaryGear,
        CorePlugs,
        Block,
        MainCapBolts,
        RodBolts,
        HeadBolts,
        AsReceived,
        EngineOil,
        OilFilter,
        DrainPlug,
        Coolant,
        AirCleaner,
        OilFiller,
        Breather,
        Sump,
    ];

    /// The kind with this written form.
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.row().id == id)
    }

    /// Its row of the table.
    pub fn row(self) -> &'static KindRow {
        match self {
            MainShell => &KindRow {
                id: "main-shell",
                name: Phrase("main bearing shell"),
                short: Phrase("shell"),
                positions: Positions::EachMainHalf,
                tags: SHELL_TAGS,
                zones: ZoneMap::Shell,
                outcomes: &[Replace],
                always_renewed: true,
            },
            RodShell => &KindRow {
                id: "rod-shell",
                name: Phrase("rod bearing shell"),
                short: Phrase("shell"),
                positions: Positions::EachRodHalf,
                tags: SHELL_TAGS,
                zones: ZoneMap::Shell,
                outcomes: &[Replace],
                always_renewed: true,
            },
            MainJournal => &KindRow {
                id: "main-journal",
                name: Phrase("main journal"),
                short: Phrase("journal"),
                positions: Positions::EachMain,
                tags: JOURNAL_TAGS,
                zones: ZoneMap::Journal,
                outcomes: &[PutBack, Polish, Machine, Replace],
                always_renewed: false,
            },
            Crankpin => &KindRow {
                id: "crankpin",
                name: Phrase("crankpin"),
                short: Phrase("crankpin"),
                positions: Positions::EachCrankpin,
                tags: JOURNAL_TAGS,
                zones: ZoneMap::Journal,
                outcomes: &[PutBack, Polish, Machine, Replace],
                always_renewed: false,
            },
            HousingBore => &KindRow {
                id: "housing-bore",
                name: Phrase("main bearing housing bore"),
                short: Phrase("housing bore"),
                positions: Positions::EachMain,
                tags: &[Scoring, BrightBack, HotSpot, Seizure, Cracks, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[PutBack, Clean, Machine, Replace],
                always_renewed: false,
            },
            ThrustFace => &KindRow {
                id: "thrust-face",
                name: Phrase("thrust face"),
                short: Phrase("thrust face"),
                positions: Positions::ThrustSides,
                tags: &[Scoring, EmbeddedDebris, Wiping, HotSpot, CopperShowing, Pitting, LooksEven],
                zones: ZoneMap::ThrustFace,
                outcomes: &[Replace],
                always_renewed: true,
            },
            Rod => &KindRow {
                id: "rod",
                name: Phrase("connecting rod"),
                short: Phrase("rod"),
                positions: Positions::EachCylinder,
                tags: &[HotSpot, BrightBack, Cracks, HandlingDamage, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[PutBack, Clean, Machine, Replace],
                always_renewed: false,
            },
            Piston => &KindRow {
                id: "piston",
                name: Phrase("piston"),
                short: Phrase("piston"),
                positions: Positions::EachCylinder,
                tags: &[Scuffing, Scoring, Seizure, Cracks, Deposits, Pitting, HotSpot, HandlingDamage, LooksEven],
                zones: ZoneMap::Piston,
                outcomes: &[PutBack, Clean, Replace],
                always_renewed: false,
            },
            Rings => &KindRow {
                id: "rings",
                name: Phrase("piston ring set"),
                short: Phrase("rings"),
                positions: Positions::EachCylinder,
                tags: &[Scuffing, Cracks, Deposits, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[Replace],
                always_renewed: true,
            },
            Bore => &KindRow {
                id: "bore",
                name: Phrase("cylinder bore"),
                short: Phrase("bore"),
                positions: Positions::EachCylinder,
                tags: &[Scoring, Scuffing, Rust, Seizure, Pitting, Cracks, LooksEven],
                zones: ZoneMap::Bore,
                outcomes: &[PutBack, Clean, Machine, Replace],
                always_renewed: false,
            },
            Tappet => &KindRow {
                id: "tappet",
                name: Phrase("{tappet}"),
                short: Phrase("{tappet}"),
                positions: Positions::EachTappet,
                tags: &[
                    Pitting,
                    Spalling,
                    DishedFace,
                    StuckPlunger,
                    Scoring,
                    Scuffing,
                    Rust,
                    Deposits,
                    HandlingDamage,
                    LooksEven,
                ],
                zones: ZoneMap::Tappet,
                outcomes: &[PutBack, Clean, RebuildHere, Replace],
                always_renewed: false,
            },
            TappetBore => &KindRow {
                id: "tappet-bore",
                name: Phrase("{tappet} bore"),
                short: Phrase("{tappet} bore"),
                positions: Positions::EachTappet,
                tags: &[Scoring, Scuffing, Pitting, Cracks, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[PutBack, Clean, Machine, Replace],
                always_renewed: false,
            },
            Pushrod => &KindRow {
                id: "pushrod",
                name: Phrase("pushrod"),
                short: Phrase("pushrod"),
                positions: Positions::EachPushrod,
                tags: &[Bent, Pitting, Scuffing, Spalling, Deposits, Cracks, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[PutBack, Clean, Replace],
                always_renewed: false,
            },
            Lobe => &KindRow {
                id: "lobe",
                name: Phrase("cam lobe"),
                short: Phrase("lobe"),
                positions: Positions::EachValve,
                tags: &[WornNose, Pitting, Spalling, Scoring, Scuffing, Rust, LooksEven],
                zones: ZoneMap::Lobe,
                outcomes: &[PutBack, Polish, Machine, Replace],
                always_renewed: false,
            },
            CamJournal => &KindRow {
                id: "cam-journal",
                name: Phrase("camshaft journal"),
                short: Phrase("cam journal"),
                positions: Positions::EachCamBearing,
                tags: &[Scoring, Pitting, HotSpot, Corrosion, LooksEven],
                zones: ZoneMap::Journal,
                outcomes: &[PutBack, Polish, Machine, Replace],
                always_renewed: false,
            },
            CamBearing => &KindRow {
                id: "cam-bearing",
                name: Phrase("camshaft bearing"),
                short: Phrase("cam bearing"),
                positions: Positions::EachCamBearing,
                tags: &[Scoring, EmbeddedDebris, CopperShowing, Wiping, Corrosion, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[PutBack, Clean, Machine, Replace],
                always_renewed: false,
            },
            Camshaft => &KindRow {
                id: "camshaft",
                name: Phrase("camshaft"),
                short: Phrase("camshaft"),
                positions: Positions::EachCamshaft,
                tags: &[Cracks, Rust, HandlingDamage, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[PutBack, Clean, Machine, Replace],
                always_renewed: false,
            },
            Crankshaft => &KindRow {
                id: "crankshaft",
                name: Phrase("crankshaft"),
                short: Phrase("crankshaft"),
                positions: Positions::One,
                tags: &[Cracks, HotSpot, Rust, HandlingDamage, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[PutBack, Clean, Polish, Machine, Replace],
                always_renewed: false,
            },
            OilPump => &KindRow {
                id: "oil-pump",
                name: Phrase("oil pump"),
                short: Phrase("oil pump"),
                positions: Positions::One,
                tags: &[Scoring, EmbeddedDebris, Deposits, Pitting, Cracks, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[PutBack, Clean, RebuildHere, Replace],
                always_renewed: false,
            },
            PumpGears => const { &detail("pump-gears", "oil pump gears", PUMP_TAGS, &[PutBack, Clean, Replace]) },
            PumpBody => const { &detail("pump-body", "oil pump body", PUMP_TAGS, FACED) },
            PumpCover => const { &detail("pump-cover", "oil pump cover", PUMP_TAGS, FACED) },
            OilPickup => &KindRow {
                id: "oil-pickup",
                name: Phrase("oil pick-up"),
                short: Phrase("oil pick-up"),
                positions: Positions::One,
                tags: &[EmbeddedDebris, Deposits, Cracks, HandlingDamage, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[PutBack, Clean, Replace],
                always_renewed: false,
            },
            TimingDrive => &KindRow {
                id: "timing-drive",
                name: Phrase("timing drive"),
                short: Phrase("timing drive"),
                positions: Positions::OneIfCamshaft,
                tags: &[Pitting, Spalling, Cracks, Scuffing, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[PutBack, Clean, Replace],
                always_renewed: false,
            },
            AuxiliaryDrive => &KindRow {
                id: "auxiliary-drive",
                name: Phrase("pump or distributor drive"),
                short: Phrase("auxiliary drive"),
                positions: Positions::One,
                tags: &[Pitting, Spalling, Cracks, Scuffing, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[PutBack, Clean, RebuildHere, Replace],
                always_renewed: false,
            },
            AuxiliaryShaft => {
                const {
                    let tags = &[Scoring, Scuffing, Pitting, Cracks, LooksEven];
                    &detail("auxiliary-shaft", "auxiliary drive shaft", tags, &[PutBack, Clean, Replace])
                }
            }
            AuxiliaryBushes => {
                const {
                    let tags = &[Scoring, Scuffing, Wiping, LooksEven];
                    &detail("auxiliary-bushes", "auxiliary drive bushes", tags, &[PutBack, Clean, Replace])
                }
            }
            AuxiliaryGear => {
                const {
                    let tags = &[Pitting, Spalling, Cracks, Scuffing, LooksEven];
                    &detail("auxiliary-gear", "auxiliary drive gear", tags, &[PutBack, Clean, Replace])
                }
            }
            CorePlugs => &KindRow {
                id: "core-plugs",
                name: Phrase("core plugs"),
                short: Phrase("core plugs"),
                positions: Positions::OneIfWater,
                tags: &[Rust, Corrosion, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[Replace],
                always_renewed: true,
            },
            Block => &KindRow {
                id: "block",
                name: Phrase("cylinder block"),
                short: Phrase("block"),
                positions: Positions::One,
                tags: &[Cracks, Rust, Deposits, Corrosion, HandlingDamage, LooksEven],
                zones: ZoneMap::None,
                outcomes: &[PutBack, Clean, Machine, Replace],
                always_renewed: false,
            },
            // Fasteners lie in one tray and are judged together: the worst of a set speaks for it.
            MainCapBolts => const { &bolts("main-cap-bolts", "main cap bolt set") },
            RodBolts => const { &bolts("rod-bolts", "rod bolt set") },
            HeadBolts => const { &bolts("head-bolts", "head bolt set") },
            AsReceived => const { &outside("as-received", "engine as received", AS_RECEIVED_TAGS) },
            EngineOil => const { &outside("engine-oil", "engine oil", OIL_TAGS) },
            OilFilter => const { &outside("oil-filter", "oil filter", FILTER_TAGS) },
            DrainPlug => const { &outside("drain-plug", "drain plug magnet", MAGNET_TAGS) },
            Coolant => {
                const { &KindRow { positions: Positions::OneIfWater, ..outside("coolant", "coolant", COOLANT_TAGS) } }
            }
            AirCleaner => const { &outside("air-cleaner", "air cleaner and duct", AIR_CLEANER_TAGS) },
            OilFiller => const { &outside("oil-filler", "oil filler", FILLER_TAGS) },
            Breather => const { &outside("breather", "breather", BREATHER_TAGS) },
            Sump => const { &outside("sump", "sump", SUMP_TAGS) },
        }
    }
}

const PUMP_TAGS: &[Tag] = &[Scoring, Pitting, Cracks, LooksEven];
const AS_RECEIVED_TAGS: &[Tag] = &[Leak, Deposits, HotSpot, Rust, Cracks, Missing];
const OIL_TAGS: &[Tag] = &[Milky, FuelSmell, LowLevel, Thickened, SoftFlakes, HighLevel, Grit];
const FILTER_TAGS: &[Tag] =
    &[SoftFlakes, Grit, SteelSplinters, Plugged, ByPassed, AluminiumFlakes, SteelFlakes, Deposits, Missing];
const MAGNET_TAGS: &[Tag] = &[FinePaste, SteelFlakes, SteelSplinters];
const COOLANT_TAGS: &[Tag] = &[LowLevel, OilFilm, Leak, Deposits];
const AIR_CLEANER_TAGS: &[Tag] = &[Torn, Missing, Grit, Plugged];
const FILLER_TAGS: &[Tag] = &[Missing, Milky, Grit, Deposits, Torn, Leak];
const BREATHER_TAGS: &[Tag] = &[Plugged, Fumes, Milky, Deposits, Torn, Missing];
const SUMP_TAGS: &[Tag] = &[SoftFlakes, Deposits, Grit, SteelSplinters, Milky, AluminiumFlakes, SteelFlakes, Leak];
const FACED: &[Outcome] = &[PutBack, Clean, Machine, Replace];

/// A part of an assembly.
const fn detail(id: &'static str, name: &'static str, tags: &'static [Tag], outcomes: &'static [Outcome]) -> KindRow {
    let name = Phrase(name);
    let (positions, zones) = (Positions::One, ZoneMap::None);
    KindRow { id, name, short: name, positions, tags, zones, outcomes, always_renewed: false }
}

/// What is recorded only, for what it tells of the parts.
const fn outside(id: &'static str, name: &'static str, tags: &'static [Tag]) -> KindRow {
    KindRow { outcomes: &[], ..detail(id, name, tags, &[]) }
}

/// A set of bolts, or of studs with their nuts.
const fn bolts(id: &'static str, name: &'static str) -> KindRow {
    let name = Phrase(name);
    KindRow {
        id,
        name,
        short: name,
        positions: Positions::One,
        tags: BOLT_TAGS,
        zones: ZoneMap::None,
        outcomes: &[PutBack, Clean, Replace],
        always_renewed: false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_consistent() {
        for kind in PartKind::ALL {
            let row = kind.row();
            assert_eq!(PartKind::from_id(row.id), Some(kind));
            assert_eq!(serde_json::to_value(kind).unwrap(), row.id, "id and JSON form of {kind:?} differ");
            let is_worn_evenly = row.tags.contains(&LooksEven) || row.always_renewed;
            assert_ne!(is_worn_evenly, kind.is_outside(), "{kind:?} can be tagged as evenly worn");
            let sorted = row.outcomes.is_sorted();
            assert!(
                sorted && row.outcomes.is_empty() == kind.is_outside(),
                "outcomes of {kind:?} go from mild to severe"
            );
        }
    }
}
