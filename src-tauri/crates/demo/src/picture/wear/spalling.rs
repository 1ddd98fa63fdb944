//! Spalling: flakes broken out of a hard face, with sharp edges and a bright, grainy floor.

use super::super::field::Field;
use super::super::mesh::Spot;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{grey, mix, step, v3};
use super::{Blot, Grade};

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (_, width) = field.reach(sheet.travel);
    let largest = grade.of([0.55, 0.95, 1.5, 2.3]).min(width * 0.45);
    for number in 0..grade.count([4.0, 7.0, 11.0, 16.0], field) {
        let at = field.scatter(seed);
        // The first flake is the largest; crumbs lie around it.
        let radius = if number == 0 { largest } else { seed.mostly_small(0.18, largest * 0.9) };
        flake(sheet, at, radius, seed);
    }
}

fn flake(sheet: &mut Sheet, at: Spot, radius: f32, seed: &mut Seed) {
    let edge = Blot::new(seed, radius, 1.0);
    let (floor, step_noise) = (seed.noise(), seed.noise());
    let depth = 0.12 + 0.14 * radius;
    sheet.stamp(at, radius * 2.8, |du, dv, texel| {
        let crumble = (floor.layered(du * 4.0, dv * 4.0, 3) - 0.5) * 0.35;
        let off = edge.off(du, dv) + crumble * 0.5;
        let inside = step(1.02, 0.94, off);
        let grain = floor.layered(du * 2.6 + 9.0, dv * 2.6, 4);
        // The break goes down in a few shell-shaped steps.
        let terrace = (step_noise.layered(du / radius * 1.2, dv / radius * 1.2, 2) * 4.0).floor() / 4.0;
        texel.height -= depth * inside * (0.55 + 0.5 * terrace + 0.16 * (grain - 0.5));
        texel.tint(grey(0.30).mix(v3(0.17, 0.16, 0.15), terrace) * mix(0.55, 1.4, grain), 0.34, inside * 0.94);
        let wall = inside * step(0.80, 0.99, off);
        texel.tint(v3(0.07, 0.065, 0.06), 0.15, wall * 0.7);
        texel.open *= 1.0 - 0.4 * wall;
        let lip = step(0.10, 0.0, (off - 1.07).abs());
        texel.tint(grey(0.70), 0.75, lip * 0.6);
    });
}
