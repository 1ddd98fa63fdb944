//! A decision about a part with its reasons.

use std::borrow::Cow;

use serde::Serialize;

use super::rules::{COMMON_SIZE, PIECE_OF_WORKED_PARTS, Rule, RuleId, SEEN_ALONG};
use crate::words::Terms;
use crate::work::{Outcome, Work};

/// What to do about one part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Decision {
    /// What stands: the person's decision, or else the rules'.
    pub outcome: Outcome,
    /// What the rules say.
    pub by_rules: Outcome,
    /// The person's reason, where they decided otherwise.
    pub overruled_because: Option<String>,
    /// The way in which it is put right, where more than one serves: sleeved, welded up and reground.
    pub way: Option<Work>,
    /// Every rule that applies, the deciding one first; before them a way that a person chose.
    pub reasons: Vec<Reason>,
    /// Whether anybody has looked at the part; a part that is renewed anyway has an outcome without a look.
    pub looked_at: bool,
    /// What a person may choose instead.
    pub possible: Vec<Outcome>,
}

impl Decision {
    /// What is charged and listed for it: the way, else the work of the outcome; none where nothing is.
    pub fn work(&self) -> Option<Work> {
        self.way.or_else(|| Work::of(self.outcome))
    }

    /// In words, lower case: the way, where more than one serves, else the outcome.
    pub fn words(&self) -> &'static str {
        self.way.map_or_else(|| self.outcome.words(), Work::words)
    }

    /// Why, as it stands: the person’s reason, or else that of the rule that decides.
    pub fn because(&self) -> &str {
        self.overruled_because.as_deref().unwrap_or_else(|| self.because_by_rules())
    }

    /// Whether it stands because of the group of sizes to which the part belongs: such a reason names the part that decides.
    pub fn is_of_group(&self) -> bool {
        self.overruled_because.is_none() && self.reasons.first().is_some_and(|reason| reason.rule == COMMON_SIZE)
    }

    /// Whether it stands only because of what is done to parts of it, or because it is looked at with another part.
    pub fn goes_along(&self) -> bool {
        let first = self.reasons.first();
        self.overruled_because.is_none()
            && first.is_some_and(|reason| [PIECE_OF_WORKED_PARTS, SEEN_ALONG].contains(&reason.rule))
    }

    /// The reason of the rule that decides, whatever a person says; empty if no rule has a word on it.
    pub fn because_by_rules(&self) -> &str {
        self.reasons.first().map_or("", |reason| reason.because.as_str())
    }
}

/// Why.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Reason {
    /// The rule.
    pub rule: RuleId,
    /// What it concludes.
    pub outcome: Outcome,
    /// Why, in a sentence that names the finding.
    pub because: String,
    /// The rule itself, in a sentence.
    pub why: Cow<'static, str>,
    /// Where the rule comes from.
    pub source: &'static str,
}

impl Reason {
    pub(super) fn of(rule: &Rule, outcome: Outcome, because: String, terms: Terms) -> Self {
        Self { rule: rule.id, outcome, because, why: rule.why(terms), source: rule.source }
    }
}
