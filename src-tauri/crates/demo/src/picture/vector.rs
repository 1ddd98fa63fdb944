//! A triple of numbers: a point in millimetres, a direction, or a linear red-green-blue colour.

use std::ops::{Add, Mul, Neg, Sub};

#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct V3 {
    pub(super) x: f32,
    pub(super) y: f32,
    pub(super) z: f32,
}

pub(super) const fn v3(x: f32, y: f32, z: f32) -> V3 {
    V3 { x, y, z }
}

/// The same grey in all three channels.
pub(super) const fn grey(level: f32) -> V3 {
    v3(level, level, level)
}

impl V3 {
    pub(super) fn dot(self, o: V3) -> f32 {
        self.x * o.x + self.y * o.y + self.z * o.z
    }

    pub(super) fn cross(self, o: V3) -> V3 {
        v3(self.y * o.z - self.z * o.y, self.z * o.x - self.x * o.z, self.x * o.y - self.y * o.x)
    }

    /// The direction of this vector; a zero vector stays zero.
    pub(super) fn unit(self) -> V3 {
        self * (1.0 / self.dot(self).sqrt().max(1e-12))
    }

    /// Blends towards `o`: 0 keeps this, 1 gives `o`.
    pub(super) fn mix(self, o: V3, share: f32) -> V3 {
        self + (o - self) * share
    }

    /// How bright the eye finds this colour (weights of ITU-R BT.709).
    pub(super) fn brightness(self) -> f32 {
        self.dot(v3(0.2126, 0.7152, 0.0722))
    }
}

impl Add for V3 {
    type Output = V3;
    fn add(self, o: V3) -> V3 {
        v3(self.x + o.x, self.y + o.y, self.z + o.z)
    }
}

impl Sub for V3 {
    type Output = V3;
    fn sub(self, o: V3) -> V3 {
        v3(self.x - o.x, self.y - o.y, self.z - o.z)
    }
}

impl Mul<f32> for V3 {
    type Output = V3;
    fn mul(self, k: f32) -> V3 {
        v3(self.x * k, self.y * k, self.z * k)
    }
}

/// Channel by channel: light of one colour on a surface of another.
impl Mul for V3 {
    type Output = V3;
    fn mul(self, o: V3) -> V3 {
        v3(self.x * o.x, self.y * o.y, self.z * o.z)
    }
}

impl Neg for V3 {
    type Output = V3;
    fn neg(self) -> V3 {
        self * -1.0
    }
}

/// A soft step from 0 at `low` to 1 at `high`; falls instead of rising when `low` is the greater.
pub(super) fn step(low: f32, high: f32, x: f32) -> f32 {
    let t = ((x - low) / (high - low)).clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}

/// Blends two numbers: 0 gives `a`, 1 gives `b`.
pub(super) fn mix(a: f32, b: f32, share: f32) -> f32 {
    a + (b - a) * share
}
