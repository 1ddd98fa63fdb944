//! Fretting on the back of a shell that moved in its housing: polished islands with brown rims.

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{grey, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (patch, fine, ooze) = (seed.noise(), seed.noise(), seed.noise());
    let cover = grade.of([0.36, 0.50, 0.66, 0.84]);
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        let patches = patch.layered(s.u / 6.5, s.v / 5.0, 4);
        let grit = fine.layered(s.u * 1.8, s.v * 1.8, 3);
        let amount = cover * field.body(s) + 1.25 * (patches - 0.5) + 0.26 * (grit - 0.5);
        let shine = step(0.47, 0.54, amount);
        let rim = step(0.20, 0.44, amount) * (1.0 - shine);
        let brown = v3(0.20, 0.095, 0.045).mix(v3(0.30, 0.17, 0.08), ooze.layered(s.u / 2.0, s.v / 2.0, 3));
        texel.tint(brown * (0.6 + 0.8 * grit), 0.12, rim * 0.85);
        texel.tint(grey(0.50 + 0.14 * (grit - 0.5)), 0.70 - 0.3 * grit, shine * 0.88);
        texel.height -= 0.012 * shine;
        // In the worst islands metal has been torn out.
        let torn = step(0.58, 0.70, grit) * step(0.58, 0.8, amount);
        texel.tint(v3(0.11, 0.07, 0.05), 0.1, torn * 0.8);
        texel.height -= 0.05 * torn;
    });
}
