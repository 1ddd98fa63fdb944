//! How far a line of a list is: sent away, back, fitted; and the result of what was tested.

use serde::{Deserialize, Serialize};

use super::{ListKind, Tick};
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

impl Tick {
    /// How many have taken a step: whatever has taken a later one has taken it too. What was only said to be done had
    /// come back, when steps were not told apart.
    pub fn at(&self, step: Step) -> u32 {
        let taken = self.steps.iter().filter(|taken| taken.step >= step).map(|taken| taken.done);
        let done = if step == Step::Fitted { 0 } else { self.done };
        taken.max().unwrap_or(0).max(done)
    }

    /// Whether anything has been ordered, sent or done.
    pub fn is_begun(&self) -> bool {
        self.at(Step::Sent) > 0 || self.result.is_some()
    }

    /// Whether so many have come back or are done.
    pub fn is_whole(&self, quantity: u32) -> bool {
        self.result.is_some() || self.at(Step::Back) >= quantity
    }

    /// The day of a step; empty where it was not told.
    pub fn date_of(&self, step: Step) -> &str {
        let taken = self.steps.iter().find(|taken| taken.step == step);
        taken.map_or(if step == Step::Back && self.done > 0 { &self.date } else { "" }, |taken| &taken.date)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tick(done: u32, steps: &[(Step, u32)]) -> Tick {
        let steps = steps.iter().map(|(step, done)| StepTaken { step: *step, done: *done, date: String::new() });
        Tick { done, steps: steps.collect(), ..Tick::default() }
    }

    #[test]
    fn a_later_step_tells_of_those_before_it() {
        let come_in_part = tick(0, &[(Step::Sent, 8), (Step::Back, 6)]);
        assert_eq!(Step::ALL.map(|step| come_in_part.at(step)), [8, 6, 0]);
        assert!(!come_in_part.is_whole(8) && come_in_part.is_whole(6));
        let fitted = tick(0, &[(Step::Fitted, 8)]);
        assert_eq!(Step::ALL.map(|step| fitted.at(step)), [8, 8, 8]);
    }

    #[test]
    fn what_was_only_said_to_be_done_had_come_back() {
        assert_eq!(Step::ALL.map(|step| tick(5, &[]).at(step)), [5, 5, 0]);
    }

    #[test]
    fn what_was_tested_is_whole_whatever_came_of_it() {
        let result =
            TestResult { how: "dye".into(), by: String::new(), date: String::new(), passed: vec![], failed: vec![] };
        assert!(Tick { result: Some(result), ..Tick::default() }.is_whole(1));
    }
}
