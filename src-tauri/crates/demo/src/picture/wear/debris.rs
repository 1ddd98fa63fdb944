//! Dirt pressed into the soft layer: a dark or shining grain, a burnished ring, often a short tail.

use super::super::field::Field;
use super::super::mesh::Spot;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{grey, step, v3};
use super::{Blot, Grade};

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let largest = grade.of([0.30, 0.45, 0.65, 0.95]);
    for _ in 0..grade.count([9.0, 20.0, 38.0, 62.0], field) {
        let at = field.scatter(seed);
        let grain = Blot::new(seed, seed.clone().mostly_small(0.09, largest), 0.9);
        seed.next();
        let shining = seed.chance(0.2);
        let core = if shining { v3(0.80, 0.80, 0.78) } else { v3(0.05, 0.045, 0.04) };
        if seed.chance(0.45) {
            tail(sheet, at, &grain, seed);
        }
        sheet.stamp(at, grain.radius * 4.2, |du, dv, texel| {
            let off = grain.off(du, dv);
            let halo = step(2.6, 1.2, off) * step(0.7, 1.0, off);
            texel.tint(grey(0.58), 0.66, halo * 0.65);
            // The layer swells up around the grain.
            texel.height += grain.radius * 0.16 * step(2.2, 1.0, off);
            let inside = step(1.08, 0.9, off);
            let rim = step(0.35, 0.0, (off - 1.05).abs());
            texel.tint(core, if shining { 0.85 } else { 0.2 }, inside);
            texel.open *= 1.0 - 0.45 * rim;
            texel.height += grain.radius * 0.2 * inside * (0.5 - off);
        });
    }
}

fn tail(sheet: &mut Sheet, at: Spot, grain: &Blot, seed: &mut Seed) {
    let length = seed.between(1.5, 7.0) + grain.radius * 6.0;
    let half = grain.radius * 0.55;
    sheet.streak(at, length * 2.0, half * 1.5, |along, across, texel| {
        // The streak is centred on the grain; only the half behind it is scratched.
        let fade = step(0.0, 0.05, along / length) * step(1.0, 0.1, along / length);
        let t = across / (half * (1.0 - 0.5 * along / length)).max(0.02);
        let groove = (1.0 - t * t).max(0.0) * fade;
        texel.height -= half * 0.35 * groove;
        texel.tint(grey(0.62), 0.65, groove * 0.55);
        texel.open *= 1.0 - 0.2 * groove;
    });
}
