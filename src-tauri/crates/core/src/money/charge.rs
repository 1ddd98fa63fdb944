//! What a line of a bill is for.

use serde::{Deserialize, Serialize};

use super::{PriceKey, Standing};

/// What a line of a bill is for: a part or work on it, an item of the shop's own, or a line that stands on every bill. In
/// a log each has the form of its own name, told apart by its fields.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(untagged)]
pub enum Charge {
    /// A new part, or work on parts of a kind.
    Work(PriceKey),
    /// An item of the shop's own.
    Own(OwnCharge),
    /// A line that stands on the bill whatever is found.
    Standing(StandingCharge),
}

/// An item of the shop's own.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnCharge {
    /// The edit that put it on its list, as text.
    pub own: String,
}

/// A standing line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct StandingCharge {
    /// Which.
    pub standing: Standing,
}

impl Charge {
    /// The part or work; none of what is neither.
    pub fn work(&self) -> Option<PriceKey> {
        match self {
            Self::Work(of) => Some(*of),
            Self::Own(_) | Self::Standing(_) => None,
        }
    }
}

impl From<PriceKey> for Charge {
    fn from(of: PriceKey) -> Self {
        Self::Work(of)
    }
}

impl PartialEq<PriceKey> for Charge {
    fn eq(&self, of: &PriceKey) -> bool {
        self.work() == Some(*of)
    }
}
