//! Where on a part a reading was taken: at which station along it, in which direction across it.

use serde::{Deserialize, Serialize};

/// Along the part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Station {
    /// Towards the front of the engine.
    Front,
    /// Half way along.
    Middle,
    /// Towards the rear of the engine.
    Rear,
    /// In a bore: just below the upper limit of ring travel.
    Top,
    /// In a bore: just above the lower limit of ring travel.
    Bottom,
    /// The compression ring nearest the crown, or its groove.
    TopRing,
    /// The second ring or its groove.
    SecondRing,
    /// The third ring or its groove, where it is not the oil ring.
    ThirdRing,
    /// The oil control ring or its groove.
    OilRing,
}

impl Station {
    /// In words.
    pub fn label(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Middle => "middle",
            Self::Rear => "rear",
            Self::Top => "top",
            Self::Bottom => "bottom",
            Self::TopRing => "top ring",
            Self::SecondRing => "second ring",
            Self::ThirdRing => "third ring",
            Self::OilRing => "oil ring",
        }
    }
}

/// Across the part: two directions at right angles.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Direction {
    /// The first: upright; in a cylinder bore along the crankshaft.
    A,
    /// The second, at right angles to the first.
    B,
}

impl Direction {
    /// In words.
    pub fn label(self) -> &'static str {
        match self {
            Self::A => "A",
            Self::B => "B",
        }
    }
}

/// A place on a part. A quantity that has but one place has neither station nor direction.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Spot {
    /// Along the part.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub station: Option<Station>,
    /// Across the part.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub direction: Option<Direction>,
}

impl Spot {
    /// A station and a direction.
    pub const fn new(station: Option<Station>, direction: Option<Direction>) -> Self {
        Self { station, direction }
    }

    /// In words: "front, A"; nothing for the only place.
    pub fn label(self) -> String {
        let words: Vec<&str> =
            self.station.map(Station::label).into_iter().chain(self.direction.map(Direction::label)).collect();
        words.join(", ")
    }
}
