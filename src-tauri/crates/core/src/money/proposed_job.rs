//! The numbered jobs in which a bill is put to the customer.

use serde::{Deserialize, Serialize};

use super::{Charge, Money};
use crate::engine::PartKind;

/// What a job is about. Every line of a bill belongs to one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum JobScope {
    /// The crankshaft with rods and bearings.
    Bearings,
    /// Bores, pistons and rings.
    Cylinders,
    /// The block itself.
    Block,
    /// The camshaft and what it moves.
    ValveGear,
    /// The oil pump and what is driven beside the camshaft.
    OilAndDrives,
    /// What the shop added.
    Further,
    /// What stands on every bill: strip-down, assembly, gaskets, oil, test.
    Assembly,
}

impl JobScope {
    /// Every one, in the order in which they are numbered.
    pub const ALL: [Self; 7] = [
        Self::Bearings,
        Self::Cylinders,
        Self::Block,
        Self::ValveGear,
        Self::OilAndDrives,
        Self::Further,
        Self::Assembly,
    ];

    /// To which work on a kind of part belongs: what is taken to pieces, machined and fitted together.
    pub fn of(kind: PartKind) -> Self {
        match kind {
            PartKind::MainShell
            | PartKind::MainJournal
            | PartKind::ThrustFace
            | PartKind::RodShell
            | PartKind::Crankpin
            | PartKind::Rod
            | PartKind::RodBolts
            | PartKind::MainCapBolts
            | PartKind::Crankshaft => Self::Bearings,
            PartKind::Piston | PartKind::Rings | PartKind::Bore => Self::Cylinders,
            PartKind::HousingBore | PartKind::CorePlugs | PartKind::Block | PartKind::HeadBolts => Self::Block,
            PartKind::Tappet
            | PartKind::TappetBore
            | PartKind::Pushrod
            | PartKind::Lobe
            | PartKind::CamJournal
            | PartKind::CamBearing
            | PartKind::Camshaft => Self::ValveGear,
            PartKind::OilPump
            | PartKind::PumpGears
            | PartKind::PumpBody
            | PartKind::PumpCover
            | PartKind::OilPickup
            | PartKind::TimingDrive
            | PartKind::AuxiliaryDrive
            | PartKind::AuxiliaryShaft
            | PartKind::AuxiliaryBushes
            | PartKind::AuxiliaryGear => Self::OilAndDrives,
            // Only recorded: no line of a bill is about them.
            PartKind::AsReceived
            | PartKind::EngineOil
            | PartKind::OilFilter
            | PartKind::DrainPlug
            | PartKind::Coolant
            | PartKind::AirCleaner
            | PartKind::OilFiller
            | PartKind::Breather
            | PartKind::Sump => Self::Further,
        }
    }

    /// Its title.
    pub fn title(self) -> &'static str {
        match self {
            Self::Bearings => "Crankshaft, rods and bearings",
            Self::Cylinders => "Bores, pistons and rings",
            Self::Block => "Block",
            Self::ValveGear => "Camshaft and valve gear",
            Self::OilAndDrives => "Oil pump and drives",
            Self::Further => "Further items",
            Self::Assembly => "Strip-down, assembly and test",
        }
    }
}

/// How much a job is needed, least first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Need {
    /// It does good, and nothing fails without it.
    May,
    /// It belongs to a sound overhaul, though nothing failed there.
    Should,
    /// Without it the rebuild does not last.
    Must,
}

impl Need {
    /// Every one, least first.
    pub const ALL: [Self; 3] = [Self::May, Self::Should, Self::Must];

    /// In a word, as it stands on a proposal.
    pub fn words(self) -> &'static str {
        match self {
            Self::May => "may",
            Self::Should => "should",
            Self::Must => "must",
        }
    }
}

/// A job of a proposal, answered as a whole.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ProposedJob {
    /// What it is about: by this it is answered.
    pub of: JobScope,
    /// Its number on the proposal, from 1.
    pub number: u32,
    /// Its title, as it was shown.
    pub title: String,
    /// How much it is needed.
    pub need: Need,
    /// Why, in a sentence: the finding that weighs most.
    pub because: String,
    /// What happens if it is left, in a sentence.
    pub if_left: String,
    /// Its lines of the bill, in their order.
    pub lines: Vec<Charge>,
    /// The sum of its lines that have a price, without tax.
    pub net: Money,
    /// How many of its lines have no price yet.
    pub without_price: u32,
}
