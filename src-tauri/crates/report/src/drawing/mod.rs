//! Drawings in ink: the engine's plan with its hatching by severity, zones, readings, forms, signatures.
//!
//! All measures are millimetres on paper; y runs down.

mod bar;
mod code;
mod form;
mod hatch;
mod layout;
mod markup;
mod outline;
mod packing;
mod signature;
mod svg;
mod zones;

pub(crate) use bar::{bar, sample};
pub(crate) use code::code;
pub(crate) use form::forms;
pub(crate) use layout::{Page, pages};
pub(crate) use markup::markups;
pub(crate) use signature::signature;
pub(crate) use zones::zones;

use hatch::Ink;
use svg::Svg;
use wearbook_core::view::Seen;
use wearbook_core::wear::Grade;

/// A point on paper: x, y.
pub(crate) type Point = (f64, f64);

/// The key of the hatching: a swatch and its words for every step, from not looked at to the worst.
pub(crate) fn key() -> Vec<(String, &'static str)> {
    let steps = [(Seen::NotLooked, "not looked at"), (Seen::Clean, "looked at, clean")];
    steps.map(|(seen, words)| (swatch(seen, None), words)).into_iter().chain(grades()).collect()
}

/// The same of the grades alone.
pub(crate) fn grades() -> Vec<(String, &'static str)> {
    let words = ["grade 1", "grade 2", "grade 3", "grade 4, worst"];
    Grade::ALL.into_iter().zip(words).map(|(grade, words)| (swatch(Seen::Worn, Some(grade)), words)).collect()
}

/// Size of a swatch.
const SWATCH: (f64, f64) = (8.0, 4.6);

/// A small field in the ink of what was seen.
pub(crate) fn swatch(seen: Seen, worst: Option<Grade>) -> String {
    let ink = Ink::of(seen, worst);
    let (width, height) = SWATCH;
    let mut svg = Svg::default();
    svg.shape((width / 2.0, height / 2.0), &[outline::rectangle((0.0, 0.0), width - 0.4, height - 0.4)], ink);
    svg.finish(SWATCH, 1.0)
}
