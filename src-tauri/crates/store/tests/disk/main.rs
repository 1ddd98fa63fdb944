//! The disk under the shop: the power goes off, the disk is full, a program of another version wrote it.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

#[cfg(target_os = "linux")]
mod full;
#[cfg(target_os = "linux")]
mod import;
mod migrations;
#[cfg(target_os = "linux")]
mod power;
#[cfg(target_os = "linux")]
mod recovery;
#[cfg(target_os = "linux")]
mod tape;
