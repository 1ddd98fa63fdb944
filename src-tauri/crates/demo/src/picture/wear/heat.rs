//! Temper colours: straw, brown, purple and blue towards the hottest place.
//!
//! The order is that of the oxide film on heated steel (common practice of hardening shops).

use super::super::field::{Field, distance};
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{V3, mix, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let hottest = grade.of([0.36, 0.58, 0.80, 1.02]);
    let spread = grade.of([0.75, 0.9, 1.05, 1.2]);
    let (edge, smear) = (seed.noise(), seed.noise());
    let middle = field.middle();
    let (from, to) = field.bounds();
    let reach = (distance(from, to) / 2.83).max(0.5);
    let round = matches!(field, Field::Ring { .. });
    sheet.paint(from, to, |s, texel| {
        let ragged = edge.layered(s.u / 5.0, s.v / 4.0, 4) - 0.5;
        let body = field.body(s);
        let off = distance(s, middle) / (reach * spread);
        let near = if round { body } else { (1.15 - off).clamp(0.0, 1.0) * step(0.0, 0.4, body) };
        let heat = (near + 0.55 * ragged * step(0.0, 0.4, near)) * hottest;
        let (colour, share) = film(heat);
        // The film colours what the metal mirrors; grease burnt onto the hottest place dulls it.
        let streak = smear.layered(s.u / 7.0, s.v * 2.0, 2);
        let shade = texel.colour.brightness() * 1.9 * mix(0.85, 1.15, streak);
        let burnt = step(0.72, 1.0, heat) * streak;
        texel.tint(colour * shade, 0.5, share);
        texel.tint(v3(0.07, 0.065, 0.065), 0.12, burnt * 0.75);
    });
}

/// The colour at a heat of 0 (none) to 1, and how strongly it covers.
fn film(heat: f32) -> (V3, f32) {
    const STAGES: [(f32, V3, f32); 6] = [
        (0.10, v3(0.62, 0.56, 0.40), 0.0),
        (0.28, v3(0.68, 0.50, 0.22), 0.75),
        (0.45, v3(0.45, 0.25, 0.12), 0.88),
        (0.58, v3(0.28, 0.15, 0.24), 0.92),
        (0.72, v3(0.12, 0.17, 0.36), 0.95),
        (0.95, v3(0.17, 0.20, 0.24), 0.95),
    ];
    STAGES
        .windows(2)
        .find_map(|pair| match pair {
            [(low, from, a), (high, to, b)] if heat < *high => {
                let t = step(*low, *high, heat);
                Some((from.mix(*to, t), mix(*a, *b, t)))
            }
            _ => None,
        })
        .unwrap_or((v3(0.17, 0.20, 0.24), 0.95))
}
