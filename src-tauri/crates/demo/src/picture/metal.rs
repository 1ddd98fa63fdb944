//! Finishes of sound parts, before any wear.

use super::mesh::Spot;
use super::noise::Seed;
use super::sheet::{Grain, Texel};
use super::vector::{V3, grey, step, v3};

/// The grey running-in layer of a bearing shell: dull, with the faint lines of broaching along `u`.
pub(super) fn overlay(seed: &mut Seed) -> impl Fn(Spot) -> Texel + use<> {
    let (broad, fine, film) = (seed.noise(), seed.noise(), seed.noise());
    move |s| {
        let line = fine.layered(s.u / 30.0, s.v * 5.5, 3) - 0.5;
        let cloud = broad.layered(s.u / 16.0, s.v / 9.0, 3) - 0.5;
        let oil = step(0.55, 0.75, film.layered(s.u / 22.0, s.v / 12.0, 3));
        let colour = v3(0.43, 0.427, 0.412) * (1.0 + 0.22 * line + 0.20 * cloud - 0.16 * oil);
        let mut texel = Texel::new(colour, 0.30 + 0.08 * line + 0.14 * cloud + 0.10 * oil);
        texel.height = line * 0.010;
        texel
    }
}

/// The back of a shell: tinned steel, rolled and handled.
pub(super) fn shell_back(seed: &mut Seed) -> impl Fn(Spot) -> Texel + use<> {
    let (broad, fine, film) = (seed.noise(), seed.noise(), seed.noise());
    move |s| {
        let line = fine.layered(s.u / 18.0, s.v * 4.0, 3) - 0.5;
        let cloud = broad.layered(s.u / 13.0, s.v / 9.0, 4) - 0.5;
        let stain = step(0.50, 0.72, film.layered(s.u / 20.0, s.v / 15.0, 4));
        let colour = v3(0.33, 0.325, 0.32).mix(v3(0.20, 0.165, 0.13), 0.65 * stain);
        let mut texel = Texel::new(colour * (1.0 + 0.3 * cloud + 0.15 * line), 0.40 + 0.2 * cloud - 0.12 * stain);
        texel.height = line * 0.012;
        texel
    }
}

/// Ground or turned steel with lines along the grain.
pub(super) fn ground(seed: &mut Seed, grain: Grain, middle: Spot, gloss: f32) -> impl Fn(Spot) -> Texel + use<> {
    let (broad, fine, film) = (seed.noise(), seed.noise(), seed.noise());
    let shift = seed.between(0.0, 100.0);
    move |s| {
        let (along, across) = match grain {
            Grain::AlongV => (s.v, s.u),
            Grain::Round => {
                let (du, dv) = (s.u - middle.u, s.v - middle.v);
                // The seam of the angle is hidden by how slowly the noise varies along it.
                (dv.atan2(du).abs() * 8.0, (du * du + dv * dv).sqrt())
            }
            Grain::AlongU | Grain::None => (s.u, s.v),
        };
        let line = fine.layered(along / 40.0 + shift, across * 7.0, 3) - 0.5;
        let cloud = broad.layered(s.u / 12.0, s.v / 12.0, 3) - 0.5;
        let oil = step(0.52, 0.75, film.layered(s.u / 17.0, s.v / 17.0, 3));
        let colour = v3(0.50, 0.495, 0.49).mix(v3(0.34, 0.28, 0.21), 0.35 * oil);
        let mut texel = Texel::new(colour * (1.0 + 0.16 * line + 0.14 * cloud), gloss + 0.10 * line - 0.12 * oil);
        texel.height = line * 0.008;
        texel
    }
}

/// A forged or cast skin: dark, grainy, without direction.
pub(super) fn skin(seed: &mut Seed, colour: V3, grit: f32) -> impl Fn(Spot) -> Texel + use<> {
    let (broad, fine) = (seed.noise(), seed.noise());
    move |s| {
        let grain = fine.layered(s.u * 1.6, s.v * 1.6, 4) - 0.5;
        let cloud = broad.layered(s.u / 11.0, s.v / 11.0, 4) - 0.5;
        let mut texel = Texel::new(colour * (1.0 + 0.5 * grain + 0.8 * cloud), 0.20 + 0.2 * cloud);
        texel.height = grain * grit;
        texel
    }
}

/// Oily soot, as on a piston crown and above the top ring.
pub(super) fn carbon(texel: &mut Texel, share: f32, crumb: f32) {
    let black = v3(0.055, 0.047, 0.040).mix(v3(0.16, 0.12, 0.085), crumb * crumb);
    texel.tint(black, 0.10 + 0.15 * crumb, share.clamp(0.0, 1.0));
    texel.height += 0.05 * crumb * share;
}

/// A hole through the face: dark inside, with a bright broken edge.
pub(super) fn hole(du: f32, dv: f32, radius: f32, texel: &mut Texel) {
    let r = (du * du + dv * dv).sqrt() / radius;
    let edge = step(1.22, 1.02, r) * step(0.88, 1.0, r);
    texel.tint(grey(0.62), 0.7, edge * 0.8);
    texel.height -= 0.35 * step(1.25, 0.9, r);
    let inside = step(1.0, 0.9, r);
    // The far wall of the hole catches a little light.
    let wall = 0.25 * step(0.2, 0.95, dv / radius) * step(1.0, 0.6, r);
    texel.tint(v3(0.10, 0.085, 0.07), 0.15, inside);
    texel.open *= 1.0 - inside * (0.93 - wall);
}
