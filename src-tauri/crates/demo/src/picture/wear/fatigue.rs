//! Fatigue: fine cracks join into a mosaic, then pieces fall out and leave grainy floors.

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{mix, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (tiles, warp, wide, floor) = (seed.noise(), seed.noise(), seed.noise(), seed.noise());
    let tile = grade.of([1.2, 1.25, 1.35, 1.5]);
    let reach = grade.of([0.55, 0.42, 0.30, 0.18]);
    let missing = grade.of([0.0, 0.07, 0.26, 0.60]);
    let gape = grade.of([0.035, 0.05, 0.065, 0.08]);
    let lined = sheet.lined;
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        let patches = wide.layered(s.u / 5.0, s.v / 5.0, 3) - 0.5;
        let body = field.body(s) + 0.7 * patches;
        if body <= 0.05 {
            return;
        }
        let bend = |shift: f32| (warp.layered(s.u / 1.6 + shift, s.v / 1.6, 4) - 0.5) * 2.0;
        let (u, v) = (s.u + bend(0.0), s.v + bend(40.0));
        let mosaic = tiles.mosaic(u / tile, v / tile);
        // Long cracks part the tiles into islands; the fine ones between them open and close.
        let islands = tiles.mosaic(u / tile / 3.1 + 50.0, v / tile / 3.1);
        let present = step(reach - 0.10, reach + 0.20, body);
        let open = step(0.30, 0.62, warp.layered(s.u / 2.1 + 80.0, s.v / 2.1, 2) + 0.25 * present);
        let fine = step(gape / tile * 1.8, gape / tile * 0.4, mosaic.border) * open;
        let long = step(gape / tile, gape / tile * 0.25, islands.border);
        let crack = fine.max(long) * present;
        let chance = missing * step(reach, 0.95, body) * (1.0 + 1.6 * patches);
        let lost = step(0.0, 0.03, chance - mosaic.cell);
        let grain = floor.layered(s.u * 4.2, s.v * 4.2, 4);
        texel.height -= 0.07 * crack + lost * (0.20 + 0.16 * grain);
        // Whole tiles tilt a little, so each shines in its own way.
        texel.gloss += present * 0.10 * (mosaic.cell - 0.5);
        let bed = if lined { v3(0.24, 0.205, 0.17) } else { v3(0.22, 0.215, 0.21) };
        texel.tint(bed * mix(0.45, 1.45, grain), 0.20, lost * 0.94);
        texel.open *= 1.0 - 0.55 * lost * step(0.30, 0.02, mosaic.border);
        texel.tint(v3(0.07, 0.065, 0.06), 0.1, crack * (1.0 - 0.7 * lost) * 0.88);
    });
}
