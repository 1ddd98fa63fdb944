//! The lists that are worked: nothing stands on one without the finding that put it there.

mod consent;
mod machine_shop;
mod make;
mod open;
mod order;
mod work;

pub use make::lists;
pub use open::{Open, still_open};

use serde::Serialize;

use crate::engine::Part;
use crate::job::{Consent, ListKind, Tick};

/// One line of a list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct ListItem {
    /// Its name, the same as long as it is about the same: ticks refer to it.
    pub id: String,
    /// What, in words.
    pub what: String,
    /// Size or work in words; may be empty.
    pub detail: String,
    /// How many.
    pub quantity: u32,
    /// The parts it is about, to go to the finding; may be empty.
    pub parts: Vec<Part>,
    /// What put it there.
    pub because: String,
    /// Not to be done yet, and why, each in a sentence; empty if nothing holds it.
    pub waits_for: Vec<String>,
    /// What the customer said to it in the last answer; none before there was one, and where nothing was asked.
    pub consent: Option<Consent>,
    /// What has been done about it.
    pub tick: Option<Tick>,
}

impl ListItem {
    /// Whether all of it is done.
    pub fn is_done(&self) -> bool {
        self.tick.as_ref().is_some_and(|tick| tick.done >= self.quantity)
    }
}

/// One list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct WorkList {
    /// Which.
    pub kind: ListKind,
    /// Its title.
    pub title: String,
    /// Its items.
    pub items: Vec<ListItem>,
    /// How many items are wholly done.
    pub done: usize,
}
