//! Scratches along the direction of movement, in bands, deeper with each grade.

use super::super::field::{Field, Outline};
use super::super::mesh::Spot;
use super::super::noise::Seed;
use super::super::scene::spot;
use super::super::sheet::{Grain, Sheet};
use super::super::vector::{grey, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (length, width) = field.reach(sheet.travel);
    let bands: Vec<f32> = (0..4).map(|_| seed.unit()).collect();
    let widest = grade.of([0.07, 0.14, 0.26, 0.42]);
    let count = grade.of([16.0, 34.0, 60.0, 95.0]) * (width / 9.0).clamp(0.4, 3.0);
    for number in 0..count as usize {
        let mut start = field.scatter(seed);
        // Most scratches crowd into a few bands, where the dirt came through.
        if let Some(band) = bands.get(number % 6) {
            start = onto_band(field, sheet.travel, start, band + seed.between(-0.07, 0.07));
        }
        let half = seed.mostly_small(0.035, widest);
        score(sheet, start, length * seed.between(0.35, 1.05), half, grade, seed);
    }
}

/// Moves a spot across the grain to a share of the field's width.
fn onto_band(field: &Field, grain: Grain, start: Spot, share: f32) -> Spot {
    match (field.outline, grain) {
        (Outline::Rect { from, to }, Grain::AlongV) => spot(from.u + (to.u - from.u) * share, start.v),
        (Outline::Rect { from, to }, _) => spot(start.u, from.v + (to.v - from.v) * share),
        (Outline::Ring { centre, inner, outer }, _) => {
            let (du, dv) = (start.u - centre.u, start.v - centre.v);
            let r = (du * du + dv * dv).sqrt().max(1e-3);
            let wanted = (inner + (outer - inner) * share).max(0.2);
            spot(centre.u + du / r * wanted, centre.v + dv / r * wanted)
        }
    }
}

fn score(sheet: &mut Sheet, middle: Spot, length: f32, half: f32, grade: Grade, seed: &mut Seed) {
    let (along_noise, comb) = (seed.noise(), seed.noise());
    let drift = seed.between(-0.006, 0.006);
    let depth = half * grade.of([0.10, 0.22, 0.38, 0.5]) * seed.between(0.6, 1.2);
    let dark = seed.chance(grade.of([0.25, 0.35, 0.45, 0.5]));
    let copper = seed.chance(grade.of([0.0, 0.0, 0.08, 0.16])) && half > 0.12 && sheet.lined;
    let fresh = if copper { v3(0.62, 0.36, 0.23) } else { grey(0.66) };
    let pitch = sheet.pitch();
    sheet.streak(middle, length, half * 1.7 + pitch, |along, across, texel| {
        let to_end = (along / length + 0.5).clamp(0.0, 1.0);
        let taper = step(0.0, 0.22, to_end) * step(1.0, 0.9, to_end);
        let bite = taper * (0.35 + 0.9 * along_noise.layered(along / 4.0, 0.5, 3)).min(1.0);
        let t = (across + drift * along) / half.max(pitch * 0.6);
        // A wide score is a bundle of fine ones.
        let strand = 0.45 + 1.1 * comb.layered(along / 30.0, across * 11.0, 2);
        let groove = (1.0 - t * t).max(0.0) * bite * strand.min(1.15);
        let lip = (1.0 - (t.abs() - 1.3).abs() * 3.0).max(0.0) * bite;
        texel.height += depth * (0.35 * lip - groove);
        if dark {
            texel.tint(v3(0.11, 0.10, 0.09), 0.25, groove * 0.75);
            texel.open *= 1.0 - 0.25 * groove;
        } else {
            texel.tint(fresh, 0.62, groove * 0.7);
        }
        texel.tint(grey(0.66), 0.7, lip * 0.55);
    });
}
