//! One line of a sheet: the range, the wear limit and the source of one quantity.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use crate::engine::{At, Part, PartKind, Port};
use crate::measure::{Entry, Quantity, Stated, Station, present};

/// What a line is about. Lines that name a station, a port or numbers go before lines that do not.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LineKey {
    /// The kind of part.
    pub kind: PartKind,
    /// The quantity.
    pub quantity: Quantity,
    /// The name of a quantity of the manual's own; else empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<String>"))]
    pub name: String,
    /// Only at this station: one of the rings, say.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub station: Option<Station>,
    /// Only at intake or exhaust.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub port: Option<Port>,
    /// Only at these mains, crankpins, cylinders or cam bearings; all if empty.
    #[serde(default, skip_serializing_if = "BTreeSet::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<BTreeSet<u8>>"))]
    pub numbers: BTreeSet<u8>,
}

/// One line of a sheet. At least one of minimum, maximum, limit and rate is given.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Line {
    /// What it is about.
    pub of: LineKey,
    /// The smallest size of a new part.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub min: Option<Stated>,
    /// The largest size of a new part.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub max: Option<Stated>,
    /// How far it may wear: the least for what wear makes smaller, the most for what wear makes larger. Without it the
    /// range of a new part is the limit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub limit: Option<Stated>,
    /// A part exactly at the limit fails ("replace at 0.25 or more"); else it passes.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<bool>"))]
    pub fails_at_limit: bool,
    /// The limit is the least allowed although this quantity wears larger, or is one of the manual's own, which are
    /// taken to wear larger.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<bool>"))]
    pub limit_is_least: bool,
    /// A limit in proportion to another size.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub rate: Option<Rate>,
    /// For wear and losses: from which end of the new range they count. Without it both are worked out, and where they
    /// disagree the answer is open.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub datum: Option<Datum>,
    /// The manual's page, or "common practice".
    #[serde(default)]
    pub source: String,
}

/// A limit in proportion: so much for each so much of another size.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Rate {
    /// So much: 0.0004 in.
    pub by: Entry,
    /// For each so much: 1 in.
    pub per: Entry,
    /// Of what.
    pub of: Per,
    /// Counted from the end of the new range (a clearance may exceed its high limit by so much), instead of from zero.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<bool>"))]
    pub beyond_range: bool,
}

/// Of what a rate is taken.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Per {
    /// The nominal diameter: the end of the sheet's range from which wear counts.
    Diameter,
    /// The length of the journal: read, or from the sheet.
    Length,
    /// The length over which the reading was taken: bend and twist of rods.
    Over,
    /// A length that the sheet gives here: the travel of the piston, say.
    Given(Entry),
}

/// From which end of the new range wear counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Datum {
    /// The smallest new size.
    Min,
    /// The largest new size.
    Max,
}

impl Line {
    /// The same line, about the part that has the quantity now.
    pub fn in_present_form(&self) -> Self {
        Self { of: self.of.in_present_form(), ..self.clone() }
    }
}

impl LineKey {
    /// The same, about the part that has the quantity now.
    pub fn in_present_form(&self) -> Self {
        let (kind, quantity) = present(self.kind, self.quantity);
        Self { kind, quantity, ..self.clone() }
    }

    /// About a quantity wherever it occurs.
    pub fn everywhere(kind: PartKind, quantity: Quantity) -> Self {
        Self { kind, quantity, name: String::new(), station: None, port: None, numbers: BTreeSet::new() }
    }

    /// Whether it speaks of this part and station.
    pub fn speaks_of(&self, part: Part, station: Option<Station>) -> bool {
        let (number, port) = match part.at {
            At::Engine => (None, None),
            At::Main(n) | At::MainHalf(n, _) | At::Crankpin(n) | At::Cylinder(n) | At::CylinderHalf(n, _) => {
                (Some(n), None)
            }
            At::Camshaft(n) | At::CamBearing(_, n) => (Some(n), None),
            At::Valve(n, port, _) => (Some(n), Some(port)),
            At::ThrustSide(_) => (None, None),
        };
        self.kind == part.kind
            && (self.station.is_none() || self.station == station)
            && (self.port.is_none() || self.port == port)
            && (self.numbers.is_empty() || number.is_some_and(|number| self.numbers.contains(&number)))
    }

    /// How narrowly it speaks: the narrowest line that fits decides.
    pub fn narrowness(&self) -> usize {
        usize::from(self.station.is_some()) + usize::from(self.port.is_some()) + usize::from(!self.numbers.is_empty())
    }
}
