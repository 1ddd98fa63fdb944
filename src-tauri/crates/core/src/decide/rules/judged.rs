//! What rules about figures share: the gravest thing that a part's figures, as found, ask for. No rule itself.

use super::Scene;
use crate::engine::Part;
use crate::measure::{Conformity, Phase, Quantity};
use crate::words::capitalised;
use crate::work::Outcome;

/// What figures of a part ask for that are outside, or too close to call, with the reason; those without a remedy are passed
/// over.
pub(super) fn gravest(
    scene: &Scene<'_>,
    part: Part,
    remedy: impl Fn(Quantity) -> Option<Outcome>,
) -> Option<(Outcome, String)> {
    let judged = scene.measured.figures(part, Phase::Found).filter_map(|figure| {
        let remedy = remedy(figure.quantity)?;
        let outcome = match figure.verdict {
            Some(Conformity::Within) => return None,
            Some(Conformity::Outside) => remedy,
            Some(Conformity::TooClose) => Outcome::CantSay,
            // The reason says what must be known first.
            None if figure.is_open() => Outcome::CantSay,
            None => return None,
        };
        Some((outcome, format!("{}: {}", capitalised(&figure.name), figure.because)))
    });
    judged.max_by_key(|(outcome, _)| *outcome)
}
