//! Another engine that could take the place of the one on the bench, at the price that the shop knows.

use serde::{Deserialize, Serialize};

use super::{Money, PartState};

/// Another engine that could take the place of this one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OtherEngine {
    /// Which, in the shop's words.
    pub what: String,
    /// New or not.
    pub state: PartState,
    /// What it costs without tax, as complete as the rebuilt one.
    pub net: Money,
}

impl OtherEngine {
    /// Entered for one job at most: what is side by side must be seen at once.
    pub const MOST: usize = 6;
}
