//! The cause model held against other ways of computing, against published patterns and against itself.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::panic,
    reason = "a test may stop where it is"
)]

mod brute_force;
mod calibration;
#[path = "../data/mod.rs"]
mod data;
mod left_out;
mod misnamed;
mod patterns;
mod peer;
mod random;
mod reference;
mod told_apart;
