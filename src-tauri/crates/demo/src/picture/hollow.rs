//! What a part hides from itself: how much of a direction is open to a point inside a hollow.

use super::vector::{V3, step};

#[derive(Clone, Copy, Debug)]
pub(super) enum Hollow {
    /// Nothing stands in the way.
    Open,
    /// A half cylinder along y that opens upwards, its axis at height `axis` mm; the tilt is a sine and cosine.
    Trough { axis: f32, radius: f32, half_width: f32, tilt: (f32, f32) },
    /// A round hole along z that opens at z = 0.
    Well { radius: f32 },
}

impl Hollow {
    /// The share of a lamp in direction `d` (half angle `spread`) that reaches the point.
    pub(super) fn open(&self, point: V3, d: V3, spread: f32) -> f32 {
        match *self {
            Hollow::Open => 1.0,
            Hollow::Trough { axis, radius, half_width, tilt } => {
                let (sin, cos) = tilt;
                let turn = |x: f32, z: f32| (x * cos + z * sin, z * cos - x * sin);
                let (px, pz) = turn(point.x, point.z - axis);
                let (dx, dz) = turn(d.x, d.z);
                let way = (-pz).max(0.0) / dz.max(1e-3);
                let soft = (way * spread).clamp(0.8, radius);
                let over_edge = step(radius + soft * 0.5, radius - soft * 0.5, (px + dx * way).abs());
                let past_end = step(half_width, half_width + soft, (point.y + d.y * way).abs());
                over_edge.max(past_end) * step(-0.15, 0.1, dz)
            }
            Hollow::Well { radius } => {
                let way = (-point.z).max(0.0) / d.z.max(1e-3);
                let (x, y) = (point.x + d.x * way, point.y + d.y * way);
                let soft = (way * spread).clamp(0.8, radius);
                step(radius + soft * 0.5, radius - soft * 0.5, (x * x + y * y).sqrt()) * step(-0.1, 0.15, d.z)
            }
        }
    }

    /// The share of the whole sky that reaches the point, with what the walls hand on.
    pub(super) fn wide_open(&self, point: V3) -> f32 {
        match *self {
            Hollow::Open => 1.0,
            Hollow::Trough { axis, radius, .. } => {
                let depth = ((axis - point.z) / radius).clamp(0.0, 1.0);
                1.0 - 0.42 * depth
            }
            Hollow::Well { radius } => {
                let depth = (-point.z / radius).max(0.0);
                1.0 / (1.0 + 0.9 * depth)
            }
        }
    }
}
