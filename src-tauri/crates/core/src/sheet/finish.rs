//! What the manual asks of a finished surface. It is handed on in its own words, printed and not judged.

use serde::{Deserialize, Serialize};

use super::SizeGroup;

/// How long each text may be, in characters.
pub(super) const MAX_WORDS: usize = 120;

/// The surface wanted on the journals or bores of a group.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Finish {
    /// Of what.
    pub of: SizeGroup,
    /// The finish, as the manual gives it: "16 microinch or finer"; may be empty.
    #[serde(default)]
    pub surface: String,
    /// Of bores the angle of the hone's marks, and from what it is counted: manuals differ; may be empty.
    #[serde(default)]
    pub hone_angle: String,
    /// The manual's page.
    #[serde(default)]
    pub source: String,
}

impl Finish {
    /// "finish 16 microinch or finer, hone marks 35 to 55° to the horizontal (p. 6-103)".
    pub fn words(&self) -> String {
        let told = [("finish ", &self.surface), ("hone marks ", &self.hone_angle)];
        let told: Vec<String> = told
            .iter()
            .filter(|(_, text)| !text.trim().is_empty())
            .map(|(what, text)| format!("{what}{}", text.trim()))
            .collect();
        match self.source.trim() {
            "" => told.join(", "),
            source => format!("{} ({source})", told.join(", ")),
        }
    }
}
