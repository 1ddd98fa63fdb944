//! What can be done about a part, and the work that it takes: words that every floor above speaks.

use serde::{Deserialize, Serialize};

/// An outcome, from mild to severe. *Can't say yet* stands above the milder ones, which can't be trusted before the
/// missing look or reading, and below machining and renewal, which stand whatever is still to be seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Outcome {
    /// Goes back as it is.
    PutBack,
    /// Is cleaned and goes back.
    Clean,
    /// The shop takes it apart, cleans, measures and rebuilds it.
    RebuildHere,
    /// Is polished.
    Polish,
    /// Something must be looked at or measured first.
    CantSay,
    /// Goes to the machine shop.
    Machine,
    /// A new one is fitted.
    Replace,
}

impl Outcome {
    /// Every outcome, mildest first.
    pub const ALL: [Self; 7] =
        [Self::PutBack, Self::Clean, Self::RebuildHere, Self::Polish, Self::CantSay, Self::Machine, Self::Replace];

    /// In words, lower case.
    pub fn words(self) -> &'static str {
        match self {
            Self::PutBack => "put back",
            Self::Clean => "clean and put back",
            Self::RebuildHere => "rebuild in the shop",
            Self::Polish => "polish",
            Self::CantSay => "can’t say yet",
            Self::Machine => "machine",
            Self::Replace => "replace",
        }
    }
}

/// Work that has a price.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Work {
    /// A new part is fitted.
    Replace,
    /// Ground, bored or otherwise machined.
    Machine,
    /// Welded up and ground again.
    WeldUp,
    /// A bore is sleeved and brought back to standard.
    Sleeve,
    /// A worn bore is bushed and brought back to standard.
    Bush,
    /// Polished.
    Polish,
    /// Taken apart, cleaned, measured and rebuilt in the shop.
    Rebuild,
    /// Cleaned; of a block the hot wash, of a crankshaft its oil galleries.
    Clean,
    /// Tested for cracks.
    CrackTest,
    /// Honed for new rings, the size kept.
    Hone,
    /// A new part pressed or driven in where it takes tools for it.
    Fit,
    /// Weighed, and a new piece matched to those that stay.
    Weigh,
    /// Balanced to the weight of what turns with it.
    Balance,
    /// Measured where it has been fitted on trial.
    Measure,
}

/// Who does a piece of work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Hands {
    /// The shop itself.
    Here,
    /// The machine shop.
    MachineShop,
}

impl Hands {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Here, Self::MachineShop];

    /// In words, lower case.
    pub fn words(self) -> &'static str {
        match self {
            Self::Here => "done here",
            Self::MachineShop => "for the machine shop",
        }
    }
}

impl Work {
    /// Every work.
    pub const ALL: [Self; 14] = [
        Self::Replace,
        Self::Machine,
        Self::WeldUp,
        Self::Sleeve,
        Self::Bush,
        Self::Polish,
        Self::Rebuild,
        Self::Clean,
        Self::CrackTest,
        Self::Hone,
        Self::Fit,
        Self::Weigh,
        Self::Balance,
        Self::Measure,
    ];

    /// The work of an outcome; none where nothing is charged.
    pub fn of(outcome: Outcome) -> Option<Self> {
        match outcome {
            Outcome::Replace => Some(Self::Replace),
            Outcome::Machine => Some(Self::Machine),
            Outcome::Polish => Some(Self::Polish),
            Outcome::RebuildHere => Some(Self::Rebuild),
            Outcome::Clean => Some(Self::Clean),
            Outcome::PutBack | Outcome::CantSay => None,
        }
    }

    /// In words, lower case.
    pub fn words(self) -> &'static str {
        match self {
            Self::Replace => "replace",
            Self::Machine => "machine",
            Self::WeldUp => "weld up and regrind",
            Self::Sleeve => "sleeve",
            Self::Bush => "bush",
            Self::Polish => "polish",
            Self::Rebuild => "rebuild in the shop",
            Self::Clean => "clean",
            Self::CrackTest => "test for cracks",
            Self::Hone => "hone",
            Self::Fit => "fit",
            Self::Weigh => "weigh and match",
            Self::Balance => "balance",
            Self::Measure => "measure",
        }
    }
}
