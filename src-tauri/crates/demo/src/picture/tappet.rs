//! A flat tappet standing on its head, its foot face towards the camera.

use super::bench::Bench;
use super::camera::Stance;
use super::field::Outline;
use super::hollow::Hollow;
use super::mesh::{Mesh, Outside, Spot};
use super::metal;
use super::noise::Seed;
use super::scene::{FACE, Scene, Setting, spot};
use super::sheet::{Grain, Sheet};
use super::vector::{grey, step, v3};
use super::wear::{self, Wear};
use std::f32::consts::TAU;

/// A part of a tappet's foot face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TappetZone {
    /// The middle of the face.
    Centre,
    /// The ring on which the lobe runs.
    Track,
    /// The outermost ring.
    Rim,
    /// The whole face.
    Whole,
}

impl TappetZone {
    /// Every zone.
    pub const ALL: [TappetZone; 4] = [TappetZone::Centre, TappetZone::Track, TappetZone::Rim, TappetZone::Whole];

    pub(super) fn outline(self, size: Spot) -> Outline {
        let radius = size.u / 2.0;
        let (inner, outer) = match self {
            TappetZone::Centre => (0.0, 0.42),
            TappetZone::Track => (0.30, 0.78),
            TappetZone::Rim => (0.72, 0.97),
            TappetZone::Whole => (0.0, 0.93),
        };
        Outline::Ring { centre: spot(radius, radius), inner: radius * inner, outer: radius * outer }
    }
}

const RADIUS: f32 = 11.2;
const HEIGHT: f32 = 30.0;
const BEVEL: f32 = 0.6;
const SIDE: usize = 1;

pub(super) fn scene(wear: &[Wear<TappetZone>], size: (u32, u32), seed: &Seed) -> Scene {
    let layout = &mut seed.branch(1);
    let finish = &mut seed.branch(2);
    let stance = Stance {
        target: v3(layout.between(-1.5, 1.5), layout.between(-4.0, -1.0), HEIGHT - 6.0),
        round: layout.between(-30.0, 30.0),
        above: layout.between(52.0, 76.0),
        roll: layout.between(-8.0, 8.0),
        distance: layout.between(150.0, 200.0),
        span: layout.between(40.0, 48.0),
    };
    let setting = Setting::new(Bench::new(layout), stance, size, layout);
    let mut foot = foot(finish);
    wear::paint(&mut foot, wear, |zone, size| zone.outline(size), seed);
    setting.with(mesh(), vec![foot, side(finish)], Hollow::Open)
}

fn foot(seed: &mut Seed) -> Sheet {
    let middle = spot(RADIUS, RADIUS);
    let base = metal::ground(seed, Grain::Round, middle, 0.56);
    let mut sheet = Sheet::new(spot(RADIUS * 2.0, RADIUS * 2.0), 30.0, Grain::Round, 0.72, base);
    let lathe = seed.noise();
    sheet.paint(Spot::default(), sheet.size, |s, t| {
        let (du, dv) = (s.u - RADIUS, s.v - RADIUS);
        let r = (du * du + dv * dv).sqrt();
        // The grinding left rings of uneven strength, and a small point in the middle.
        let ring = lathe.layered(r * 2.2, 3.0, 3) - 0.5;
        t.colour = t.colour * (1.0 + 0.20 * ring);
        t.height += 0.02 * ring - 0.03 * step(0.5, 0.2, r);
        t.tint(grey(0.3), 0.3, 0.5 * step(0.45, 0.25, r));
    });
    sheet
}

fn side(seed: &mut Seed) -> Sheet {
    let base = metal::ground(seed, Grain::AlongU, Spot::default(), 0.60);
    let varnish = seed.noise();
    Sheet::new(spot(TAU * RADIUS, HEIGHT), 8.0, Grain::AlongU, 0.5, move |s| {
        let mut t = base(s);
        let brown = step(0.45, 0.75, varnish.layered(s.u / 9.0, s.v / 7.0, 4));
        t.tint(v3(0.30, 0.19, 0.10), 0.4, brown * 0.55);
        // The oil groove around the body.
        let groove = step(1.7, 1.4, (s.v - HEIGHT * 0.55).abs());
        t.open *= 1.0 - 0.6 * groove;
        t.height -= 0.8 * groove;
        t
    })
}

fn mesh() -> Mesh {
    let mut mesh = Mesh::default();
    let around = |s: Spot, radius: f32, z: f32| {
        let angle = s.u / RADIUS;
        v3(radius * angle.cos(), radius * angle.sin(), z)
    };
    let (right, up) = (v3(1.0, 0.0, 0.0), v3(0.0, 1.0, 0.0));
    mesh.face(FACE, spot(RADIUS, RADIUS), (v3(0.0, 0.0, HEIGHT), right, up), 0.0, |_| RADIUS - BEVEL);
    let top = HEIGHT - BEVEL;
    mesh.patch(SIDE, (Spot::default(), spot(TAU * RADIUS, top)), (110, 12), Outside::TowardsViewer, |s| {
        around(s, RADIUS, s.v)
    });
    mesh.patch(SIDE, (spot(0.0, top), spot(TAU * RADIUS, BEVEL)), (110, 3), Outside::TowardsViewer, |s| {
        // A quarter round from the side to the face.
        let turn = ((s.v - top) / BEVEL) * std::f32::consts::FRAC_PI_2;
        around(s, RADIUS - BEVEL + BEVEL * turn.cos(), top + BEVEL * turn.sin())
    });
    mesh
}
