//! Etching by acid or water: dull grey-black mottling, roughened at its darkest.

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (patch, fine, tone) = (seed.noise(), seed.noise(), seed.noise());
    let cover = grade.of([0.36, 0.54, 0.74, 1.0]);
    let depth = grade.of([0.01, 0.025, 0.05, 0.09]);
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        let patches = patch.layered(s.u / 4.6, s.v / 4.2, 5);
        let grit = fine.layered(s.u * 2.1, s.v * 2.1, 3);
        let amount = cover * field.body(s) + 1.35 * (patches - 0.5) + 0.35 * (grit - 0.5);
        let dull = step(0.18, 0.42, amount);
        let black = step(0.42, 0.72, amount);
        let shade = tone.layered(s.u / 3.0, s.v / 3.0, 3);
        texel.tint(v3(0.27, 0.265, 0.255) * (0.75 + 0.5 * shade), 0.10, dull * 0.78);
        texel.tint(v3(0.085, 0.082, 0.082) * (0.6 + 0.9 * shade), 0.05, black * 0.85);
        let pit = step(0.60, 0.74, grit) * black;
        texel.height -= depth * (dull * grit + 2.0 * pit);
        texel.open *= 1.0 - 0.4 * pit;
    });
}
