//! A cylinder bore seen from the deck, looking at the far wall.

use super::bench::{Bench, Top};
use super::camera::Stance;
use super::field::{Outline, distance};
use super::hollow::Hollow;
use super::mesh::{Mesh, Outside, Spot};
use super::metal;
use super::noise::Seed;
use super::scene::{FACE, Scene, Setting, spot};
use super::sheet::{Grain, Sheet, Texel};
use super::vector::{grey, step, v3};
use super::wear::{self, Wear};
use std::f32::consts::PI;

/// A height in a cylinder bore.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BoreZone {
    /// Where the top ring turns back.
    Top,
    /// The middle of the stroke.
    Middle,
    /// As deep as can be seen.
    Bottom,
    /// The whole wall.
    Whole,
}

impl BoreZone {
    /// Every zone.
    pub const ALL: [BoreZone; 4] = [BoreZone::Top, BoreZone::Middle, BoreZone::Bottom, BoreZone::Whole];

    pub(super) fn outline(self, size: Spot) -> Outline {
        let v = match self {
            BoreZone::Top => (0.06, 0.28),
            BoreZone::Middle => (0.24, 0.50),
            BoreZone::Bottom => (0.46, 0.74),
            BoreZone::Whole => (0.06, 0.80),
        };
        Outline::share(size, (0.30, 0.70), v)
    }
}

const RADIUS: f32 = 42.0;
const DEPTH: f32 = 120.0;
const BEVEL: f32 = 0.9;
const DECK: f32 = 150.0;

const PLATE: usize = 1;

pub(super) fn scene(wear: &[Wear<BoreZone>], size: (u32, u32), seed: &Seed) -> Scene {
    let layout = &mut seed.branch(1);
    let finish = &mut seed.branch(2);
    let stance = Stance {
        target: v3(layout.between(-3.0, 3.0), RADIUS * 0.9, layout.between(-34.0, -27.0)),
        round: layout.between(-16.0, 16.0),
        above: layout.between(40.0, 50.0),
        roll: layout.between(-8.0, 8.0),
        distance: layout.between(220.0, 260.0),
        span: layout.between(92.0, 106.0),
    };
    let bench = Bench::of(Top::Dark, layout);
    let setting = Setting::new(bench, stance, size, layout);
    let mut wall = wall(finish);
    wear::paint(&mut wall, wear, |zone, size| zone.outline(size), seed);
    setting.with(mesh(), vec![wall, deck(finish)], Hollow::Well { radius: RADIUS })
}

/// Honed iron: two families of fine lines that cross, soot above the turning point of the top ring.
fn wall(seed: &mut Seed) -> Sheet {
    let (one, two, broad, soot) = (seed.noise(), seed.noise(), seed.noise(), seed.noise());
    let (sin, cos) = 0.42f32.sin_cos();
    let hone = move |s: Spot| {
        let (a, b) = (s.u * cos + s.v * sin, s.v * cos - s.u * sin);
        let (c, d) = (s.u * cos - s.v * sin, s.v * cos + s.u * sin);
        let up = one.layered(a / 60.0, b * 4.5, 3);
        let down = two.layered(c / 60.0, d * 4.5, 3);
        let cut = step(0.50, 0.80, up) + step(0.50, 0.80, down);
        let cloud = broad.layered(s.u / 15.0, s.v / 18.0, 4) - 0.5;
        let mut t = Texel::new(v3(0.46, 0.455, 0.45) * (1.0 + 0.16 * cloud - 0.15 * cut), 0.54 + 0.16 * cloud);
        t.height = -0.02 * cut;
        let line = 5.2 + 0.5 * broad.at(s.u / 12.0, 0.3);
        let crumb = soot.layered(s.u / 1.4, s.v / 1.4, 4);
        let above = step(line + 0.5, line - 0.2, s.v);
        metal::carbon(&mut t, above * step(0.2, 0.6, crumb + 0.2), crumb);
        // The ridge that the rings left at the end of their stroke.
        t.tint(grey(0.62), 0.7, 0.6 * step(0.5, 0.0, (s.v - line - 0.5).abs()));
        t
    };
    let mut sheet = Sheet::new(spot(PI * RADIUS, DEPTH), 10.0, Grain::AlongU, 0.25, hone);
    sheet.travel = Grain::AlongV;
    sheet
}

fn deck(seed: &mut Seed) -> Sheet {
    let base = metal::ground(seed, Grain::AlongU, Spot::default(), 0.42);
    let (print, rust) = (seed.noise(), seed.noise());
    let middle = spot(DECK, DECK);
    let mut sheet = Sheet::new(spot(DECK * 2.0, DECK * 2.0), 2.6, Grain::None, 0.0, move |s| {
        let mut t = base(s);
        let r = distance(s, middle) / RADIUS;
        let stain = print.layered(s.u / 12.0, s.v / 12.0, 4);
        // The fire ring of the gasket kept this band clean; around it the gasket has stuck.
        let ring = step(1.22, 1.16, r);
        t.tint(v3(0.17, 0.145, 0.125) * (0.6 + 0.8 * stain), 0.18, (1.0 - ring) * step(0.35, 0.6, stain) * 0.85);
        t.tint(
            v3(0.30, 0.16, 0.08),
            0.1,
            (1.0 - ring) * step(0.58, 0.72, rust.layered(s.u / 10.0, s.v / 10.0, 4)) * 0.6,
        );
        t
    });
    let bolt = seed.between(0.5, 0.9);
    for quarter in 0..4 {
        let angle = bolt + quarter as f32 * PI / 2.0;
        let at = spot(DECK + angle.cos() * RADIUS * 1.42, DECK + angle.sin() * RADIUS * 1.42);
        sheet.stamp(at, 8.0, |du, dv, t| metal::hole(du, dv, 5.5, t));
    }
    sheet
}

fn mesh() -> Mesh {
    let mut mesh = Mesh::default();
    let around = |u: f32, radius: f32, z: f32| {
        // The sheet covers the far half, from right to left.
        let angle = u / RADIUS;
        v3(-radius * angle.cos(), radius * angle.sin(), z)
    };
    let side = Outside::TowardsViewer;
    mesh.patch(FACE, (spot(0.0, BEVEL), spot(PI * RADIUS, DEPTH - BEVEL)), (150, 10), Outside::AwayFromViewer, |s| {
        around(s.u, RADIUS, -s.v)
    });
    let bevel = (Spot::default(), spot(PI * RADIUS * 2.0, BEVEL));
    mesh.patch(PLATE, bevel, (200, 1), side, |s| around(s.u, RADIUS + BEVEL - s.v, -s.v));
    let (right, up) = (v3(1.0, 0.0, 0.0), v3(0.0, 1.0, 0.0));
    mesh.face(PLATE, spot(DECK, DECK), (v3(0.0, 0.0, 0.0), right, up), RADIUS + BEVEL, |_| DECK);
    mesh
}
