//! How an engine is made, as far as the work depends on it. All of it may be left open: then nothing is concluded from it.

use serde::{Deserialize, Serialize};

/// What takes the end thrust of the crankshaft.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum ThrustBearing {
    /// Flanges on the shells of one main: they come with these shells.
    Flange,
    /// Washers of their own.
    Washers,
}

/// What a camshaft runs in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum CamBore {
    /// Bushes that are driven in.
    Bushes,
    /// The casting itself.
    Casting,
}

/// The wall on which the rings run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum BoreWall {
    /// Iron: it can be honed.
    Iron,
    /// A coating, which honing would take off.
    Coated,
}

/// What cools the cylinders.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Cooling {
    /// Water, in jackets closed by core plugs.
    Water,
    /// Air: there are no core plugs.
    Air,
}

/// What the pistons run in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Cylinders {
    /// The block itself.
    Block,
    /// Sleeves pressed into the block.
    DrySleeves,
    /// Liners with water round them: they are renewed, not bored.
    WetLiners,
    /// Barrels that stand on the crankcase, pieces of their own.
    Barrels,
}

/// What lights the charge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Ignition {
    /// A spark.
    Spark,
    /// The heat of compression.
    Compression,
}

/// How many heads a bank has.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Heads {
    /// One.
    One,
    /// Several, each over some of its cylinders.
    Several,
    /// One for each cylinder.
    EachCylinder,
}

/// How an engine is made; what is not known is none.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Construction {
    /// What takes the end thrust.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub thrust: Option<ThrustBearing>,
    /// What the camshaft runs in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub cam_bore: Option<CamBore>,
    /// The wall of the cylinders.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub bore_wall: Option<BoreWall>,
    /// What cools them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub cooling: Option<Cooling>,
    /// What the pistons run in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub cylinders: Option<Cylinders>,
    /// What lights the charge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub ignition: Option<Ignition>,
    /// How many heads a bank has.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub heads: Option<Heads>,
}

impl Construction {
    /// Whether nothing is known of it.
    pub fn is_unknown(&self) -> bool {
        *self == Self::default()
    }

    /// Whether a worn cylinder is renewed by itself, its block staying.
    pub fn has_cylinders_of_their_own(&self) -> bool {
        matches!(self.cylinders, Some(Cylinders::WetLiners | Cylinders::Barrels))
    }

    /// What is known, each in words, lower case, for the head of a paper.
    pub fn words(&self) -> Vec<&'static str> {
        let ignition = self.ignition.map(|ignition| match ignition {
            Ignition::Spark => "spark ignition",
            Ignition::Compression => "compression ignition",
        });
        let cooling = self.cooling.map(|cooling| match cooling {
            Cooling::Water => "cooled by water",
            Cooling::Air => "cooled by air",
        });
        let cylinders = self.cylinders.map(|cylinders| match cylinders {
            Cylinders::Block => "cylinders in the block",
            Cylinders::DrySleeves => "dry sleeves",
            Cylinders::WetLiners => "wet liners",
            Cylinders::Barrels => "barrels",
        });
        let wall = self.bore_wall.map(|wall| match wall {
            BoreWall::Iron => "iron bores",
            BoreWall::Coated => "coated bores",
        });
        let heads = self.heads.map(|heads| match heads {
            Heads::One => "one head on each bank",
            Heads::Several => "several heads on each bank",
            Heads::EachCylinder => "one head on each cylinder",
        });
        let thrust = self.thrust.map(|thrust| match thrust {
            ThrustBearing::Flange => "thrust flanges on the shells",
            ThrustBearing::Washers => "loose thrust washers",
        });
        let cam_bore = self.cam_bore.map(|bore| match bore {
            CamBore::Bushes => "camshaft in bushes",
            CamBore::Casting => "camshaft in the casting",
        });
        [ignition, cooling, cylinders, wall, heads, thrust, cam_bore].into_iter().flatten().collect()
    }
}
