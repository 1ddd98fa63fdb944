//! The running layer worn through: warm copper with ragged, soft borders over a thin bright barrier.

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{mix, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (patch, line, fine, cloud) = (seed.noise(), seed.noise(), seed.noise(), seed.noise());
    let worn = grade.of([0.40, 0.54, 0.70, 0.90]);
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        // The layer goes in patches drawn out along the movement, ragged with fine lines.
        let patches = patch.layered(s.u / 13.0, s.v / 4.6, 4);
        let lines = line.layered(s.u / 22.0, s.v * 2.4, 3);
        let specks = fine.layered(s.u * 1.1, s.v * 2.2, 3);
        let thin = worn * field.body(s) + 0.85 * (patches - 0.5) + 0.42 * (lines - 0.5) + 0.22 * (specks - 0.5);
        // Polished thin, then the pale barrier, then copper.
        let polished = step(0.22, 0.46, thin);
        let barrier = step(0.44, 0.50, thin);
        let copper = step(0.48, 0.62, thin);
        let tone = cloud.layered(s.u / 5.0, s.v / 2.5, 3);
        texel.tint(v3(0.56, 0.545, 0.52), 0.56, polished * 0.7);
        texel.tint(v3(0.66, 0.55, 0.41), 0.60, barrier * 0.85);
        let deep = v3(0.56, 0.27, 0.155).mix(v3(0.70, 0.40, 0.25), tone);
        texel.tint(deep * mix(0.85, 1.1, lines), 0.44, copper * 0.94);
        texel.height -= 0.02 * barrier + 0.02 * copper * specks;
    });
}
