//! Iron oxide: orange-brown, granular, blackish where it is old.

use super::super::field::Field;
use super::super::noise::Seed;
use super::super::sheet::Sheet;
use super::super::vector::{step, v3};
use super::Grade;

pub(super) fn paint(sheet: &mut Sheet, field: &Field, grade: Grade, seed: &mut Seed) {
    let (patch, fine, tone) = (seed.noise(), seed.noise(), seed.noise());
    let cover = grade.of([0.30, 0.46, 0.66, 0.96]);
    let scale = grade.of([0.01, 0.02, 0.045, 0.09]);
    let (from, to) = field.bounds();
    sheet.paint(from, to, |s, texel| {
        let patches = patch.layered(s.u / 6.0, s.v / 5.0, 5);
        let grit = fine.layered(s.u * 2.6, s.v * 2.6, 3);
        let amount = cover * field.body(s) + 1.4 * (patches - 0.5) + 0.6 * (grit - 0.5);
        let bloom = step(0.20, 0.50, amount);
        let crust = step(0.50, 0.80, amount);
        let shade = tone.layered(s.u / 2.2, s.v / 2.2, 3);
        let orange = v3(0.33, 0.135, 0.045).mix(v3(0.19, 0.075, 0.032), shade);
        let old = v3(0.085, 0.047, 0.032).mix(v3(0.17, 0.075, 0.037), shade);
        texel.tint(orange * (0.6 + 0.8 * grit), 0.06, bloom * 0.82);
        texel.tint(old * (0.5 + grit), 0.03, crust * 0.85);
        texel.height += scale * (bloom * grit + 1.5 * crust * (grit - 0.3));
    });
}
