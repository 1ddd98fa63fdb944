//! The lists that are worked.

use serde::{Deserialize, Serialize};

/// Which list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum ListKind {
    /// To order.
    Order,
    /// One complete trip to the machine shop.
    MachineShop,
    /// Rebuilt, polished or whatever else the shop does itself.
    RebuildHere,
    /// Cleaned and put back.
    Clean,
    /// Looked at or measured again before anything can be said.
    LookAgain,
    /// Put right before assembly, from the causes.
    PutRight,
}

impl ListKind {
    /// Every list, in the order of the work.
    pub const ALL: [Self; 6] =
        [Self::LookAgain, Self::MachineShop, Self::Order, Self::RebuildHere, Self::Clean, Self::PutRight];

    /// Its title.
    pub fn title(self) -> &'static str {
        match self {
            Self::Order => "To order",
            Self::MachineShop => "For the machine shop",
            Self::RebuildHere => "Work done here",
            Self::Clean => "Clean",
            Self::LookAgain => "Look at or measure",
            Self::PutRight => "Put right before assembly",
        }
    }
}
