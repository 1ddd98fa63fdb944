//! What the rebuild costs, from the decisions and the shop's prices.

mod left_out;
mod other_engines;
mod proposed_jobs;
mod quote;
mod scopes;
mod ways;

pub use left_out::{left_out, unpriced};
pub use other_engines::{EngineBeside, OtherEngines, other_engines};
pub use quote::quote;
pub use ways::{Way, Ways, ways};
