//! Where the phone was held.

use super::vector::{V3, v3};

#[derive(Clone, Copy, Debug)]
pub(super) struct Camera {
    pub(super) eye: V3,
    right: V3,
    up: V3,
    forward: V3,
    focal: f32,
    middle: (f32, f32),
}

/// How the phone looks at a part; angles in degrees, lengths in millimetres.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stance {
    pub(super) target: V3,
    /// 0 looks along +y; growing turns the camera to the right of the part.
    pub(super) round: f32,
    /// 0 is level with the bench, 90 straight down.
    pub(super) above: f32,
    /// How much the phone is turned in the hand.
    pub(super) roll: f32,
    pub(super) distance: f32,
    /// How many millimetres the width of the picture spans at the target.
    pub(super) span: f32,
}

/// A point as the camera sees it: place in pixels and distance along the line of sight.
#[derive(Clone, Copy, Debug)]
pub(super) struct Seen {
    pub(super) x: f32,
    pub(super) y: f32,
    pub(super) depth: f32,
}

impl Camera {
    pub(super) fn new(stance: Stance, width: u32, height: u32) -> Camera {
        let (round, above) = (stance.round.to_radians(), stance.above.to_radians());
        let back = v3(round.sin() * above.cos(), -round.cos() * above.cos(), above.sin());
        let level = v3(round.cos(), round.sin(), 0.0);
        let upright = back.cross(level);
        let (sin, cos) = stance.roll.to_radians().sin_cos();
        Camera {
            eye: stance.target + back * stance.distance,
            right: level * cos + upright * sin,
            up: upright * cos - level * sin,
            forward: -back,
            focal: width as f32 * stance.distance / stance.span,
            middle: (width as f32 / 2.0, height as f32 / 2.0),
        }
    }

    pub(super) fn see(&self, point: V3) -> Seen {
        let p = point - self.eye;
        // Nothing that is drawn lies behind the camera; the bound only keeps the division finite.
        let depth = p.dot(self.forward).max(1.0);
        Seen {
            x: self.middle.0 + self.focal * p.dot(self.right) / depth,
            y: self.middle.1 - self.focal * p.dot(self.up) / depth,
            depth,
        }
    }

    /// The line of sight through a pixel, from the eye outwards, of length 1.
    pub(super) fn sight(&self, x: f32, y: f32) -> V3 {
        let dx = (x - self.middle.0) / self.focal;
        let dy = (self.middle.1 - y) / self.focal;
        (self.forward + self.right * dx + self.up * dy).unit()
    }

    pub(super) fn depth(&self, point: V3) -> f32 {
        (point - self.eye).dot(self.forward)
    }
}
