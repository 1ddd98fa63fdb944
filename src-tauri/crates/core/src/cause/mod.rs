//! Why it happened: hidden causes, seen wear, a probability model computed exactly, explained in words.

use serde::Serialize;

use crate::engine::{Engine, Part};
use crate::job::Job;

/// The ranked causes of one engine's wear.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct CauseReport {
    /// Whether enough has been seen to name a cause.
    pub enough_seen: bool,
    /// One sentence that a customer understands: the cause, or that not enough has been seen.
    pub summary: String,
    /// Every cause of the catalogue, most likely first.
    pub causes: Vec<CauseView>,
}

/// One cause with what speaks for and against it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct CauseView {
    /// Its written form, such as `dirt-in-oil`.
    pub id: String,
    /// Its name, lower case.
    pub name: String,
    /// The computed probability, 0 to 1.
    pub probability: f64,
    /// The probability as coarse as the evidence is: "very likely", "likely", "possible", "unlikely".
    pub likelihood: String,
    /// The sentence for the customer.
    pub plainly: String,
    /// What speaks for it, strongest first.
    pub evidence_for: Vec<Evidence>,
    /// What speaks against it, strongest first.
    pub evidence_against: Vec<Evidence>,
    /// What to check before assembly.
    pub check: Vec<String>,
    /// Where its figures come from.
    pub source: String,
}

/// A group of like findings and its weight.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Evidence {
    /// In words: "scoring, grade 3, on 4 lower main shells".
    pub words: String,
    /// The parts it was seen on; empty for what is known of the engine's past.
    pub parts: Vec<Part>,
    /// How much it changes the odds of the cause: the factor, as its base-2 logarithm rounded to a tenth. Positive
    /// speaks for the cause.
    pub weight: f64,
}

/// Diagnoses an engine.
pub fn diagnose(engine: Option<&Engine>, job: &Job) -> CauseReport {
    let _ = (engine, job);
    CauseReport { enough_seen: false, summary: String::new(), causes: vec![] }
}
