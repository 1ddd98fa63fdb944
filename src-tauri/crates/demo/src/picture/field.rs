//! The part of a sheet in which a tag lies, with soft borders: wear does not stop at a line.

use super::mesh::Spot;
use super::noise::Seed;
use super::scene::spot;
use super::sheet::Grain;
use super::vector::step;

#[derive(Clone, Copy, Debug)]
pub(super) enum Field {
    Rect { from: Spot, to: Spot },
    Ring { centre: Spot, inner: f32, outer: f32 },
}

impl Field {
    /// The field between two shares of a sheet's size, as (from, to) along `u` and along `v`.
    pub(super) fn share(size: Spot, u: (f32, f32), v: (f32, f32)) -> Field {
        Field::Rect {
            from: spot(size.u * u.0, size.v * v.0),
            to: spot(size.u * u.1, size.v * v.1),
        }
    }

    /// 1 in the middle of the field, falling to 0 a little beyond its border.
    pub(super) fn body(&self, at: Spot) -> f32 {
        let fall = |off: f32| step(1.15, 0.45, off.abs());
        match *self {
            Field::Rect { from, to } => {
                let (middle, half) = self.middle_and_half(from, to);
                fall((at.u - middle.u) / half.u) * fall((at.v - middle.v) / half.v)
            }
            Field::Ring { centre, inner, outer } => {
                let r = distance(at, centre);
                if inner <= 0.0 {
                    return fall(r / outer.max(0.01));
                }
                fall((r - (inner + outer) / 2.0) / ((outer - inner) / 2.0).max(0.01))
            }
        }
    }

    pub(super) fn middle(&self) -> Spot {
        match *self {
            Field::Rect { from, to } => self.middle_and_half(from, to).0,
            Field::Ring { centre, .. } => centre,
        }
    }

    /// The corners of a rectangle that holds the field and its soft border.
    pub(super) fn bounds(&self) -> (Spot, Spot) {
        let (middle, half) = match *self {
            Field::Rect { from, to } => self.middle_and_half(from, to),
            Field::Ring { centre, outer, .. } => (centre, spot(outer, outer)),
        };
        (
            spot(middle.u - half.u * 1.2, middle.v - half.v * 1.2),
            spot(middle.u + half.u * 1.2, middle.v + half.v * 1.2),
        )
    }

    /// A random spot in the field.
    pub(super) fn scatter(&self, seed: &mut Seed) -> Spot {
        match *self {
            Field::Rect { from, to } => spot(seed.between(from.u, to.u), seed.between(from.v, to.v)),
            Field::Ring { centre, inner, outer } => {
                // Even over the area, not over the radius.
                let r = seed.between(inner * inner, outer * outer).sqrt();
                let (sin, cos) = seed.between(0.0, std::f32::consts::TAU).sin_cos();
                spot(centre.u + r * cos, centre.v + r * sin)
            }
        }
    }

    /// How far the field reaches along the grain and across it, in mm.
    pub(super) fn reach(&self, grain: Grain) -> (f32, f32) {
        match (*self, grain) {
            (Field::Rect { from, to }, Grain::AlongV) => (to.v - from.v, to.u - from.u),
            (Field::Rect { from, to }, _) => (to.u - from.u, to.v - from.v),
            (Field::Ring { inner, outer, .. }, _) => (3.0 * (inner + outer), outer - inner),
        }
    }

    /// In mm².
    pub(super) fn area(&self) -> f32 {
        match *self {
            Field::Rect { from, to } => (to.u - from.u) * (to.v - from.v),
            Field::Ring { inner, outer, .. } => std::f32::consts::PI * (outer * outer - inner * inner),
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
