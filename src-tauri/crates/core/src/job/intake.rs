//! What is asked when an engine comes in.

use serde::{Deserialize, Serialize};

/// A line of the job's sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum TextField {
    /// Whose engine it is.
    Customer,
    /// How to reach them.
    Contact,
    /// What the engine came out of.
    Machine,
    /// The engine's serial number or other mark.
    EngineNumber,
    /// Running hours or distance.
    Use,
    /// What the customer noticed.
    Complaint,
    /// Anything else worth knowing.
    Remarks,
}

impl TextField {
    /// Every line, in the order of the sheet.
    pub const ALL: [Self; 7] =
        [Self::Customer, Self::Contact, Self::Machine, Self::EngineNumber, Self::Use, Self::Complaint, Self::Remarks];

    /// Its name on the sheet.
    pub fn label(self) -> &'static str {
        match self {
            Self::Customer => "Customer",
            Self::Contact => "Contact",
            Self::Machine => "Machine",
            Self::EngineNumber => "Engine number",
            Self::Use => "Hours or distance",
            Self::Complaint => "Complaint",
            Self::Remarks => "Remarks",
        }
    }
}

/// A question about the engine's past that shifts what is likely.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum HistoryFact {
    /// It stood unused for a season or longer.
    LongStorage,
    /// Coolant or water was found in the oil.
    CoolantInOil,
    /// It overheated.
    Overheated,
    /// It was rebuilt within its last few hundred hours.
    RecentRebuild,
    /// Oil changes were missed, or the oil was found black and thick.
    NeglectedOil,
    /// The oil pressure warning came on.
    LowOilPressure,
    /// It was worked hard at low speed, or pinked.
    WorkedHard,
}

impl HistoryFact {
    /// Every question, in the order of the sheet.
    pub const ALL: [Self; 7] = [
        Self::LongStorage,
        Self::CoolantInOil,
        Self::Overheated,
        Self::RecentRebuild,
        Self::NeglectedOil,
        Self::LowOilPressure,
        Self::WorkedHard,
    ];

    /// Those that are asked about the past: the others are complaints ([`Complaint`](super::Complaint)), and are picked as such.
    pub const PAST: [Self; 3] = [Self::LongStorage, Self::RecentRebuild, Self::NeglectedOil];

    /// The question as asked.
    pub fn question(self) -> &'static str {
        match self {
            Self::LongStorage => "Has it stood unused for a season or longer?",
            Self::CoolantInOil => "Was there coolant or water in the oil?",
            Self::Overheated => "Has it overheated?",
            Self::RecentRebuild => "Was it rebuilt within the last few hundred hours?",
            Self::NeglectedOil => "Were oil changes missed, or was the oil black and thick?",
            Self::LowOilPressure => "Did the oil pressure warning come on?",
            Self::WorkedHard => "Was it worked hard at low speed, or did it knock?",
        }
    }

    /// As a statement, for the report.
    pub fn statement(self) -> &'static str {
        match self {
            Self::LongStorage => "it stood unused for a season or longer",
            Self::CoolantInOil => "there was coolant or water in the oil",
            Self::Overheated => "it has overheated",
            Self::RecentRebuild => "it was rebuilt recently",
            Self::NeglectedOil => "oil changes were missed",
            Self::LowOilPressure => "the oil pressure warning came on",
            Self::WorkedHard => "it was worked hard at low speed",
        }
    }
}

/// An answer; not having asked is no answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Answer {
    /// It is so.
    Yes,
    /// It is not so.
    No,
    /// Asked, but nobody knows.
    Unknown,
}

impl Answer {
    /// Every answer.
    pub const ALL: [Self; 3] = [Self::Yes, Self::No, Self::Unknown];

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Yes => "yes",
            Self::No => "no",
            Self::Unknown => "not known",
        }
    }
}
