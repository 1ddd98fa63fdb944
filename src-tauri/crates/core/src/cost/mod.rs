//! What the rebuild costs, from the decisions and the shop's prices.

mod proposed_jobs;
mod quote;
mod ways;

pub use quote::quote;
pub use ways::{Way, Ways, ways};
