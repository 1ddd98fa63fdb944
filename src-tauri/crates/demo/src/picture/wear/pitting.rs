//! Small craters with dark, sharp borders.

use super::super::field::Field;
use super::super::mesh::Spot;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{grey, step, v3};
use super::{Blot, Grade};

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let largest = grade.of([0.18, 0.30, 0.45, 0.66]);
    let middle = field.scatter(seed);
    for _ in 0..grade.count([24.0, 75.0, 160.0, 280.0], field) {
        // Pits gather where the load is; a second draw nearer to the middle makes the crowd.
        let (a, b) = (field.scatter(seed), field.scatter(seed));
        let near = |s: Spot| super::super::field::distance(s, middle);
        let at = if near(a) < near(b) { a } else { b };
        let radius = seed.mostly_small(0.06, largest);
        let pit = Blot::new(seed, radius, 0.5);
        let grain = seed.noise();
        sheet.stamp(at, radius * 2.6, |du, dv, texel| {
            let off = pit.off(du, dv);
            let inside = step(1.08, 0.80, off);
            let rim = step(0.22, 0.0, (off - 1.12).abs());
            let rough = grain.layered(du * 9.0, dv * 9.0, 2);
            texel.height -= radius * 0.5 * step(1.1, 0.1, off) * (0.9 + 0.2 * rough);
            texel.height += radius * 0.05 * rim;
            texel.tint(grey(0.60), 0.55, rim * 0.22);
            texel.tint(v3(0.15, 0.14, 0.13) * (0.8 + 0.4 * rough), 0.25, inside * 0.9);
            texel.open *= 1.0 - inside * (0.35 + 0.3 * step(0.4, 0.95, off));
        });
    }
}
