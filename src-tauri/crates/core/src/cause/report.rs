//! What is told of the causes of one engine's wear.

use serde::Serialize;

use super::answers::ComplaintAnswer;
use super::catalogue::Todo;
use super::strength::Strength;
use super::verdict::Verdict;
use crate::engine::Part;

/// The ranked causes of one engine's wear.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct CauseReport {
    /// What can be said of the whole engine.
    pub verdict: Verdict,
    /// Whether enough has been seen to name a cause, and one is likely beside ordinary wear.
    pub enough_seen: bool,
    /// One sentence that a customer understands: the cause, or that not enough has been seen.
    pub summary: String,
    /// What the customer complained of, each answered.
    pub answers: Vec<ComplaintAnswer>,
    /// Every cause of the catalogue that this engine can have, most likely first. Several may hold at once: the
    /// probabilities don't sum to 1. A cause of one place (a bent rod, dirt behind a shell) stands here once, with the
    /// probability that it is so at some place or other; `places` says where.
    pub causes: Vec<CauseView>,
    /// The ways in that were found, whatever came by them: each is put right.
    pub to_close: Vec<WayToClose>,
    /// What was seen that no cause of the catalogue explains well, worst first.
    pub unexplained: Vec<Unexplained>,
}

/// One cause with what speaks for and against it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct CauseView {
    /// Its written form, such as `dirt-in-oil` or `bent-rod`.
    pub id: String,
    /// Its name, lower case; with the place where it is likely: "bent or twisted rod, cylinder 3".
    pub name: String,
    /// The computed probability, 0 to 1.
    pub probability: f64,
    /// Whether it is the wear that every engine has with time: no cause to be put right, and never named or told as one.
    pub ordinary: bool,
    /// Whether it is named as a cause: likelier than not, and enough has been seen.
    pub named: bool,
    /// Whether it is told with its reasons, and what it asks to be put right is to be done: at least possible, and enough
    /// has been seen.
    pub told: bool,
    /// The probability in words: "very likely", "likely", "possible", "unlikely", "very unlikely".
    pub likelihood: String,
    /// The probability in figures as coarse as the evidence is: "about 80 %", "more than 95 %".
    pub percent: String,
    /// The sentence for the customer.
    pub plainly: String,
    /// Whether it is of the whole engine, not of one place.
    pub whole_engine: bool,
    /// For a cause of one place: where it may be, likeliest first; places below 5 % are left out.
    pub places: Vec<PlaceView>,
    /// What speaks for it, strongest first. For a cause of one place: at the likeliest place.
    pub evidence_for: Vec<Evidence>,
    /// What speaks against it, strongest first.
    pub evidence_against: Vec<Evidence>,
    /// The ways by which it may have come in, likeliest first.
    pub ways_in: Vec<WayInView>,
    /// How it came about, from the way in to the complaint.
    pub chain: Chain,
    /// What to check before assembly.
    pub check: Vec<Todo>,
    /// What to put right before assembly.
    pub put_right: Vec<Todo>,
    /// Where its figures come from.
    pub source: String,
}

/// How one cause came about.
#[derive(Debug, Clone, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Chain {
    /// The ways in that are likely and of which something tells, in words, lower case, what was found first; empty while
    /// none is.
    pub ways: Vec<String>,
    /// Whether the cause comes in from somewhere at all; else there is nothing to look for.
    pub has_way_in: bool,
    /// The cause, in words, lower case.
    pub cause: String,
    /// What it did, in words: the findings that speak for it most.
    pub damage: Vec<String>,
    /// The complaints that this explains, in words.
    pub complaints: Vec<String>,
    /// What to ask about the past to know the way in, as far as nobody did; empty once one is named.
    pub ask: Vec<String>,
    /// Where to look for the way in, as far as nobody has; empty once one is named.
    pub look: Vec<Part>,
    /// The same in words.
    pub look_labels: Vec<String>,
}

/// A way in by which a cause may have come.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct WayInView {
    /// Its written form.
    pub id: String,
    /// In words, lower case: "an air cleaner that leaks, is torn or missing".
    pub words: String,
    /// How likely it was this way, if the cause is so; 0 to 1.
    pub probability: f64,
    /// Whether it is named with the cause.
    pub named: bool,
}

/// A way in that was found, and what is put right about it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct WayToClose {
    /// The written form of the way in.
    pub id: String,
    /// What is put right, a sentence.
    pub todo: String,
    /// What shows it: "Air cleaner and duct: torn or leaking, grade 3".
    pub found: Vec<String>,
    /// On what it was found.
    pub parts: Vec<Part>,
}

/// A place at which a cause may be.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct PlaceView {
    /// The place in words: "cylinder 3", "main 2", "crankpin 1".
    pub label: String,
    /// The probability that the cause is at this place, 0 to 1.
    pub probability: f64,
    /// Whether the place is named with the cause.
    pub named: bool,
    /// The parts of the place that were looked at or measured.
    pub parts: Vec<Part>,
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
    /// How strongly that is.
    pub strength: Strength,
    /// Whether no other cause explains it: it would be unlikely without this one.
    pub alone: bool,
}

/// Findings that fit no cause of the catalogue.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Unexplained {
    /// In words: "pitting, grade 3, on thrust face, front side of main 3".
    pub words: String,
    /// The parts it was seen on.
    pub parts: Vec<Part>,
    /// The probability that no cause of the catalogue made it, 0 to 1; the mean over the parts.
    pub probability: f64,
}
