//! Photographs of worn engine parts, drawn by rule: no camera, no borrowed pictures.
//!
//! A part is a mesh of triangles (`mesh`) whose surface is a flat `sheet` of metal. Finish (`metal`) and
//! `wear` are painted onto the sheet in millimetres; then the scene is lit (`light`), photographed (`camera`,
//! `raster`) and developed (`film`). Every choice comes from one seed: same subject and seed, same bytes.
//!
//! What is *not* done: light is not traced from part to part, and one picture shows one part.

mod bench;
mod bore;
mod camera;
mod field;
mod film;
mod hollow;
mod journal;
mod light;
mod lobe;
mod mesh;
mod metal;
mod noise;
mod piston;
mod raster;
mod rows;
mod scene;
mod shadow;
mod sheet;
mod shell;
mod tappet;
mod vector;
mod wear;

pub use bore::BoreZone;
pub use journal::JournalZone;
pub use lobe::LobeZone;
pub use piston::PistonZone;
pub use shell::{Across, Around, Half, ShellZone};
pub use tappet::TappetZone;
pub use wear::{Kind, Wear};

use image::{ImageError, RgbImage, codecs::jpeg::JpegEncoder};
use noise::Seed;
use scene::Scene;

/// Width of a picture in pixels.
pub const WIDTH: u32 = 1600;
/// Height of a picture in pixels.
pub const HEIGHT: u32 = 1200;
/// The quality at which pictures are encoded, of 100.
const QUALITY: u8 = 85;

/// What the picture shows.
#[derive(Clone, Debug, PartialEq)]
pub enum Subject {
    /// A half shell of a plain bearing.
    Shell {
        /// Upper (with groove and oil hole) or lower.
        half: Half,
        /// Whether it lies face down, so that its back is seen; the wear is then on the back.
        back: bool,
        /// What is to be seen on it.
        wear: Vec<Wear<ShellZone>>,
    },
    /// A journal of the crankshaft.
    Journal {
        /// What is to be seen on it.
        wear: Vec<Wear<JournalZone>>,
    },
    /// The foot face of a flat tappet.
    Tappet {
        /// What is to be seen on it.
        wear: Vec<Wear<TappetZone>>,
    },
    /// A lobe of the camshaft.
    Lobe {
        /// What is to be seen on it.
        wear: Vec<Wear<LobeZone>>,
    },
    /// The side of a piston.
    Piston {
        /// What is to be seen on it.
        wear: Vec<Wear<PistonZone>>,
    },
    /// The wall of a cylinder bore.
    Bore {
        /// What is to be seen on it.
        wear: Vec<Wear<BoreZone>>,
    },
}

/// Draws a subject at the usual size. The seed chooses light, bench, position and the course of every scratch.
pub fn draw(subject: &Subject, seed: u64) -> RgbImage {
    draw_sized(subject, seed, WIDTH, HEIGHT)
}

/// Draws a subject at another size; a side of 0 is taken as 1. The same seed shows the same scene at any size.
pub fn draw_sized(subject: &Subject, seed: u64, width: u32, height: u32) -> RgbImage {
    let size = (width.max(1), height.max(1));
    let seed = Seed::new(seed);
    let mut scene = scene(subject, &seed, size);
    let frame = scene.expose(size.0, size.1, &mut seed.branch(3));
    frame.develop(&mut seed.branch(4))
}

/// Encodes a picture as JPEG.
///
/// # Errors
/// When the encoder refuses the picture: a side longer than 65 535 pixels.
pub fn jpeg(picture: &RgbImage) -> Result<Vec<u8>, ImageError> {
    let mut bytes = Vec::new();
    picture.write_with_encoder(JpegEncoder::new_with_quality(&mut bytes, QUALITY))?;
    Ok(bytes)
}

fn scene(subject: &Subject, seed: &Seed, size: (u32, u32)) -> Scene {
    match subject {
        Subject::Shell { half, back, wear } => shell::scene(*half, *back, wear, size, seed),
        Subject::Journal { wear } => journal::scene(wear, size, seed),
        Subject::Tappet { wear } => tappet::scene(wear, size, seed),
        Subject::Lobe { wear } => lobe::scene(wear, size, seed),
        Subject::Piston { wear } => piston::scene(wear, size, seed),
        Subject::Bore { wear } => bore::scene(wear, size, seed),
    }
}

#[cfg(test)]
mod tests;
