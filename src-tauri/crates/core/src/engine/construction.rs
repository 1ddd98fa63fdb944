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
}

impl Construction {
    /// Whether nothing is known of it.
    pub fn is_unknown(&self) -> bool {
        *self == Self::default()
    }
}
