//! Scuffing: a band torn by running without oil, dense with drawn-out lines, dull and bright by turns.

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::{Grain, Sheet};
use super::super::vector::{grey, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (band, line, tear, shred) = (seed.noise(), seed.noise(), seed.noise(), seed.noise());
    let cover = grade.of([0.40, 0.58, 0.80, 1.08]);
    let relief = grade.of([0.012, 0.03, 0.06, 0.11]);
    let grain = sheet.travel;
    let middle = field.middle();
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        let (along, across) = match grain {
            Grain::AlongV => (s.v, s.u),
            Grain::Round => {
                let (du, dv) = (s.u - middle.u, s.v - middle.v);
                (dv.atan2(du).abs() * 6.0, (du * du + dv * dv).sqrt())
            }
            Grain::AlongU | Grain::None => (s.u, s.v),
        };
        let bands = band.layered(along / 34.0, across / 2.6, 4);
        let lines = line.layered(along / 26.0, across * 3.4, 4);
        let tears = tear.layered(along / 5.5, across * 3.2, 4);
        let amount = cover * field.body(s) + 1.15 * (bands - 0.5) + 0.35 * (lines - 0.5);
        let scuffed = step(0.24, 0.46, amount);
        let torn = step(0.50, 0.74, amount) * step(0.46, 0.66, tears);
        let shine = step(0.45, 0.7, lines);
        texel.tint(grey(0.22).mix(grey(0.50), shine), 0.20 + 0.42 * shine, scuffed * 0.82);
        texel.height += relief * scuffed * (lines - 0.5) * 1.2;
        let rag = shred.layered(along * 1.2, across * 4.0, 2);
        texel.tint(v3(0.13, 0.12, 0.11) * (0.5 + rag), 0.12, torn * 0.78);
        texel.height -= relief * 0.5 * torn * (0.7 + rag);
        texel.open *= 1.0 - 0.25 * torn;
    });
}
