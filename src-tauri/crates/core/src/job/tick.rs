//! What has been done about the items of the lists, and the items of the shop’s own.

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
    /// Rebuilt or polished in the shop.
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
            Self::RebuildHere => "Rebuild here",
            Self::Clean => "Clean",
            Self::LookAgain => "Look at or measure",
            Self::PutRight => "Put right before assembly",
        }
    }
}

/// What has been done about an item.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Tick {
    /// How many of it are done; 0 takes the tick off.
    pub done: u32,
    /// When, as the shop writes dates; may be empty.
    #[serde(default)]
    pub date: String,
    /// Of what was ordered: the number under which the supplier knows it; may be empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub part_number: String,
    /// A note: supplier, what is still missing; may be empty.
    #[serde(default)]
    pub note: String,
}

impl Tick {
    /// Whether it says anything at all.
    pub fn says_something(&self) -> bool {
        self.done > 0 || !self.note.is_empty() || !self.part_number.is_empty()
    }
}

/// An item of the shop's own: gaskets, fasteners.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnItem {
    /// On which list.
    pub list: ListKind,
    /// What.
    pub what: String,
    /// How many.
    pub quantity: u32,
    /// Why.
    #[serde(default)]
    pub because: String,
}
