//! What the phone makes of the light: depth of field, vignette, exposure, tone, sensor noise.

use super::noise::Seed;
use super::rows::each_row;
use super::vector::{V3, grey, mix, step, v3};
use image::RgbImage;

/// The point that one pixel sees.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Shot {
    /// Linear light.
    pub(super) colour: V3,
    /// Distance along the line of sight, in mm.
    pub(super) depth: f32,
    /// Which surface it belongs to: sheets count from 1, the bench is 0.
    pub(super) surface: u8,
}

/// What the camera saw, before the film makes a picture of it.
#[derive(Debug)]
pub(super) struct Frame {
    width: u32,
    height: u32,
    focus: f32,
    pub(super) shots: Vec<Shot>,
}

impl Frame {
    pub(super) fn new(width: u32, height: u32, focus: f32) -> Frame {
        let shots = vec![Shot::default(); width as usize * height as usize];
        Frame { width, height, focus, shots }
    }

    /// Develops the picture.
    pub(super) fn develop(mut self, seed: &mut Seed) -> RgbImage {
        self.smooth_edges();
        self.blur_far();
        let exposure = self.exposure(seed.between(0.25, 0.32));
        let warm = seed.between(-0.05, 0.05);
        let balance = v3(1.0 + warm, 1.0, 1.0 - warm) * exposure;
        let vignette = seed.between(0.22, 0.40);
        let noise = seed.between(1.6, 2.4);
        let (half_w, half_h) = (self.width as f32 / 2.0, self.height as f32 / 2.0);
        let width = self.width as usize;
        let tone = Tone::new();
        let mut picture = RgbImage::new(self.width, self.height);
        each_row(&mut picture, width * 3, |row, bytes| {
            let grain = &mut seed.branch(row as u64);
            let y = row as f32 / half_h - 1.0;
            let shots = self.shots.iter().skip(row * width);
            for (column, (pixel, shot)) in bytes.chunks_exact_mut(3).zip(shots).enumerate() {
                let x = column as f32 / half_w - 1.0;
                let dim = 1.0 - vignette * step(0.2, 1.9, x * x + y * y);
                pixel.copy_from_slice(&tone.printed(shot.colour * balance * dim, grain, noise));
            }
        });
        picture
    }

    /// Where two surfaces meet, the pixel shows some of both.
    fn smooth_edges(&mut self) {
        let width = self.width as usize;
        let at = |index: usize| self.shots.get(index).copied().unwrap_or_default();
        let mut edges = Vec::new();
        for index in width + 1..self.shots.len().saturating_sub(width + 1) {
            let here = at(index);
            let differs = |other: usize| {
                let there = at(other);
                here.surface != there.surface || (here.depth - there.depth).abs() > 1.2
            };
            let (left, right, over, under) = (index - 1, index + 1, index - width, index + width);
            if differs(left) || differs(right) || differs(over) || differs(under) {
                // Bounded first, or one glint would burn a whole edge.
                let light = |index: usize| bounded(at(index).colour);
                let cross = light(left) + light(right) + light(over) + light(under);
                let corners = light(over - 1) + light(over + 1) + light(under - 1) + light(under + 1);
                edges.push((index, light(index) * 0.36 + cross * 0.12 + corners * 0.04));
            }
        }
        for (index, colour) in edges {
            if let Some(shot) = self.shots.get_mut(index) {
                shot.colour = colour;
            }
        }
    }

    /// Blends in a blurred copy, the more the farther a point is from the sharp distance.
    fn blur_far(&mut self) {
        let mild = Small::of(&self.shots, self.width).blurred(1);
        let strong = mild.blurred(3);
        let focus = self.focus;
        each_row(&mut self.shots, self.width as usize, |row, shots| {
            for (column, shot) in shots.iter_mut().enumerate() {
                let off = (1.0 - focus / shot.depth).abs();
                let share = step(0.09, 0.26, off);
                if share > 0.0 {
                    let (x, y) = (column as f32, row as f32);
                    let soft = mild.at(x, y).mix(strong.at(x, y), step(0.14, 0.42, off));
                    shot.colour = shot.colour.mix(soft, share);
                }
            }
        });
    }

    /// The factor that brings the middle of the picture to a middle brightness, as a phone meters.
    fn exposure(&self, wanted: f32) -> f32 {
        let (width, height) = (self.width.max(5) as usize, self.height.max(5) as usize);
        let rows = self.shots.chunks_exact(width).skip(height / 5).take(height * 3 / 5);
        let (mut sum, mut count) = (0.0f32, 0.0f32);
        for row in rows.step_by(4) {
            for shot in row.iter().skip(width / 5).take(width * 3 / 5).step_by(4) {
                sum += shot.colour.brightness().clamp(0.0, 1.6);
                count += 1.0;
            }
        }
        (wanted * count.max(1.0) / sum.max(0.01)).clamp(0.4, 2.5)
    }
}

/// How bright a light is printed, as a table: 0 to 255 for lights of 0 to 4.
struct Tone(Vec<f32>);

impl Tone {
    const STEPS: f32 = 1024.0;

    fn new() -> Tone {
        Tone((0..=4096u16).map(|i| toned(f32::from(i) / Tone::STEPS) * 255.0).collect())
    }

    fn printed(&self, light: V3, grain: &mut Seed, noise: f32) -> [u8; 3] {
        // Parts of one random number serve brightness and colour noise.
        let bits = grain.next();
        let speck = |shift: u32| ((bits >> shift) & 0xFF) as f32 / 127.5 - 1.0;
        let common = (speck(0) + speck(8)) * noise;
        let value = |x: f32, own: f32| {
            let level = (x * Tone::STEPS).clamp(0.0, 4095.0);
            let base = self.0.get(level as usize).copied().unwrap_or(0.0);
            let next = self.0.get(level as usize + 1).copied().unwrap_or(base);
            (mix(base, next, level.fract()) + common + own * noise * 0.5 + 0.5).clamp(0.0, 255.0) as u8
        };
        [value(light.x, speck(16)), value(light.y, speck(24)), value(light.z, speck(32))]
    }
}

fn toned(x: f32) -> f32 {
    let soft = (1.0 - (-x * 1.35).exp()).max(0.0);
    let value = soft.powf(1.0 / 2.2);
    // Some contrast, as phones add.
    mix(value, value * value * (3.0 - 2.0 * value), 0.7)
}

/// A copy at a quarter of the size, for blurring.
struct Small {
    width: usize,
    height: usize,
    colours: Vec<V3>,
}

impl Small {
    fn of(shots: &[Shot], width: u32) -> Small {
        let width = width.max(1) as usize;
        let (w, h) = (width / 4, shots.len() / width / 4);
        let mut small = Small { width: w, height: h, colours: vec![grey(0.0); w * h] };
        let rows = small.colours.chunks_exact_mut(w.max(1)).zip(shots.chunks_exact(width * 4));
        for (target, four) in rows {
            for line in four.chunks_exact(width) {
                for (cell, block) in target.iter_mut().zip(line.chunks_exact(4)) {
                    let sum = block.iter().fold(grey(0.0), |sum, c| sum + bounded(c.colour));
                    *cell = *cell + sum * (1.0 / 16.0);
                }
            }
        }
        small
    }

    fn blurred(&self, radius: usize) -> Small {
        let once = self.averaged(radius, 1, 0).averaged(radius, 0, 1);
        once.averaged(radius, 1, 0).averaged(radius, 0, 1)
    }

    fn averaged(&self, radius: usize, dx: usize, dy: usize) -> Small {
        let mut result =
            Small { width: self.width, height: self.height, colours: Vec::with_capacity(self.colours.len()) };
        let weight = 1.0 / (2 * radius + 1) as f32;
        for y in 0..self.height {
            for x in 0..self.width {
                let mut sum = grey(0.0);
                for k in 0..=2 * radius {
                    let i = (x + k * dx).saturating_sub(radius * dx);
                    let j = (y + k * dy).saturating_sub(radius * dy);
                    sum = sum + self.cell(i, j);
                }
                result.colours.push(sum * weight);
            }
        }
        result
    }

    fn cell(&self, x: usize, y: usize) -> V3 {
        let index = y.min(self.height.saturating_sub(1)) * self.width + x.min(self.width.saturating_sub(1));
        self.colours.get(index).copied().unwrap_or_default()
    }

    fn at(&self, x: f32, y: f32) -> V3 {
        let (x, y) = ((x / 4.0 - 0.375).max(0.0), (y / 4.0 - 0.375).max(0.0));
        let (i, j) = (x as usize, y as usize);
        let (tx, ty) = (x - i as f32, y - j as f32);
        let top = self.cell(i, j).mix(self.cell(i + 1, j), tx);
        let bottom = self.cell(i, j + 1).mix(self.cell(i + 1, j + 1), tx);
        top.mix(bottom, ty)
    }
}

/// Keeps a single glint from lighting up its whole neighbourhood.
fn bounded(colour: V3) -> V3 {
    v3(colour.x.min(4.0), colour.y.min(4.0), colour.z.min(4.0))
}
