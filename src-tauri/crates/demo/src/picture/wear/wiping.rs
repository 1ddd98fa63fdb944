//! Lining metal smeared along the movement: bright drawn-out tongues, dark drag, a lip where it piled up.

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::{Grain, Sheet};
use super::super::vector::{grey, step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (tongue, line, mottle) = (seed.noise(), seed.noise(), seed.noise());
    let cover = grade.of([0.42, 0.58, 0.76, 1.0]);
    let relief = grade.of([0.04, 0.09, 0.18, 0.30]);
    let bare = grade.of([0.0, 0.0, 0.30, 0.60]);
    let shine = grade.of([0.40, 0.60, 0.80, 0.90]);
    let lined = sheet.lined;
    let by_v = sheet.travel == Grain::AlongV;
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        let (along, across) = if by_v { (s.v, s.u) } else { (s.u, s.v) };
        // Tongues: wavy across the movement, long along it.
        let waver = (mottle.layered(along / 9.0, across / 5.0, 2) - 0.5) * 2.4;
        let drawn = tongue.layered(along / 15.0, (across + waver) / 1.5, 4);
        let fine = line.layered(along / 12.0, (across + waver * 0.5) * 2.6, 3);
        let amount = cover * field.body(s) + 1.0 * (drawn - 0.5) + 0.2 * (fine - 0.5);
        let smeared = step(0.26, 0.42, amount);
        let lip = step(0.10, 0.0, (amount - 0.33).abs());
        let ripple = tongue.layered(along / 3.4 + drawn * 4.0, (across + waver) / 2.2, 3) - 0.5;
        texel.height += relief * (smeared * (0.5 * ripple + 0.4 * (drawn - 0.5) + 0.25 * (fine - 0.5)) + 0.30 * lip);
        texel.tint(grey(0.56 + 0.22 * (fine - 0.5)), 0.62 + 0.3 * (fine - 0.5), smeared * shine);
        let drag =
            step(0.46, 0.64, 1.0 - drawn) * smeared * step(0.4, 0.7, mottle.layered(along / 14.0, across / 1.1, 3));
        texel.tint(v3(0.10, 0.092, 0.085), 0.3, drag * shine * shine);
        if lined {
            let through = step(0.62, 0.80, amount + 0.3 * (ripple + fine - 0.5)) * bare;
            texel.tint(v3(0.36, 0.225, 0.14), 0.40, through * 0.8);
        }
    });
}
