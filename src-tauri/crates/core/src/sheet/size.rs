//! The series of sizes that journals are ground to and cylinders bored to.

use serde::{Deserialize, Serialize};

use crate::engine::PartKind;
use crate::measure::{Entry, Stated};

/// One of the two groups of journals on a crankshaft: each is ground to one size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Journals {
    /// The main journals.
    Mains,
    /// The crankpins.
    Crankpins,
}

impl Journals {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Mains, Self::Crankpins];

    /// As a group of sizes.
    pub fn group(self) -> SizeGroup {
        match self {
            Self::Mains => SizeGroup::Mains,
            Self::Crankpins => SizeGroup::Crankpins,
        }
    }

    /// The kind of part in which their shells sit.
    pub fn housing(self) -> PartKind {
        match self {
            Self::Mains => PartKind::HousingBore,
            Self::Crankpins => PartKind::Rod,
        }
    }

    /// Whether a mark by which their shells are graded is stamped for a part of that kind.
    pub fn are_marked_on(self, kind: PartKind) -> bool {
        kind == self.housing() || kind == self.group().kind()
    }
}

/// What is brought to one common size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum SizeGroup {
    /// The main journals.
    Mains,
    /// The crankpins.
    Crankpins,
    /// The cylinder bores.
    Bores,
}

impl SizeGroup {
    /// Every group.
    pub const ALL: [Self; 3] = [Self::Mains, Self::Crankpins, Self::Bores];

    /// In words, plural.
    pub fn label(self) -> &'static str {
        match self {
            Self::Mains => "main journals",
            Self::Crankpins => "crankpins",
            Self::Bores => "cylinder bores",
        }
    }
}

/// An undersize: the range to which journals are ground, and the wall of the shells that go with it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Undersize {
    /// Of which journals.
    pub journals: Journals,
    /// How much below standard: 0.010 in.
    pub size: Entry,
    /// The smallest ground diameter; standard less the undersize if not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub min: Option<Stated>,
    /// The largest ground diameter; standard less the undersize if not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub max: Option<Stated>,
    /// The thinnest wall of a new shell; standard plus half the undersize if not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub wall_min: Option<Stated>,
    /// The thickest wall of a new shell; standard plus half the undersize if not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub wall_max: Option<Stated>,
    /// Shells for slight wear on a journal that is not ground (TM 5-4320-300-14: 0.002 in).
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<bool>"))]
    pub without_grinding: bool,
    /// The manual's page.
    #[serde(default)]
    pub source: String,
}

/// What is brought to an oversize.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Oversized {
    /// The cylinder bores, all to one.
    #[default]
    Cylinders,
    /// The bores of tappets, each that needs it.
    Tappets,
}

impl Oversized {
    /// The kind of part that is brought to it.
    pub fn kind(self) -> PartKind {
        match self {
            Self::Cylinders => PartKind::Bore,
            Self::Tappets => PartKind::TappetBore,
        }
    }

    /// The kind of part that comes in the same size.
    pub fn mate(self) -> PartKind {
        match self {
            Self::Cylinders => PartKind::Piston,
            Self::Tappets => PartKind::Tappet,
        }
    }

    /// Whether they are cylinders, which need not be said.
    pub fn is_cylinders(&self) -> bool {
        *self == Self::Cylinders
    }
}

/// An oversize: the range to which cylinders are bored or tappet bores reamed, and the piston or tappet that goes with it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Oversize {
    /// Of what; of cylinders if not given.
    #[serde(default, skip_serializing_if = "Oversized::is_cylinders")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Oversized>"))]
    pub of: Oversized,
    /// How much above standard: 0.020 in.
    pub size: Entry,
    /// The smallest finished bore; standard plus the oversize if not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub min: Option<Stated>,
    /// The largest finished bore; standard plus the oversize if not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub max: Option<Stated>,
    /// The smallest new piston or tappet; standard plus the oversize if not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub piston_min: Option<Stated>,
    /// The largest new piston or tappet; standard plus the oversize if not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub piston_max: Option<Stated>,
    /// The manual's page.
    #[serde(default)]
    pub source: String,
}
