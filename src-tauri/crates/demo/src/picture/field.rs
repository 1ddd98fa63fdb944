//! The part of a sheet in which a tag lies, with soft borders: wear does not stop at a line.

use super::mesh::Spot;
use super::noise::{Noise, Seed};
use super::scene::spot;
use super::sheet::Grain;
use super::vector::step;

/// The bare outline of a zone on its sheet.
#[derive(Clone, Copy, Debug)]
pub(super) enum Outline {
    Rect { from: Spot, to: Spot },
    Ring { centre: Spot, inner: f32, outer: f32 },
}

impl Outline {
    /// The rectangle between two shares of a sheet's size, as (from, to) along `u` and along `v`.
    pub(super) fn share(size: Spot, u: (f32, f32), v: (f32, f32)) -> Outline {
        Outline::Rect { from: spot(size.u * u.0, size.v * v.0), to: spot(size.u * u.1, size.v * v.1) }
    }

    /// This outline and a neighbour as one, when they make a rectangle together.
    pub(super) fn joined(self, other: Outline) -> Option<Outline> {
        let (Outline::Rect { from: a, to: b }, Outline::Rect { from: c, to: d }) = (self, other) else {
            return None;
        };
        let even = |x: f32, y: f32| (x - y).abs() < 0.5;
        // Neighbouring zones overlap a little; a millimetre of daylight is still a common border.
        let touch = |low: f32, high: f32, from: f32, to: f32| from <= high + 1.0 && low <= to + 1.0;
        let beside = even(a.v, c.v) && even(b.v, d.v) && touch(a.u, b.u, c.u, d.u);
        let above = even(a.u, c.u) && even(b.u, d.u) && touch(a.v, b.v, c.v, d.v);
        let (from, to) = (spot(a.u.min(c.u), a.v.min(c.v)), spot(b.u.max(d.u), b.v.max(d.v)));
        (beside || above).then_some(Outline::Rect { from, to })
    }
}

#[cfg(test)]
impl Outline {
    pub(super) fn holds(&self, at: Spot) -> bool {
        match *self {
            Outline::Rect { from, to } => at.u >= from.u && at.u <= to.u && at.v >= from.v && at.v <= to.v,
            Outline::Ring { centre, inner, outer } => (inner..=outer).contains(&distance(at, centre)),
        }
    }
}

/// A zone as wear sees it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Field {
    pub(super) outline: Outline,
    wobble: Noise,
}

impl Field {
    pub(super) fn new(outline: Outline, seed: &mut Seed) -> Field {
        Field { outline, wobble: seed.noise() }
    }

    /// 1 over most of the field, falling unevenly to 0 a little beyond its border.
    pub(super) fn body(&self, at: Spot) -> f32 {
        step(1.15, 0.40, self.off(at))
    }

    /// 1 in the very middle, falling evenly to 0 a little beyond the border.
    pub(super) fn nearness(&self, at: Spot) -> f32 {
        (1.0 - self.off(at) / 1.2).clamp(0.0, 1.0)
    }

    /// How far out a spot lies: 0 in the middle, about 1 on the (uneven) border.
    fn off(&self, at: Spot) -> f32 {
        let bend = |shift: f32, x: f32, y: f32| (self.wobble.layered(x + shift, y - shift, 3) - 0.5) * 0.9;
        match self.outline {
            Outline::Rect { from, to } => {
                let (middle, half) = self.middle_and_half(from, to);
                let (tu, tv) = ((at.u - middle.u) / half.u, (at.v - middle.v) / half.v);
                let (x, y) = (tu + bend(3.0, tu * 1.3, tv * 1.3), tv + bend(31.0, tu * 1.3, tv * 1.3));
                // Between a circle and a square, so that the border shows no corners.
                let off = (x.abs().powi(3) + y.abs().powi(3)).cbrt();
                off + 3.0 * step(1.05, 1.3, tu.abs().max(tv.abs()))
            }
            Outline::Ring { centre, inner, outer } => {
                let (x, y) = ((at.u - centre.u) / outer, (at.v - centre.v) / outer);
                let r = distance(at, centre) + bend(3.0, x * 1.6, y * 1.6) * (outer - inner) * 0.12;
                if inner <= 0.0 {
                    return r / outer.max(0.01);
                }
                ((r - (inner + outer) / 2.0) / ((outer - inner) / 2.0).max(0.01)).abs()
            }
        }
    }

    pub(super) fn middle(&self) -> Spot {
        match self.outline {
            Outline::Rect { from, to } => self.middle_and_half(from, to).0,
            Outline::Ring { centre, .. } => centre,
        }
    }

    /// The corners of a rectangle that holds the field and its soft border.
    pub(super) fn bounds(&self) -> (Spot, Spot) {
        let (middle, half) = match self.outline {
            Outline::Rect { from, to } => self.middle_and_half(from, to),
            Outline::Ring { centre, outer, .. } => (centre, spot(outer, outer)),
        };
        (spot(middle.u - half.u * 1.3, middle.v - half.v * 1.3), spot(middle.u + half.u * 1.3, middle.v + half.v * 1.3))
    }

    /// A random spot in the field.
    pub(super) fn scatter(&self, seed: &mut Seed) -> Spot {
        match self.outline {
            Outline::Rect { from, to } => spot(seed.between(from.u, to.u), seed.between(from.v, to.v)),
            Outline::Ring { centre, inner, outer } => {
                // Even over the area, not over the radius.
                let r = seed.between(inner * inner, outer * outer).sqrt();
                let (sin, cos) = seed.between(0.0, std::f32::consts::TAU).sin_cos();
                spot(centre.u + r * cos, centre.v + r * sin)
            }
        }
    }

    /// How far the field reaches along the grain and across it, in mm.
    pub(super) fn reach(&self, grain: Grain) -> (f32, f32) {
        match (self.outline, grain) {
            (Outline::Rect { from, to }, Grain::AlongV) => (to.v - from.v, to.u - from.u),
            (Outline::Rect { from, to }, _) => (to.u - from.u, to.v - from.v),
            (Outline::Ring { inner, outer, .. }, _) => (3.0 * (inner + outer), outer - inner),
        }
    }

    /// In mm².
    pub(super) fn area(&self) -> f32 {
        match self.outline {
            Outline::Rect { from, to } => (to.u - from.u) * (to.v - from.v),
            Outline::Ring { inner, outer, .. } => std::f32::consts::PI * (outer * outer - inner * inner),
        }
    }

    fn middle_and_half(&self, from: Spot, to: Spot) -> (Spot, Spot) {
        (
            spot((from.u + to.u) / 2.0, (from.v + to.v) / 2.0),
            spot(((to.u - from.u) / 2.0).max(0.01), ((to.v - from.v) / 2.0).max(0.01)),
        )
    }
}

pub(super) fn distance(a: Spot, b: Spot) -> f32 {
    let (du, dv) = (a.u - b.u, a.v - b.v);
    (du * du + dv * dv).sqrt()
}
