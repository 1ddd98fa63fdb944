//! What has been done about the items of the lists, and the items of the shop’s own.

use serde::{Deserialize, Serialize};

use super::{Asked, ListKind, Step, StepTaken, TestResult};
use crate::money::{JobScope, Money};

/// What has been done about an item.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Tick {
    /// How many of it are done; 0 where nothing is, and where steps tell it.
    pub done: u32,
    /// When, as the shop writes dates; may be empty.
    #[serde(default)]
    pub date: String,
    /// Of what was ordered: the number under which the supplier knows it; may be empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub part_number: String,
    /// A note: supplier, what is still missing; may be empty.
    #[serde(default)]
    pub note: String,
    /// How far it is, step by step; none where steps were not told apart.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Vec<StepTaken>>"))]
    pub steps: Vec<StepTaken>,
    /// What a test showed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub result: Option<TestResult>,
}

impl Tick {
    /// Whether it says anything at all.
    pub fn says_something(&self) -> bool {
        self.is_begun() || !self.note.is_empty() || !self.part_number.is_empty()
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

/// An item of the shop's own: gaskets, fasteners.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnItem {
    /// On which list.
    pub list: ListKind,
    /// What.
    pub what: String,
    /// How many.
    pub quantity: u32,
    /// Why.
    #[serde(default)]
    pub because: String,
    /// What one of it costs without tax; none where that is not known yet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub price: Option<Money>,
    /// The job with which the customer agrees to it; among the further items if not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub scope: Option<JobScope>,
}

impl OwnItem {
    /// Whether it stands on the bill: what is ordered or done does, what is looked at or put right only with a price.
    pub fn is_charged(&self) -> bool {
        self.price.is_some() || !matches!(self.list, ListKind::LookAgain | ListKind::PutRight)
    }
}

/// A tick with the item that it is about.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Ticked {
    /// The item, as it was asked for then.
    pub asked: Asked,
    /// What has been done.
    pub tick: Tick,
}

impl Ticked {
    /// Whether the tick is about an item as it is asked for now. What was ordered in one size is not what is wanted in
    /// another; but a note with nothing done yet goes along with its item to whatever size.
    pub fn is_about(&self, now: &Asked) -> bool {
        let key = &self.asked.key;
        key.is_about(&now.key) && (self.asked.size == now.size || !self.tick.is_begun() && *key == now.key)
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
