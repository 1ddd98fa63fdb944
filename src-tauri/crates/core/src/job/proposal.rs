//! What was proposed to the customer as it was shown, and the answer with the signature under it.

use serde::{Deserialize, Serialize};

use super::EditId;
use crate::money::{Charge, Quote};

/// The answer to one line of a proposal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Consent {
    /// Do it.
    Yes,
    /// Do not do it.
    No,
    /// Not now; ask again.
    Later,
}

impl Consent {
    /// Every answer.
    pub const ALL: [Self; 3] = [Self::Yes, Self::No, Self::Later];

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Yes => "yes",
            Self::No => "no",
            Self::Later => "later",
        }
    }
}

/// One line's answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LineAnswer {
    /// The line of the proposal.
    pub of: Charge,
    /// The answer.
    pub answer: Consent,
}

/// A stroke of a signature: points from left to right and top to bottom in a square of 10 000 by 10 000.
pub type Stroke = Vec<(u16, u16)>;

/// What the customer answered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct CustomerAnswer {
    /// The edit in which the proposal was made.
    pub proposal: EditId,
    /// An answer for each line.
    pub lines: Vec<LineAnswer>,
    /// Who answered.
    pub name: String,
    /// How: "signed on the screen", "by telephone".
    #[serde(default)]
    pub way: String,
    /// The signature, if it was drawn.
    #[serde(default)]
    pub signature: Vec<Stroke>,
}

/// A proposal as it was shown, with its answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Proposed {
    /// The edit that made it.
    pub edit: EditId,
    /// Exactly what was shown.
    pub quote: Quote,
    /// The last answer to it.
    pub answer: Option<CustomerAnswer>,
}
