//! Fatigue: fine cracks join into a mosaic, then pieces fall out and leave grainy floors.

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{mix, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (tiles, warp, wide, floor) = (seed.noise(), seed.noise(), seed.noise(), seed.noise());
    let tile = grade.of([1.5, 1.5, 1.7, 1.9]);
    let reach = grade.of([0.62, 0.5, 0.38, 0.25]);
    let missing = grade.of([0.0, 0.08, 0.30, 0.58]);
    let gape = grade.of([0.05, 0.07, 0.09, 0.11]);
    let lined = sheet.lined;
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        let body = field.body(s) + 0.5 * (wide.layered(s.u / 6.0, s.v / 6.0, 3) - 0.5);
        if body <= 0.05 {
            return;
        }
        let bend = |shift: f32| (warp.layered(s.u / 1.3 + shift, s.v / 1.3, 3) - 0.5) * 1.3;
        let mosaic = tiles.mosaic((s.u + bend(0.0)) / tile, (s.v + bend(40.0)) / tile);
        let present = step(reach - 0.12, reach + 0.15, body);
        let lost = step(0.0, 0.04, missing * step(reach, 0.95, body) - mosaic.cell);
        let crack = step(gape / tile * 2.2, gape / tile * 0.6, mosaic.border) * present;
        let grain = floor.layered(s.u * 3.2, s.v * 3.2, 3);
        texel.height -= 0.10 * crack + lost * (0.22 + 0.12 * grain) * step(0.0, 0.10, mosaic.border);
        // Whole tiles tilt a little, so each shines in its own way.
        texel.gloss += present * 0.12 * (mosaic.cell - 0.5);
        let bed = if lined { v3(0.30, 0.235, 0.175) } else { v3(0.25, 0.245, 0.24) };
        texel.tint(bed * mix(0.6, 1.4, grain), 0.22, lost * 0.92);
        texel.open *= 1.0 - 0.45 * lost * step(0.22, 0.02, mosaic.border);
        texel.tint(v3(0.06, 0.055, 0.05), 0.1, crack * (1.0 - 0.4 * lost) * 0.92);
    });
}
