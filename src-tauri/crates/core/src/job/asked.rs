//! An item as it was asked for when it was ticked.

use serde::{Deserialize, Serialize};

use super::ItemKey;
use super::former_item::FormerItem;
use crate::measure::Length;

/// An item as it was asked for when it was ticked: so that the tick still tells what was ordered or sent when the job asks
/// for something else.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields, from = "Written")]
pub struct Asked {
    /// Which item.
    pub key: ItemKey,
    /// In words, with the size: "Main bearing shells, 0.010 in undersize"; empty where an old entry did not tell.
    pub words: String,
    /// The size beyond standard, in nanometres; zero is standard, none is no size or one that was not known yet.
    #[cfg_attr(feature = "schema", ts(type = "number | null"))]
    pub size: Option<Length>,
    /// How many; zero where an old entry did not tell.
    pub quantity: u32,
}

/// The forms in which an item has been written: today's, and one text in which everything was told.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(untagged)]
enum Written {
    Now(Now),
    Formerly(String),
}

#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
struct Now {
    key: ItemKey,
    #[serde(default)]
    words: String,
    #[serde(default)]
    size: Option<Length>,
    #[serde(default)]
    quantity: u32,
}

impl From<Written> for Asked {
    fn from(written: Written) -> Self {
        match written {
            Written::Now(Now { key, words, size, quantity }) => Self { key, words, size, quantity },
            Written::Formerly(text) => {
                let FormerItem { key, words, size } = FormerItem::read(&text);
                Self { key, words, size, quantity: 0 }
            }
        }
    }
}
