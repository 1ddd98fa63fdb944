//! The trade itself: an engine and its parts, the wear seen on them, why it happened, what to do about it.
//!
//! Everything here is a pure function of its arguments. One direction runs through the crate:
//!
//! ```text
//! Edit ──▶ Job ──▶ Assessment ──▶ Report
//! ```
//!
//! [`job`] holds what a person did (edits) and folds it into all that is known (a job); [`assess`] computes what
//! follows from it; [`document`] turns both into the content of the papers that leave the shop.
//!
//! What is *not* here: files, databases, clocks, randomness, pictures' bytes, typesetting. Time comes in as a number,
//! pictures as the name of their content.

#![warn(missing_docs)]

pub mod assess;
pub mod cause;
pub mod caution;
pub mod cost;
pub mod date;
pub mod decide;
pub mod document;
pub mod engine;
pub mod figure;
pub mod job;
pub mod label;
pub mod list;
pub mod measure;
pub mod money;
pub mod operation;
pub mod sheet;
pub mod sizing;
pub mod under_way;
pub mod view;
pub mod waiting;
pub mod wear;
pub mod words;
pub mod work;
