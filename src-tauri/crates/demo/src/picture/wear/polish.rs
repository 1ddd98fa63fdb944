//! Polished tracks: the even wear of a part that ran well, and the flat of a worn lobe nose.

use super::super::field::Field;
use super::super::mesh::Spot;
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

/// The nose worn flat: a bright facet over the whole width, its ends drawn out in lines, torn when it is bad.
pub(super) fn worn_nose(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (line, edge, tear) = (seed.noise(), seed.noise(), seed.noise());
    let share = grade.of([0.50, 0.70, 0.88, 1.0]);
    let reach = grade.of([0.45, 0.65, 0.85, 1.0]);
    let torn_share = grade.of([0.0, 0.12, 0.5, 1.0]);
    let relief = grade.of([0.01, 0.02, 0.045, 0.085]);
    let (from, to) = field.bounds();
    let middle = field.middle();
    let half = (to.u - from.u) / 2.6 * reach;
    sheet.paint(Spot { v: 0.0, ..from }, Spot { v: sheet.size.v, ..to }, |s, texel| {
        let drawn = edge.layered(s.u / 11.0, s.v * 1.7, 3) - 0.5;
        let lean = edge.layered(9.0, s.v / 7.0, 2) - 0.5;
        let off = (s.u - middle.u).abs() / half + 0.45 * drawn + 0.4 * lean;
        let worn = step(1.08, 0.80, off) * share;
        let lines = line.layered(s.u / 16.0, s.v * 4.2, 3) - 0.5;
        texel.tint(grey(0.56 + 0.4 * lines), 0.72 + 0.35 * lines, worn);
        texel.height += relief * worn * lines * 1.6;
        let heat = step(0.7, 1.0, off) * step(1.35, 1.05, off) * share;
        texel.tint(v3(0.23, 0.17, 0.115), 0.4, heat * 0.5);
        let torn = step(0.52, 0.68, tear.layered(s.u / 4.2, s.v * 1.5, 4)) * step(0.95, 0.5, off) * torn_share;
        texel.tint(v3(0.20, 0.19, 0.18), 0.2, torn * 0.75);
        texel.height -= relief * 1.2 * torn;
        texel.open *= 1.0 - 0.25 * torn;
    });
}
