//! What to do about each part: a plain list of rules, the severest applicable one wins, all are shown.

mod outcome;

pub use outcome::Outcome;

use serde::Serialize;

use crate::engine::Engine;
use crate::job::Job;

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
    /// Every rule that applies, the deciding one first.
    pub reasons: Vec<Reason>,
    /// Whether anybody has looked at the part; a part that is renewed anyway has an outcome without a look.
    pub looked_at: bool,
    /// What a person may choose instead.
    pub possible: Vec<Outcome>,
}

/// Why.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Reason {
    /// The rule's written form, such as `shells-renewed`.
    pub rule: String,
    /// What it concludes.
    pub outcome: Outcome,
    /// Why, in a sentence that names the finding.
    pub because: String,
    /// Where the rule comes from.
    pub source: String,
}

/// Decides about every part, in the order of [`Engine::parts`].
pub fn decide(engine: &Engine, job: &Job) -> Vec<Decision> {
    let _ = job;
    engine
        .parts()
        .iter()
        .map(|part| Decision {
            outcome: Outcome::CantSay,
            by_rules: Outcome::CantSay,
            overruled_because: None,
            reasons: vec![],
            looked_at: false,
            possible: part.kind.row().outcomes.to_vec(),
        })
        .collect()
}
