//! A lobe of a camshaft, its nose turned up, seen from the side.

use super::bench::Bench;
use super::camera::Stance;
use super::field::Outline;
use super::hollow::Hollow;
use super::mesh::{Mesh, Outside, Spot};
use super::metal;
use super::noise::Seed;
use super::scene::{FACE, Scene, Setting, spot};
use super::sheet::{Grain, Sheet};
use super::vector::{V3, step, v3};
use super::wear::{self, Kind, Wear};
use std::f32::consts::{PI, TAU};

/// A part of a lobe's running face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LobeZone {
    /// The tip, where the load is greatest.
    Nose,
    /// The flank that faces the camera.
    NearFlank,
    /// The flank on the other side of the nose.
    FarFlank,
    /// The base circle below the near flank, where the valve is shut.
    Heel,
}

impl LobeZone {
    /// Every zone.
    pub const ALL: [LobeZone; 4] = [LobeZone::Nose, LobeZone::NearFlank, LobeZone::FarFlank, LobeZone::Heel];

    pub(super) fn outline(self, size: Spot) -> Outline {
        let u = match self {
            LobeZone::Heel => (0.14, 0.30),
            LobeZone::NearFlank => (0.29, 0.44),
            LobeZone::Nose => (0.41, 0.59),
            LobeZone::FarFlank => (0.56, 0.71),
        };
        Outline::share(size, u, (0.06, 0.94))
    }
}

/// Radius of the base circle, lift and width of the lobe; radius of the shaft between lobes; all in mm.
const BASE: f32 = 15.5;
const LIFT: f32 = 7.5;
const WIDTH: f32 = 15.0;
const SHAFT: f32 = 11.5;
/// Radius by which the sheet's length is measured, and height of the shaft's axis above the bench.
const MEAN: f32 = 17.5;
const AXIS: f32 = 24.0;

const SKIN: usize = 1;
const OTHER: usize = 2;

pub(super) fn scene(wear: &[Wear<LobeZone>], size: (u32, u32), seed: &Seed) -> Scene {
    let layout = &mut seed.branch(1);
    let finish = &mut seed.branch(2);
    let side = if layout.chance(0.5) { 1.0 } else { -1.0 };
    let stance = Stance {
        target: v3(side * layout.between(0.0, 2.0), -3.0, AXIS + 4.0),
        round: side * layout.between(34.0, 50.0),
        above: layout.between(34.0, 48.0),
        roll: layout.between(-6.0, 6.0),
        distance: layout.between(190.0, 240.0),
        span: layout.between(60.0, 72.0),
    };
    let nose = layout.between(58.0, 74.0).to_radians();
    let phases = [nose + layout.between(1.5, 2.6), nose - layout.between(1.6, 2.6)];
    let setting = Setting::new(Bench::new(layout), stance, size, layout);
    let mut face = Sheet::new(
        spot(TAU * MEAN, WIDTH),
        16.0,
        Grain::AlongU,
        0.55,
        metal::ground(finish, Grain::AlongU, Spot::default(), 0.60),
    );
    bevel(&mut face);
    wear::paint(&mut face, wear, |zone, size| zone.outline(size), seed);
    let mut other = Sheet::new(
        spot(TAU * MEAN, WIDTH),
        7.0,
        Grain::AlongU,
        0.55,
        metal::ground(finish, Grain::AlongU, Spot::default(), 0.60),
    );
    bevel(&mut other);
    let skin = Sheet::new(spot(90.0, 90.0), 7.0, Grain::None, 0.0, metal::skin(finish, v3(0.155, 0.148, 0.14), 0.12));

    let mut mesh = Mesh::default();
    let profile = Profile { loss: lost(wear) };
    lobe(&mut mesh, FACE, 0.0, nose, &profile);
    let sound = Profile { loss: 0.0 };
    for (phase, x) in phases.into_iter().zip([-36.0, 36.0]) {
        lobe(&mut mesh, OTHER, x, phase, &sound);
    }
    shaft(&mut mesh);
    setting.with(mesh, vec![face, skin, other], Hollow::Open)
}

/// Millimetres gone from the nose.
fn lost(wear: &[Wear<LobeZone>]) -> f32 {
    wear.iter()
        .filter(|tag| tag.kind == Kind::WornNose)
        .map(|tag| match tag.grade {
            0 | 1 => 0.15,
            2 => 0.6,
            3 => 1.6,
            _ => 3.2,
        })
        .fold(0.0, f32::max)
}

fn bevel(sheet: &mut Sheet) {
    let size = sheet.size;
    sheet.paint(Spot::default(), size, |s, t| {
        let to_rim = s.v.min(size.v - s.v);
        t.height -= (0.5 - to_rim).max(0.0) * 0.7;
    });
}

struct Profile {
    loss: f32,
}

impl Profile {
    /// The radius at an angle from the nose, `v` mm from the lobe's end.
    fn radius(&self, angle: f32, v: f32) -> f32 {
        const HALF: f32 = 1.25;
        let t = (angle / HALF).clamp(-1.0, 1.0);
        let rise = 0.5 + 0.5 * (t * PI).cos();
        // Wear takes the nose; more on one end, since lobes are ground with a slight taper.
        let worn = self.loss * step(0.95, 0.0, t.abs()) * (0.75 + 0.5 * v / WIDTH);
        (BASE + LIFT * rise.powf(0.92) - worn).max(BASE - 0.3)
    }
}

/// A point at a height angle around the shaft: 0 faces the camera's side, a quarter turn is up.
fn around(x: f32, angle: f32, radius: f32) -> V3 {
    v3(x, -radius * angle.cos(), AXIS + radius * angle.sin())
}

fn lobe(mesh: &mut Mesh, sheet: usize, x: f32, nose: f32, profile: &Profile) {
    let whole = (Spot::default(), spot(TAU * MEAN, WIDTH));
    mesh.patch(sheet, whole, (180, 6), Outside::AwayFromViewer, |s| {
        let angle = s.u / MEAN - PI;
        around(x + s.v - WIDTH / 2.0, nose + angle, profile.radius(angle, s.v))
    });
    for (end, sign) in [(-WIDTH / 2.0, -1.0), (WIDTH / 2.0, 1.0)] {
        let middle = v3(x + end, 0.0, AXIS);
        let (right, up) = (v3(0.0, sign, 0.0), v3(0.0, 0.0, 1.0));
        mesh.face(SKIN, spot(45.0, 45.0), (middle, right, up), SHAFT - 1.0, |a| {
            // The face counts its angle from `right`; the profile counts from the nose.
            let around = if sign > 0.0 { PI - a } else { a };
            let off = (around - nose + PI).rem_euclid(TAU) - PI;
            profile.radius(off, end + WIDTH / 2.0)
        });
    }
}

fn shaft(mesh: &mut Mesh) {
    // The sheet is shorter than the shaft is round and long; it repeats unseen at the back.
    for (from, to) in [(-70.0, 0.0), (0.0, 70.0)] {
        mesh.patch(SKIN, (Spot::default(), spot(TAU * SHAFT, to - from)), (72, 4), Outside::AwayFromViewer, |s| {
            around(from + s.v, s.u / SHAFT + 3.0, SHAFT)
        });
    }
}
