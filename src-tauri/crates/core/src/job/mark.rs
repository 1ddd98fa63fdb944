//! The marks of caps and rods, noted before they come off, so that each goes back to its own place and way round.

use serde::{Deserialize, Serialize};

use crate::engine::{Arrangement, End};

/// What carries a mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum MarkPlace {
    /// The cap of a main bearing, by number.
    MainCap(u8),
    /// The connecting rod of a cylinder.
    Rod(u8),
    /// The cap of a cylinder's rod.
    RodCap(u8),
}

impl MarkPlace {
    /// Every place of an arrangement, in strip-down order.
    pub fn all(arrangement: &Arrangement) -> Vec<Self> {
        let rods = (1..=arrangement.cylinders).flat_map(|n| [Self::Rod(n), Self::RodCap(n)]);
        rods.chain((1..=arrangement.mains).map(Self::MainCap)).collect()
    }

    /// Its name: "Rod cap 2".
    pub fn label(self) -> String {
        match self {
            Self::MainCap(n) => format!("Main cap {n}"),
            Self::Rod(n) => format!("Rod {n}"),
            Self::RodCap(n) => format!("Rod cap {n}"),
        }
    }

    /// A group within which two alike marks would be mistaken for each other. A rod and its cap carry the same mark.
    pub(super) fn group(self) -> &'static str {
        match self {
            Self::MainCap(_) => "main caps",
            Self::Rod(_) => "rods",
            Self::RodCap(_) => "rod caps",
        }
    }
}

/// The side of the engine on which a mark is stamped, seen from the rear looking to the front.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
#[allow(missing_docs, reason = "the names say it")]
pub enum MarkSide {
    Left,
    Right,
    Front,
    Rear,
    Underneath,
}

/// Where a mark comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Marking {
    /// It was there.
    Found,
    /// There was none; the mechanic made it.
    Made,
}

/// The marks of one cap or rod.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Mark {
    /// The number or letters as they stand there, such as "3" or "II".
    pub text: String,
    /// Where it comes from.
    pub marking: Marking,
    /// On which side it stands.
    pub side: Option<MarkSide>,
    /// Which way the arrow or the bearing tang points.
    pub points: Option<End>,
}
