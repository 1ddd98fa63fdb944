//! A label on a bench, printed at 300 dots to the inch and photographed: turned, tilted, out of focus, badly lit, with the
//! noise of a phone. Everything follows from a number.

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::{GrayImage, ImageEncoder, Luma, Rgb, RgbImage};
use qrcode::{Color, EcLevel, QrCode, Version};

/// Dots of the printer along a module, and modules left white around the code.
const DOTS: u32 = 9;
const QUIET_ZONE: u32 = 4;
/// The label in dots: 63 mm by 34 mm.
const LABEL: (u32, u32) = (744, 402);

/// Draws numbers, the same ones for the same seed (SplitMix64).
pub(crate) struct Chance(u64);

impl Chance {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// Evenly between two bounds.
    pub(crate) fn between(&mut self, low: f32, high: f32) -> f32 {
        low + (high - low) * ((self.bits() >> 40) as f32 / (1u64 << 24) as f32)
    }

    /// Three numbers about zero with a spread of one, each the sum of two.
    fn noise(&mut self) -> [f32; 3] {
        let bits = self.bits();
        let lane = |nth: u32| (bits >> (10 * nth) & 0x3ff) as f32 / 1023.0 - 0.5;
        [0, 2, 4].map(|nth| (lane(nth) + lane(nth + 1)) * 6f32.sqrt())
    }

    /// Fourteen characters of a code.
    pub(crate) fn text(&mut self) -> String {
        let alphabet = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
        (0..14).map(|_| char::from(alphabet[(self.bits() % 32) as usize])).collect()
    }
}

/// How a picture is taken.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Shot {
    /// Pixels of a module in the middle of the label.
    pub(crate) module: f32,
    /// Turned in the plane of the picture, in degrees.
    pub(crate) turn: f32,
    /// Tilted away, in degrees, and towards which side.
    pub(crate) tilt: f32,
    pub(crate) towards: f32,
    /// The spread of the blur, in pixels.
    pub(crate) blur: f32,
    /// How far the hand moved, in pixels.
    pub(crate) shake: f32,
    /// The share of the light that reaches the darker side, and the shadow of the hand.
    pub(crate) light: f32,
    pub(crate) shadow: f32,
    /// The spread of the noise, in steps of 255.
    pub(crate) noise: f32,
}

/// The label as it comes out of the printer.
pub(crate) fn label(text: &str, chance: &mut Chance) -> GrayImage {
    let symbol = QrCode::with_version(text, Version::Normal(1), EcLevel::Q).unwrap();
    let side = symbol.width() as u32;
    let mut paper = GrayImage::from_pixel(LABEL.0, LABEL.1, Luma([235]));
    let left = LABEL.0 - (side + 2 * QUIET_ZONE) * DOTS - 12;
    let top = (LABEL.1 - side * DOTS) / 2;
    for (nth, color) in symbol.to_colors().iter().enumerate() {
        let (x, y) = (nth as u32 % side, nth as u32 / side);
        if *color == Color::Dark {
            fill(&mut paper, left + (QUIET_ZONE + x) * DOTS, top + y * DOTS, DOTS, DOTS);
        }
    }
    // Lines of letters beside it.
    for (y, height, stroke) in [(90, 40, 9), (150, 40, 9), (220, 20, 4), (260, 20, 4), (310, 22, 5)] {
        let mut x = 30;
        while x < left - 30 {
            let width = chance.between(1.0, 4.0) as u32 * stroke;
            fill(&mut paper, x, y, width, if width > 2 * stroke { stroke } else { height });
            x += width + stroke * 2;
        }
    }
    paper
}

fn fill(paper: &mut GrayImage, left: u32, top: u32, width: u32, height: u32) {
    for y in top..(top + height).min(paper.height()) {
        for x in left..(left + width).min(paper.width()) {
            paper.put_pixel(x, y, Luma([22]));
        }
    }
}

/// The picture that a phone takes, as a JPEG.
pub(crate) fn photograph(label: &GrayImage, shot: Shot, size: (u32, u32), chance: &mut Chance) -> Vec<u8> {
    let look = Look::new(shot, size);
    // Wood, metal, rags: waves of several lengths.
    let waves = [0.006, 0.02, 0.05, 0.09].map(|pace| (chance.between(0.0, 6.3), pace, chance.between(0.0, 6.3)));
    let waves = waves.map(|(way, pace, begin)| (way.cos() * pace, way.sin() * pace, begin));
    let mut bright = Vec::with_capacity((size.0 * size.1) as usize);
    for y in 0..size.1 {
        for x in 0..size.0 {
            let samples = if (x + y) % 2 == 0 { [(0.25, 0.25), (0.75, 0.75)] } else { [(0.75, 0.25), (0.25, 0.75)] };
            let (x, y) = (x as f32, y as f32);
            let wave = |(along, down, begin): (f32, f32, f32)| (x * along + y * down + begin).sin();
            let bench = || 100.0 + 18.0 * waves.map(wave).iter().sum::<f32>();
            let seen = samples.map(|(dx, dy)| look.sample(label, x + dx, y + dy).unwrap_or_else(bench));
            bright.push(seen.iter().sum::<f32>() / 2.0 * look.light(x, y));
        }
    }
    let bright = shaken(&blurred(&bright, size, shot.blur), size.0, shot.shake);
    let mut picture = RgbImage::new(size.0, size.1);
    for (pixel, bright) in picture.pixels_mut().zip(bright) {
        // Warm light, and each colour with a noise of its own.
        let noise = chance.noise();
        let colour = |share: f32, noise: f32| (bright * share + shot.noise * noise).clamp(0.0, 255.0) as u8;
        *pixel = Rgb([colour(1.0, noise[0]), colour(0.95, noise[1]), colour(0.85, noise[2])]);
    }
    let mut bytes = Cursor::new(Vec::new());
    let colour = image::ExtendedColorType::Rgb8;
    JpegEncoder::new_with_quality(&mut bytes, 80).write_image(&picture, size.0, size.1, colour).unwrap();
    bytes.into_inner()
}

/// From the picture back to the label.
struct Look {
    shot: Shot,
    centre: (f32, f32),
    scale: f32,
    turn: (f32, f32),
    towards: (f32, f32),
    tilt: (f32, f32),
}

/// How far the camera is, in widths of the label.
const DISTANCE: f32 = 3.0;

impl Look {
    fn new(shot: Shot, size: (u32, u32)) -> Self {
        let turned = |degrees: f32| degrees.to_radians().sin_cos();
        Self {
            shot,
            centre: (size.0 as f32 / 2.0, size.1 as f32 / 2.0),
            scale: shot.module / DOTS as f32,
            turn: turned(shot.turn),
            towards: turned(shot.towards),
            tilt: turned(shot.tilt),
        }
    }

    /// How bright the label is there; none beside it.
    fn sample(&self, label: &GrayImage, x: f32, y: f32) -> Option<f32> {
        let (x, y) = ((x - self.centre.0) / self.scale, (y - self.centre.1) / self.scale);
        // Turned so that the label tilts about the first axis.
        let (sin, cos) = self.towards;
        let (u, v) = (x * cos + y * sin, y * cos - x * sin);
        // Where the ray meets the tilted plane, seen from a pin hole.
        let (tilt_sin, tilt_cos) = self.tilt;
        let far = DISTANCE * LABEL.0 as f32;
        let along = v * far / (far * tilt_cos - v * tilt_sin);
        let across = u * (1.0 + along * tilt_sin / far);
        let (x, y) = (across * cos - along * sin, across * sin + along * cos);
        let (sin, cos) = self.turn;
        let (x, y) = (x * cos + y * sin + LABEL.0 as f32 / 2.0, y * cos - x * sin + LABEL.1 as f32 / 2.0);
        let is_on = x >= 0.0 && y >= 0.0 && x < LABEL.0 as f32 && y < LABEL.1 as f32;
        is_on.then(|| f32::from(label.get_pixel(x as u32, y as u32).0[0]))
    }

    fn light(&self, x: f32, y: f32) -> f32 {
        let along = (x + y) / (2.0 * (self.centre.0 + self.centre.1));
        let slope = 1.0 + (self.shot.light - 1.0) * along;
        // The edge of the shadow crosses the middle.
        let beyond = ((x - self.centre.0) * 0.8 - (y - self.centre.1) * 0.6) / 12.0;
        let shadow = self.shot.shadow + (1.0 - self.shot.shadow) * (1.0 / (1.0 + beyond.exp()));
        slope * shadow
    }
}

fn blurred(bright: &[f32], (width, height): (u32, u32), spread: f32) -> Vec<f32> {
    let reach = (3.0 * spread).ceil() as i32;
    let weights: Vec<f32> = (-reach..=reach).map(|at| (-((at * at) as f32) / (2.0 * spread * spread)).exp()).collect();
    let once = turned(&along(bright, width, &weights), width);
    turned(&along(&once, height, &weights), height)
}

fn shaken(bright: &[f32], width: u32, way: f32) -> Vec<f32> {
    let reach = (way / 2.0).round() as usize;
    along(bright, width, &vec![1.0; 2 * reach + 1])
}

/// Every pixel with a share of its neighbours in the row; the edges go on.
fn along(bright: &[f32], width: u32, weights: &[f32]) -> Vec<f32> {
    let (reach, whole) = (weights.len() / 2, weights.iter().sum::<f32>());
    let shared =
        |window: &[f32]| window.iter().zip(weights).map(|(bright, weight)| bright * weight).sum::<f32>() / whole;
    let row = |row: &[f32]| {
        let (first, last) = ([row[0]].repeat(reach), [row[row.len() - 1]].repeat(reach));
        [&first, row, &last].concat().windows(weights.len()).map(shared).collect::<Vec<f32>>()
    };
    bright.chunks_exact(width as usize).flat_map(row).collect()
}

/// Rows become columns.
fn turned(bright: &[f32], width: u32) -> Vec<f32> {
    let width = width as usize;
    (0..width).flat_map(|x| bright.iter().skip(x).step_by(width).copied()).collect()
}
