//! The running layer worn through: warm copper with ragged, soft borders over a thin bright barrier.

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{mix, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (patch, line, fine, cloud) = (seed.noise(), seed.noise(), seed.noise(), seed.noise());
    let worn = grade.of([0.40, 0.56, 0.74, 1.0]);
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        // The layer goes in patches drawn out along the movement, ragged with fine lines.
        let patches = patch.layered(s.u / 13.0, s.v / 4.6, 4);
        let lines = line.layered(s.u / 22.0, s.v * 2.4, 3);
        let specks = fine.layered(s.u * 1.1, s.v * 2.2, 3);
        let thin = worn * field.body(s) + 0.85 * (patches - 0.5) + 0.42 * (lines - 0.5) + 0.22 * (specks - 0.5);
        // Polished thin, then the pale barrier, then copper.
        let polished = step(0.18, 0.44, thin);
        let barrier = step(0.42, 0.50, thin);
        let copper = step(0.47, 0.66, thin);
        let tone = cloud.layered(s.u / 3.5, s.v / 1.6, 4);
        texel.tint(v3(0.47, 0.455, 0.43), 0.50, polished * 0.7);
        texel.tint(v3(0.48, 0.385, 0.27), 0.50, barrier * 0.85);
        let deep = v3(0.29, 0.135, 0.075).mix(v3(0.52, 0.275, 0.155), tone);
        texel.tint(deep * mix(0.7, 1.2, lines), 0.36 + 0.12 * (lines - 0.5), copper * 0.94);
        // A film of the grey layer is left in the lowest lines.
        let rest = step(0.60, 0.72, specks) * step(0.85, 0.5, thin);
        texel.tint(v3(0.36, 0.34, 0.31), 0.34, rest * copper * 0.7);
        texel.height -= 0.02 * barrier + 0.02 * copper * lines;
    });
}
