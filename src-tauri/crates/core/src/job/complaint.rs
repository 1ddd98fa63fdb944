//! What the customer complained of, in the trade's words.

use serde::{Deserialize, Serialize};

use super::HistoryFact;

/// A complaint. Several may be told.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Complaint {
    /// A knock of which no more was told.
    Knock,
    /// A sharp knock at constant speed without load.
    KnockWithoutLoad,
    /// A dull thud, worse under load.
    KnockUnderLoad,
    /// A sharp double knock at idle.
    DoubleKnock,
    /// A slap when cold that goes when warm.
    KnockCold,
    /// A knock when hot only.
    KnockHot,
    /// Worked hard at low speed, or pinging under load.
    WorkedHard,
    /// Clicking or ticking at the top.
    NoiseAtTheTop,
    /// The oil pressure was low, or its warning came on.
    LowOilPressure,
    /// Oil pressure low at idle and good at speed.
    LowPressureAtIdle,
    /// Oil pressure that swings.
    PressureSwings,
    /// It used oil.
    OilUsed,
    /// Blue smoke.
    BlueSmoke,
    /// White smoke that does not go when warm.
    WhiteSmoke,
    /// Black smoke.
    BlackSmoke,
    /// Fumes at the breather.
    BreatherFumes,
    /// Coolant got less.
    CoolantUsed,
    /// Coolant or water was found in the oil.
    CoolantInOil,
    /// Oil was found in the coolant.
    OilInCoolant,
    /// It overheated.
    Overheated,
    /// No compression, or low, on a cylinder or more.
    LowCompression,
    /// It would not turn.
    WouldNotTurn,
    /// Metal was found in the oil or the filter.
    MetalInOil,
    /// The oil smelt of fuel, or got more.
    FuelInOil,
}

impl Complaint {
    /// Every complaint, in the order in which they are asked.
    pub const ALL: [Self; 24] = [
        Self::Knock,
        Self::KnockWithoutLoad,
        Self::KnockUnderLoad,
        Self::DoubleKnock,
        Self::KnockCold,
        Self::KnockHot,
        Self::WorkedHard,
        Self::NoiseAtTheTop,
        Self::LowOilPressure,
        Self::LowPressureAtIdle,
        Self::PressureSwings,
        Self::OilUsed,
        Self::BlueSmoke,
        Self::WhiteSmoke,
        Self::BlackSmoke,
        Self::BreatherFumes,
        Self::CoolantUsed,
        Self::CoolantInOil,
        Self::OilInCoolant,
        Self::Overheated,
        Self::LowCompression,
        Self::WouldNotTurn,
        Self::MetalInOil,
        Self::FuelInOil,
    ];

    /// In words, as it is picked.
    pub fn words(self) -> &'static str {
        match self {
            Self::Knock => "Knock",
            Self::KnockWithoutLoad => "Sharp knock without load",
            Self::KnockUnderLoad => "Dull thud under load",
            Self::DoubleKnock => "Double knock at idle",
            Self::KnockCold => "Slap when cold, gone when warm",
            Self::KnockHot => "Knock when hot only",
            Self::WorkedHard => "Pinging, or worked hard at low speed",
            Self::NoiseAtTheTop => "Clicking at the top",
            Self::LowOilPressure => "Low oil pressure",
            Self::LowPressureAtIdle => "Oil pressure low at idle only",
            Self::PressureSwings => "Oil pressure swings",
            Self::OilUsed => "Uses oil",
            Self::BlueSmoke => "Blue smoke",
            Self::WhiteSmoke => "White smoke when warm",
            Self::BlackSmoke => "Black smoke",
            Self::BreatherFumes => "Fumes at the breather",
            Self::CoolantUsed => "Uses coolant",
            Self::CoolantInOil => "Coolant or water in the oil",
            Self::OilInCoolant => "Oil in the coolant",
            Self::Overheated => "Overheated",
            Self::LowCompression => "Low compression",
            Self::WouldNotTurn => "Would not turn",
            Self::MetalInOil => "Metal in oil or filter",
            Self::FuelInOil => "Oil smells of fuel, or gets more",
        }
    }

    /// The question about the past by which it was once asked; none of most.
    pub fn fact(self) -> Option<HistoryFact> {
        match self {
            Self::WorkedHard => Some(HistoryFact::WorkedHard),
            Self::LowOilPressure => Some(HistoryFact::LowOilPressure),
            Self::CoolantInOil => Some(HistoryFact::CoolantInOil),
            Self::Overheated => Some(HistoryFact::Overheated),
            _ => None,
        }
    }

    /// The complaint that a question about the past was really about.
    pub fn of(fact: HistoryFact) -> Option<Self> {
        Self::ALL.into_iter().find(|complaint| complaint.fact() == Some(fact))
    }
}
