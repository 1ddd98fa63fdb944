//! Chance that repeats: a seeded generator, and noise over the plane.

use super::vector::mix;

/// A splitmix64 generator: same seed, same numbers, on every machine.
#[derive(Clone, Debug)]
pub(super) struct Seed(u64);

impl Seed {
    pub(super) fn new(seed: u64) -> Seed {
        Seed(seed ^ 0x5EED_0F0E_57A7_E5A1)
    }

    /// A generator of its own for one purpose, so that drawing more here shifts nothing there.
    pub(super) fn branch(&self, purpose: u64) -> Seed {
        Seed(self.0.wrapping_add(scramble(purpose.wrapping_mul(0xA24B_AED4_963E_E407))))
    }

    pub(super) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        scramble(self.0)
    }

    /// A number from 0 up to 1.
    pub(super) fn unit(&mut self) -> f32 {
        (self.next() >> 40) as f32 / (1u64 << 24) as f32
    }

    pub(super) fn between(&mut self, low: f32, high: f32) -> f32 {
        mix(low, high, self.unit())
    }

    /// Mostly near `low`, seldom near `high`: the sizes of dirt and of damage are spread like this.
    pub(super) fn mostly_small(&mut self, low: f32, high: f32) -> f32 {
        let u = self.unit();
        mix(low, high, u * u * u)
    }

    pub(super) fn chance(&mut self, share: f32) -> bool {
        self.unit() < share
    }

    pub(super) fn noise(&mut self) -> Noise {
        Noise(self.next() as u32)
    }
}

fn scramble(x: u64) -> u64 {
    let x = (x ^ (x >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    let x = (x ^ (x >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    x ^ (x >> 31)
}

/// Value noise: random numbers on a grid of whole numbers, blended smoothly in between.
#[derive(Clone, Copy, Debug)]
pub(super) struct Noise(u32);

/// The nearest cells of a random mosaic.
pub(super) struct Mosaic {
    /// How far from the border between the nearest two cells; 0 on the border.
    pub(super) border: f32,
    /// How far from the middle of the nearest cell.
    pub(super) near: f32,
    /// A number from 0 to 1 that belongs to the nearest cell.
    pub(super) cell: f32,
}

impl Noise {
    /// The noise at a point, 0 to 1; it varies over about one unit.
    pub(super) fn at(self, x: f32, y: f32) -> f32 {
        let (ix, iy) = (whole(x), whole(y));
        let (tx, ty) = (ease(x - ix as f32), ease(y - iy as f32));
        let top = mix(self.grid(ix, iy), self.grid(ix.wrapping_add(1), iy), tx);
        let low = iy.wrapping_add(1);
        let bottom = mix(self.grid(ix, low), self.grid(ix.wrapping_add(1), low), tx);
        mix(top, bottom, ty)
    }

    /// Noise in several sizes at once, each half as large and half as strong; 0 to 1.
    pub(super) fn layered(self, x: f32, y: f32, layers: u32) -> f32 {
        let (mut sum, mut weight, mut total, mut scale) = (0.0, 1.0, 0.0, 1.0);
        for layer in 0..layers {
            // Each layer is shifted, or the grid would show where the layers' corners meet.
            let shift = layer as f32 * 17.31;
            sum += weight * self.at(x * scale + shift, y * scale - shift);
            total += weight;
            weight *= 0.5;
            scale *= 2.03;
        }
        sum / total
    }

    pub(super) fn mosaic(self, x: f32, y: f32) -> Mosaic {
        let (x0, y0) = (whole(x), whole(y));
        let (mut near, mut second, mut cell) = (f32::MAX, f32::MAX, 0.0);
        for dy in -1..=1 {
            for dx in -1..=1 {
                let (ix, iy) = (x0.wrapping_add(dx), y0.wrapping_add(dy));
                let px = ix as f32 + self.grid(ix, iy) - x;
                let py = iy as f32 + self.grid(iy ^ 0x55, ix) - y;
                let distance = (px * px + py * py).sqrt();
                if distance < near {
                    second = near;
                    near = distance;
                    cell = self.grid(ix ^ 0x2B, iy);
                } else if distance < second {
                    second = distance;
                }
            }
        }
        Mosaic { border: second - near, near, cell }
    }

    fn grid(self, x: i32, y: i32) -> f32 {
        let mut h =
            (x as u32).wrapping_mul(0x85EB_CA6B) ^ (y as u32).wrapping_mul(0xC2B2_AE35).rotate_left(13) ^ self.0;
        h = (h ^ (h >> 15)).wrapping_mul(0x2C1B_3C6D);
        h = (h ^ (h >> 12)).wrapping_mul(0x297A_2D39);
        h ^= h >> 15;
        (h >> 8) as f32 / (1u32 << 24) as f32
    }
}

/// The whole number below; `floor` is a slow call where the processor's own instruction can't be relied on.
fn whole(x: f32) -> i32 {
    let cut = x as i32;
    if (cut as f32) > x { cut.wrapping_sub(1) } else { cut }
}

fn ease(t: f32) -> f32 {
    t * t * (3.0 - 2.0 * t)
}
