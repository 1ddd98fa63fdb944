//! What the rebuild costs, from the decisions and the shop's prices.

mod other_engines;
mod proposed_jobs;
mod quote;
mod ways;

pub use other_engines::{EngineBeside, OtherEngines, other_engines};
pub use quote::quote;
pub use ways::{Way, Ways, ways};
