//! Polished tracks: the even wear of a part that ran well, and the flat of a worn lobe nose.

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{grey, step, v3};
use super::Grade;

/// Normal wear: the machining lines are half gone and the metal shines.
pub(super) fn even(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (line, cloud) = (seed.noise(), seed.noise());
    let share = grade.of([0.30, 0.48, 0.66, 0.85]);
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        let soft = cloud.layered(s.u / 8.0, s.v / 6.0, 3) - 0.5;
        let worn = step(0.15, 0.55, field.body(s) + 0.3 * soft) * share;
        let lines = line.layered(s.u / 40.0, s.v * 3.0, 3) - 0.5;
        texel.tint(texel.colour * 1.12 + grey(0.05 * lines), (texel.gloss + 0.30).min(0.85) + 0.1 * lines, worn);
        texel.height *= 1.0 - 0.6 * worn;
    });
}

/// The nose worn flat: a bright facet with drawn lines, burrs along its edges and torn places when it is bad.
pub(super) fn worn_nose(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (line, edge, tear) = (seed.noise(), seed.noise(), seed.noise());
    let share = grade.of([0.45, 0.65, 0.85, 1.0]);
    let torn_share = grade.of([0.0, 0.15, 0.55, 1.0]);
    let relief = grade.of([0.01, 0.025, 0.06, 0.11]);
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        let ragged = (edge.layered(s.u / 3.0, s.v / 2.0, 4) - 0.5) * 0.35;
        let body = field.body(s) + ragged;
        let worn = step(0.22, 0.36, body) * share;
        let lines = line.layered(s.u / 14.0, s.v * 4.2, 3) - 0.5;
        texel.tint(grey(0.66 + 0.35 * lines), 0.74 + 0.3 * lines, worn);
        texel.height += relief * (worn * lines * 1.5 - worn);
        let burr = step(0.07, 0.0, (body - 0.25).abs()) * share;
        texel.tint(v3(0.16, 0.14, 0.12), 0.3, burr * 0.7);
        texel.height += relief * burr;
        let torn = step(0.52, 0.66, tear.layered(s.u / 1.6, s.v * 1.1, 4)) * step(0.4, 0.8, body) * torn_share;
        texel.tint(v3(0.22, 0.21, 0.20), 0.2, torn * 0.8);
        texel.height -= relief * 1.5 * torn;
        texel.open *= 1.0 - 0.3 * torn;
    });
}
