//! Fretting on the back of a shell that moved in its housing: polished islands with brown rims.

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{grey, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (patch, fine, ooze) = (seed.noise(), seed.noise(), seed.noise());
    let cover = grade.of([0.36, 0.50, 0.66, 0.86]);
    let spread = grade.of([0.10, 0.15, 0.22, 0.32]);
    let torn_share = grade.of([0.0, 0.35, 0.7, 1.0]);
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        // Islands, not one patch: the noise weighs as much as the field.
        let patches = patch.layered(s.u / 4.4, s.v / 3.2, 4);
        let grit = fine.layered(s.u * 1.8, s.v * 1.8, 3);
        let amount = cover * field.body(s) + 1.5 * (patches - 0.5) + 0.22 * (grit - 0.5);
        let shine = step(0.50, 0.58, amount);
        let rim = step(0.50 - spread, 0.50, amount) * (1.0 - shine);
        let brown = v3(0.14, 0.068, 0.034).mix(v3(0.24, 0.13, 0.06), ooze.layered(s.u / 2.0, s.v / 2.0, 3));
        texel.tint(brown * (0.6 + 0.8 * grit), 0.12, rim * 0.88);
        texel.tint(grey(0.45 + 0.20 * (grit - 0.5)), 0.74 - 0.3 * grit, shine * 0.88);
        texel.height -= 0.012 * shine;
        // In the worst islands metal has been torn out, and brown dust lies in the holes.
        let torn = step(0.50, 0.64, grit) * step(0.62, 0.85, amount) * torn_share;
        texel.tint(v3(0.10, 0.06, 0.04), 0.1, torn * 0.85);
        texel.height -= 0.05 * torn;
    });
}
