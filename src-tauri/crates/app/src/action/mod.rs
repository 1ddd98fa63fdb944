//! The actions: a file each, with what the action takes (`Arguments`), what it answers (`Reply`) and what it does
//! (`act`).

macro_rules! modules {
    ($($name:ident),* $(,)?) => { $(pub mod $name;)* };
}
actions!(modules);

use serde::{Deserialize, Serialize};
use wearbook_store::JobId;

/// For actions that take a while and need to be told nothing else.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Awaited {
    /// A number by which to ask how far it is.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub way: Option<u32>,
}

impl Awaited {
    /// Reads it, for whoever does such a thing without an action.
    ///
    /// # Errors
    /// `arguments-refused`.
    pub fn read(arguments: serde_json::Value) -> Result<Self, crate::Error> {
        crate::dispatch::read(arguments)
    }
}

/// The job that an action has put into the book.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Added {
    /// The job.
    pub job: JobId,
}

/// For actions that need to be told nothing, or have nothing to tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Nothing {}

/// For actions that need to be told of which job, and nothing else.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct OfJob {
    /// The job.
    pub job: JobId,
}
