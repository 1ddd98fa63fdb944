//! The actions: a file each, with what the action takes (`Arguments`), what it answers (`Reply`) and what it does
//! (`act`).

macro_rules! modules {
    ($($name:ident),* $(,)?) => { $(pub mod $name;)* };
}
actions!(modules);

use serde::Deserialize;

/// For actions that need to be told nothing.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Nothing {}
