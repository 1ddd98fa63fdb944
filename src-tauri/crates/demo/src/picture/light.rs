//! The light of a workshop: a window or work lamp, a weaker second one, a ceiling tube, and what the bench throws back.

use super::hollow::Hollow;
use super::noise::Seed;
use super::sheet::Texel;
use super::vector::{V3, grey, mix, step, v3};

#[derive(Clone, Copy, Debug)]
pub(super) struct Lamp {
    /// From the part towards the lamp.
    pub(super) direction: V3,
    pub(super) colour: V3,
    /// Half the angle that the lamp fills, in radians: large lamps give soft shadows and wide glints.
    pub(super) spread: f32,
}

#[derive(Debug)]
pub(super) struct Light {
    pub(super) key: Lamp,
    pub(super) fill: Lamp,
    /// Square to the ceiling tube: directions square to this see the tube.
    tube: V3,
    tube_colour: V3,
    zenith: V3,
    horizon: V3,
    /// The bench as seen in a mirror: its colour in this light.
    pub(super) bounce: V3,
}

/// A point of metal ready to be lit.
#[derive(Clone, Copy, Debug)]
pub(super) struct Glint {
    pub(super) point: V3,
    pub(super) normal: V3,
    /// Along the grain, square to the normal.
    pub(super) along: V3,
    pub(super) brushed: f32,
    pub(super) texel: Texel,
}

impl Light {
    /// Light for a camera that looks from `round` degrees, over a bench of the given colour.
    pub(super) fn new(seed: &mut Seed, round: f32, bench: V3) -> Light {
        let from = |degrees: f32, above: f32| {
            let (a, e) = (degrees.to_radians(), above.to_radians());
            v3(-a.sin() * e.cos(), a.cos() * e.cos(), e.sin())
        };
        // The main light stands beyond the part and to one side, as people turn a part until it shines.
        let side = if seed.chance(0.6) { 1.0 } else { -1.0 };
        let key_at = round + side * seed.between(22.0, 75.0);
        let key = Lamp {
            direction: from(key_at, seed.between(38.0, 60.0)),
            colour: v3(1.0, seed.between(0.93, 1.0), seed.between(0.82, 1.0)) * seed.between(1.0, 1.35),
            spread: seed.between(0.16, 0.28),
        };
        let fill = Lamp {
            direction: from(key_at + 180.0 + seed.between(-50.0, 50.0), seed.between(30.0, 60.0)),
            colour: v3(0.85, 0.93, 1.0) * seed.between(0.12, 0.3),
            spread: 0.4,
        };
        let tilt = seed.between(-0.9, 0.9);
        let turn = (round + seed.between(-35.0, 35.0)).to_radians();
        let zenith = v3(0.22, 0.235, 0.25) * seed.between(0.8, 1.1);
        let horizon = v3(0.11, 0.107, 0.105) * seed.between(0.7, 1.1);
        Light {
            key,
            fill,
            tube: v3(turn.cos(), turn.sin(), tilt).unit(),
            tube_colour: v3(0.95, 1.0, 1.0) * seed.between(0.5, 1.1),
            zenith,
            horizon,
            bounce: bench * (key.colour * key.direction.z * 0.32 + zenith * 0.8),
        }
    }

    /// The room seen in a direction, by a mirror as dull as `rough`.
    fn room(&self, d: V3, rough: f32) -> V3 {
        let soft = 0.08 + rough;
        let ceiling = self.horizon.mix(self.zenith, step(-0.1, 0.9, d.z));
        let across = d.dot(self.tube);
        let width = 0.05 + rough * 0.8;
        let tube = (-across * across / (width * width)).exp() * 0.05 / width;
        let above = ceiling + self.tube_colour * (tube * step(0.0, 0.4, d.z));
        self.bounce.mix(above, step(-soft, soft, d.z))
    }

    /// The light that a scattering surface gathers.
    pub(super) fn gathered(&self, point: V3, normal: V3, hollow: &Hollow) -> V3 {
        let share = 0.5 + 0.5 * normal.z;
        let sky = self.bounce.mix(self.zenith.mix(self.horizon, 0.4), share);
        let ambient = sky * hollow.wide_open(point);
        [self.key, self.fill].iter().fold(ambient, |sum, lamp| {
            let facing = normal.dot(lamp.direction).max(0.0);
            if facing <= 0.0 {
                return sum;
            }
            sum + lamp.colour * (facing * hollow.open(point, lamp.direction, lamp.spread))
        })
    }

    /// The colour in which a point of metal is seen; `view` goes from the point to the eye.
    pub(super) fn on_metal(&self, glint: &Glint, view: V3, hollow: &Hollow) -> V3 {
        let Glint { point, normal, texel, .. } = *glint;
        let rough = mix(0.62, 0.05, texel.gloss.clamp(0.0, 1.0));
        let scattered = texel.colour * self.gathered(point, normal, hollow);
        let shine = self.lamps(glint, view, rough, hollow) + self.reflection(glint, view, rough, hollow);
        // A grazing look makes every surface more of a mirror.
        let edge = (1.0 - normal.dot(view).max(0.0)).powi(5);
        let mirror = texel.colour.mix(grey(1.0), 0.6 * edge * texel.gloss);
        let share = mix(0.32, 0.92, texel.gloss);
        let open = texel.open;
        scattered * ((1.0 - share) * open) + shine * mirror * (share * open)
    }

    fn lamps(&self, glint: &Glint, view: V3, rough: f32, hollow: &Hollow) -> V3 {
        let across = glint.normal.cross(glint.along);
        let facing_eye = glint.normal.dot(view).max(0.05);
        [self.key, self.fill].iter().fold(grey(0.0), |sum, lamp| {
            let facing = glint.normal.dot(lamp.direction);
            if facing <= 0.0 {
                return sum;
            }
            let half = (lamp.direction + view).unit();
            let up = half.dot(glint.normal).max(0.05);
            // Brushing scatters light across the grain and leaves it sharp along the grain.
            let wide = |r: f32| (r * r + lamp.spread * lamp.spread * 0.25).sqrt();
            let (a, b) = (wide(rough * (1.0 - 0.75 * glint.brushed)), wide(rough * (1.0 + 0.9 * glint.brushed)));
            let (s, t) = (half.dot(glint.along) / up / a, half.dot(across) / up / b);
            let lobe = (-(s * s + t * t)).exp() * (facing / facing_eye).sqrt().min(1.5) / (4.0 * a * b);
            if lobe < 1e-3 {
                return sum;
            }
            sum + lamp.colour * (lobe * hollow.open(glint.point, lamp.direction, lamp.spread))
        })
    }

    fn reflection(&self, glint: &Glint, view: V3, rough: f32, hollow: &Hollow) -> V3 {
        let normal = glint.normal;
        let away = (normal * (2.0 * normal.dot(view)) - view).unit();
        let open = hollow.open(glint.point, away, 0.15 + rough);
        // What is not sky is the part's own opposite wall, itself half lit.
        let wall = glint.texel.colour * (self.zenith + self.key.colour * 0.28);
        wall.mix(self.room(away, rough), open)
    }
}
