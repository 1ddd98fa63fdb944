//! A face worn hollow: the reflection bends, the middle is polished, a step stands at the rim.

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{grey, mix, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (line, edge) = (seed.noise(), seed.noise());
    let depth = grade.of([0.10, 0.24, 0.46, 0.80]);
    let shine = grade.of([0.25, 0.45, 0.65, 0.85]);
    let (from, to) = field.bounds();
    let middle = field.middle();
    let (_, width) = field.reach(sheet.travel);
    let half = (width / 2.0).clamp(1.0, 12.0);
    let round = matches!(field, Field::Ring { .. });
    sheet.paint(from, to, |s, texel| {
        let (du, dv) = (s.u - middle.u, s.v - middle.v);
        let r = (du * du + dv * dv).sqrt();
        let wobble = (edge.layered(s.u / 4.0, s.v / 4.0, 3) - 0.5) * 0.16;
        let body = (field.body(s) + wobble * step(0.0, 0.2, field.body(s))).clamp(0.0, 1.0);
        let rings = line.layered(if round { 0.5 } else { s.u / 30.0 }, if round { r * 4.0 } else { s.v * 4.0 }, 3) - 0.5;
        texel.height -= depth * body * half * 0.12 + 0.02 * shine * rings * body;
        let worn = step(0.10, 0.40, body);
        texel.tint(grey(0.58 + 0.2 * rings), mix(0.62, 0.86, shine) + 0.15 * rings, worn * shine);
        // Dirt stays in the step where the worn part begins.
        let rim = step(0.10, 0.0, (body - 0.13).abs());
        texel.tint(v3(0.13, 0.11, 0.09), 0.25, rim * shine * 0.8);
    });
}
