//! What the phone makes of the light: depth of field, vignette, exposure, tone, sensor noise.

use super::noise::Seed;
use super::vector::{V3, grey, mix, step, v3};
use image::{Rgb, RgbImage};

/// Linear light per pixel, with what is needed to blur it.
#[derive(Debug)]
pub(super) struct Frame {
    width: u32,
    height: u32,
    focus: f32,
    colours: Vec<V3>,
    depths: Vec<f32>,
    surfaces: Vec<u8>,
}

type Band<'a> = (&'a mut [V3], &'a mut [f32], &'a mut [u8]);

impl Frame {
    pub(super) fn new(width: u32, height: u32, focus: f32) -> Frame {
        let count = width as usize * height as usize;
        Frame {
            width,
            height,
            focus,
            colours: vec![grey(0.0); count],
            depths: vec![focus; count],
            surfaces: vec![0; count],
        }
    }

    /// Bands of whole rows, to be filled side by side.
    pub(super) fn bands(&mut self, pixels: usize) -> impl Iterator<Item = Band<'_>> {
        let colours = self.colours.chunks_mut(pixels);
        let depths = self.depths.chunks_mut(pixels);
        let surfaces = self.surfaces.chunks_mut(pixels);
        colours.zip(depths).zip(surfaces).map(|((c, d), s)| (c, d, s))
    }

    /// Develops the picture.
    pub(super) fn develop(mut self, seed: &mut Seed) -> RgbImage {
        self.smooth_edges();
        self.blur_far();
        let exposure = self.exposure(seed.between(0.30, 0.36));
        let warm = seed.between(-0.05, 0.05);
        let balance = v3(1.0 + warm, 1.0, 1.0 - warm) * exposure;
        let vignette = seed.between(0.18, 0.34);
        let noise = seed.between(1.1, 1.8);
        let mut grain = seed.branch(77);
        let (half_w, half_h) = (self.width as f32 / 2.0, self.height as f32 / 2.0);
        let mut picture = RgbImage::new(self.width, self.height);
        for (index, (pixel, colour)) in picture.pixels_mut().zip(&self.colours).enumerate() {
            let x = (index as u32 % self.width) as f32 / half_w - 1.0;
            let y = (index as u32 / self.width) as f32 / half_h - 1.0;
            let dim = 1.0 - vignette * step(0.25, 1.9, x * x + y * y);
            *pixel = printed(*colour * balance * dim, &mut grain, noise);
        }
        picture
    }

    /// Where two surfaces meet, the pixel shows some of both.
    fn smooth_edges(&mut self) {
        let width = self.width as usize;
        let before = self.colours.clone();
        // Bounded first, or one glint would burn a whole edge.
        let at = |index: usize| bounded(before.get(index).copied().unwrap_or_default());
        let surface = |index: usize| self.surfaces.get(index).copied().unwrap_or(0);
        let depth = |index: usize| self.depths.get(index).copied().unwrap_or(0.0);
        let last = (self.colours.len()).saturating_sub(width + 1);
        let mut edges = Vec::new();
        for index in width + 1..last {
            let differs = |other: usize| {
                surface(index) != surface(other) || (depth(index) - depth(other)).abs() > 1.2
            };
            if [index - 1, index + 1, index - width, index + width].into_iter().any(differs) {
                edges.push(index);
            }
        }
        for index in edges {
            let cross = at(index - 1) + at(index + 1) + at(index - width) + at(index + width);
            let corners = at(index - width - 1) + at(index - width + 1) + at(index + width - 1) + at(index + width + 1);
            if let Some(colour) = self.colours.get_mut(index) {
                *colour = at(index) * 0.36 + cross * 0.12 + corners * 0.04;
            }
        }
    }

    /// Blends in a blurred copy, the more the farther a point is from the sharp distance.
    fn blur_far(&mut self) {
        let small = Small::of(&self.colours, self.width, self.height);
        let mild = small.blurred(1);
        let strong = mild.blurred(3);
        let width = self.width.max(1) as usize;
        for (index, (colour, depth)) in self.colours.iter_mut().zip(&self.depths).enumerate() {
            let off = (1.0 - self.focus / depth).abs();
            let share = step(0.06, 0.22, off);
            if share <= 0.0 {
                continue;
            }
            let (x, y) = ((index % width) as f32, (index / width) as f32);
            let soft = mild.at(x, y).mix(strong.at(x, y), step(0.12, 0.40, off));
            *colour = colour.mix(soft, share);
        }
    }

    /// The factor that brings the middle of the picture to a middle brightness, as a phone meters.
    fn exposure(&self, wanted: f32) -> f32 {
        let width = self.width.max(1) as usize;
        let rows = self.colours.chunks_exact(width);
        let (skip_x, skip_y) = (width / 5, self.height as usize / 5);
        let (mut sum, mut count) = (0.0f32, 0.0f32);
        for row in rows.skip(skip_y).take(skip_y * 3).step_by(4) {
            for colour in row.iter().skip(skip_x).take(skip_x * 3).step_by(4) {
                sum += colour.brightness().clamp(0.01, 4.0).ln();
                count += 1.0;
            }
        }
        (wanted / (sum / count.max(1.0)).exp()).clamp(0.5, 3.0)
    }
}

fn printed(light: V3, grain: &mut Seed, noise: f32) -> Rgb<u8> {
    // Two halves of one number serve brightness and colour noise.
    let bits = grain.next();
    let speck = |shift: u32| ((bits >> shift) & 0xFF) as f32 / 127.5 - 1.0;
    let common = (speck(0) + speck(8)) * noise;
    let tone = |x: f32, own: f32| {
        let soft = 1.0 - (-x * 1.25).exp();
        let value = soft.max(0.0).powf(1.0 / 2.1);
        // A little contrast, as phones add.
        let value = mix(value, value * value * (3.0 - 2.0 * value), 0.35);
        (value * 255.0 + common + own * noise * 0.5 + 0.5).clamp(0.0, 255.0) as u8
    };
    Rgb([tone(light.x, speck(16)), tone(light.y, speck(24)), tone(light.z, speck(32))])
}

/// A copy at a quarter of the size, for blurring.
struct Small {
    width: usize,
    height: usize,
    colours: Vec<V3>,
}

impl Small {
    fn of(colours: &[V3], width: u32, height: u32) -> Small {
        let (w, h) = (width as usize / 4, height as usize / 4);
        let mut small = Small { width: w, height: h, colours: vec![grey(0.0); w * h] };
        let rows = small.colours.chunks_exact_mut(w.max(1)).zip(colours.chunks_exact((width as usize * 4).max(1)));
        for (target, four) in rows {
            for line in four.chunks_exact(width as usize) {
                for (cell, block) in target.iter_mut().zip(line.chunks_exact(4)) {
                    let sum = block.iter().fold(grey(0.0), |sum, c| sum + bounded(*c));
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
        let mut result = Small { width: self.width, height: self.height, colours: Vec::with_capacity(self.colours.len()) };
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
