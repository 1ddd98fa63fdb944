//! How far a line of a list is: sent away, back, fitted; and the result of what was tested.

use serde::{Deserialize, Serialize};

use super::ListKind;
use crate::engine::Part;

/// A step of a line, in the order in which they are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Step {
    /// It was ordered, or sent to the machine shop.
    Sent,
    /// It came.
    Back,
    /// It is fitted.
    Fitted,
}

impl Step {
    /// Every one, in order.
    pub const ALL: [Self; 3] = [Self::Sent, Self::Back, Self::Fitted];

    /// In a word, as it stands on such a list.
    pub fn words(self, list: ListKind) -> &'static str {
        match (self, list) {
            (Self::Sent, ListKind::Order) => "Ordered",
            (Self::Sent, _) => "Sent",
            (Self::Back, ListKind::Order) => "Came",
            (Self::Back, _) => "Back",
            (Self::Fitted, _) => "Fitted",
        }
    }
}

/// How many of a line have taken a step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct StepTaken {
    /// Which step.
    pub step: Step,
    /// How many; 6 of 8 may have come.
    pub done: u32,
    /// When the last of them did, as the shop writes dates; may be empty.
    #[serde(default)]
    pub date: String,
}

/// What a test of pieces showed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct TestResult {
    /// How it was tested: "magnetic particles", "40 psi under water".
    pub how: String,
    /// By whom; may be empty.
    #[serde(default)]
    pub by: String,
    /// When, as the shop writes dates; may be empty.
    #[serde(default)]
    pub date: String,
    /// The pieces that passed.
    #[serde(default)]
    pub passed: Vec<Part>,
    /// Those that failed.
    #[serde(default)]
    pub failed: Vec<Part>,
}

impl TestResult {
    /// How and by whom, in words: "magnetic particles, A. Machinist, 3 May".
    pub fn told(&self) -> String {
        let told = [&self.how, &self.by, &self.date].map(|text| text.trim());
        told.into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(", ")
    }
}
