//! A face worn hollow: the reflection bends, the middle is polished, a step stands at the rim.

use super::super::field::{Field, Outline};
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{grey, mix, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (line, edge) = (seed.noise(), seed.noise());
    let depth = grade.of([0.10, 0.26, 0.55, 1.0]);
    let shine = grade.of([0.25, 0.45, 0.65, 0.85]);
    let (from, to) = field.bounds();
    let middle = field.middle();
    let (_, width) = field.reach(sheet.travel);
    let half = (width / 2.0).clamp(1.0, 12.0);
    let round = matches!(field.outline, Outline::Ring { .. });
    sheet.paint(from, to, |s, texel| {
        let (du, dv) = (s.u - middle.u, s.v - middle.v);
        let r = (du * du + dv * dv).sqrt();
        let near = field.nearness(s) + 0.02 * (edge.layered(s.u / 3.0, s.v / 3.0, 3) - 0.5);
        let rings =
            line.layered(if round { 0.5 } else { s.u / 30.0 }, if round { r * 4.0 } else { s.v * 4.0 }, 3) - 0.5;
        // A bowl: steep where it begins, level in the middle.
        let bowl = (near * (2.0 - near)).clamp(0.0, 1.0);
        texel.height -= depth * bowl * half * 0.11 + 0.02 * shine * rings * bowl;
        let worn = step(0.16, 0.30, near);
        texel.tint(grey(0.50 + 0.22 * rings), mix(0.60, 0.80, shine) + 0.16 * rings, worn * shine);
        // The step at the rim keeps dirt and shade.
        let rim = step(0.07, 0.0, (near - 0.19).abs());
        texel.tint(v3(0.16, 0.13, 0.10), 0.3, rim * shine * 0.75);
        texel.open *= 1.0 - 0.35 * depth * step(0.55, 0.2, near) * worn;
    });
}
