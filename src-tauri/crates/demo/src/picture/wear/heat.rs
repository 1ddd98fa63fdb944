//! Temper colours: straw, brown, purple and blue towards the hottest place.
//!
//! The order is that of the oxide film on heated steel (common practice of hardening shops).

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{V3, mix, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let hottest = grade.of([0.34, 0.54, 0.76, 1.02]);
    let (edge, smear, soot) = (seed.noise(), seed.noise(), seed.noise());
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        let near = field.nearness(s);
        let ragged = edge.layered(s.u / 5.0, s.v / 4.0, 4) - 0.5;
        let streak = smear.layered(s.u / 7.0, s.v * 2.0, 2) - 0.5;
        let heat = (1.25 * near + (0.40 * ragged + 0.14 * streak) * step(0.0, 0.25, near)) * hottest;
        let (colour, share) = film(heat);
        // The film colours what the metal mirrors; oil burnt onto the hottest place dulls it.
        let shade = texel.colour.brightness() * 1.9 * (1.0 + 0.4 * streak);
        texel.tint(colour * shade, 0.46, share);
        let burnt = step(0.50, 0.90, heat + 0.5 * (soot.layered(s.u / 2.4, s.v / 1.8, 4) - 0.5));
        texel.tint(v3(0.060, 0.055, 0.052), 0.14, burnt * 0.82);
    });
}

/// The colour at a heat of 0 (none) to 1, and how strongly it covers.
fn film(heat: f32) -> (V3, f32) {
    const STAGES: [(f32, V3, f32); 6] = [
        (0.08, v3(0.60, 0.55, 0.43), 0.0),
        (0.26, v3(0.58, 0.45, 0.26), 0.70),
        (0.42, v3(0.36, 0.235, 0.145), 0.85),
        (0.54, v3(0.235, 0.155, 0.185), 0.90),
        (0.68, v3(0.145, 0.175, 0.265), 0.92),
        (0.92, v3(0.17, 0.185, 0.205), 0.92),
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
        .unwrap_or((v3(0.17, 0.185, 0.205), 0.92))
}
