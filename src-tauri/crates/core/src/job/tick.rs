//! What has been done about the items of the lists, and the items of the shop’s own.

use serde::{Deserialize, Serialize};

use super::{Asked, ListKind, StepTaken, TestResult};
use crate::money::Money;

/// What has been done about an item.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Tick {
    /// How many of it are done; 0 where nothing is, and where steps tell it.
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
    /// How far it is, step by step; none where steps were not told apart.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Vec<StepTaken>>"))]
    pub steps: Vec<StepTaken>,
    /// What a test showed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub result: Option<TestResult>,
}

impl Tick {
    /// Whether it says anything at all.
    pub fn says_something(&self) -> bool {
        self.is_begun() || !self.note.is_empty() || !self.part_number.is_empty()
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
    /// What one of it costs without tax; none where that is not known yet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub price: Option<Money>,
}

impl OwnItem {
    /// Whether it stands on the bill: what is ordered or done does, what is looked at or put right only with a price.
    pub fn is_charged(&self) -> bool {
        self.price.is_some() || !matches!(self.list, ListKind::LookAgain | ListKind::PutRight)
    }
}

/// A tick with the item that it is about.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Ticked {
    /// The item, as it was asked for then.
    pub asked: Asked,
    /// What has been done.
    pub tick: Tick,
}

impl Ticked {
    /// Whether the tick is about an item as it is asked for now. What was ordered in one size is not what is wanted in
    /// another; but a note with nothing done yet goes along with its item to whatever size.
    pub fn is_about(&self, now: &Asked) -> bool {
        let key = &self.asked.key;
        key.is_about(&now.key) && (self.asked.size == now.size || !self.tick.is_begun() && *key == now.key)
    }
}
