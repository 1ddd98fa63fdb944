//! A piston lying on its side, skirt and ring grooves towards the camera.

use super::bench::Bench;
use super::camera::Stance;
use super::field::Outline;
use super::hollow::Hollow;
use super::mesh::{Mesh, Outside, Spot};
use super::metal;
use super::noise::Seed;
use super::scene::{FACE, Scene, Setting, spot};
use super::sheet::{Grain, Sheet, Texel};
use super::vector::{V3, grey, step, v3};
use super::wear::{self, Wear};
use std::f32::consts::{FRAC_PI_2, PI};

/// A part of a piston's side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PistonZone {
    /// The lands between crown and skirt, with the ring grooves.
    Lands,
    /// The skirt below the oil ring.
    SkirtTop,
    /// The middle of the skirt.
    SkirtMiddle,
    /// The open end of the skirt.
    SkirtFoot,
    /// The whole skirt.
    Skirt,
}

impl PistonZone {
    /// Every zone.
    pub const ALL: [PistonZone; 5] =
        [PistonZone::Lands, PistonZone::SkirtTop, PistonZone::SkirtMiddle, PistonZone::SkirtFoot, PistonZone::Skirt];

    pub(super) fn outline(self, size: Spot) -> Outline {
        let v = match self {
            PistonZone::Lands => (0.02, 0.36),
            PistonZone::SkirtTop => (0.37, 0.58),
            PistonZone::SkirtMiddle => (0.56, 0.80),
            PistonZone::SkirtFoot => (0.78, 0.99),
            PistonZone::Skirt => (0.38, 0.98),
        };
        Outline::share(size, (0.30, 0.70), v)
    }
}

const RADIUS: f32 = 41.0;
const LENGTH: f32 = 74.0;
/// Where the ring grooves begin and end, in mm from the crown.
const GROOVES: [(f32, f32); 3] = [(6.5, 8.4), (13.2, 15.1), (19.4, 23.0)];
const DEPTH: f32 = 3.8;
const PIN: f32 = 11.0;

const WALL: usize = 1;
const CROWN: usize = 2;

pub(super) fn scene(wear: &[Wear<PistonZone>], size: (u32, u32), seed: &Seed) -> Scene {
    let layout = &mut seed.branch(1);
    let finish = &mut seed.branch(2);
    let above = layout.between(46.0, 64.0);
    let facing = above.to_radians();
    let stance = Stance {
        target: v3(layout.between(-3.0, 1.0), -4.0, RADIUS + 10.0),
        round: layout.between(-30.0, 8.0),
        above,
        roll: layout.between(-8.0, 8.0),
        distance: layout.between(300.0, 360.0),
        span: layout.between(116.0, 130.0),
    };
    let setting = Setting::new(Bench::new(layout), stance, size, layout);
    let mut face = face(finish);
    wear::paint(&mut face, wear, |zone, size| zone.outline(size), seed);
    let pin_at = spot(face.size.u * if layout.chance(0.5) { 0.17 } else { 0.83 }, 39.0);
    pin_bore(&mut face, pin_at);
    let walls = metal::ground(finish, Grain::AlongU, Spot::default(), 0.3);
    let walls = Sheet::new(spot(PI * RADIUS * 1.1, 8.0), 6.0, Grain::AlongU, 0.3, move |s| {
        let mut t = walls(s);
        metal::carbon(&mut t, 0.75, 0.3);
        t.open *= 0.30;
        t
    });
    let crown = crown(finish);
    setting.with(mesh(facing), vec![face, walls, crown], Hollow::Open)
}

/// Aluminium with the fine grooves that turning leaves on a skirt; soot towards the crown.
fn face(seed: &mut Seed) -> Sheet {
    let (broad, fine, soot, varnish) = (seed.noise(), seed.noise(), seed.noise(), seed.noise());
    let metal = move |s: Spot| {
        let cloud = broad.layered(s.u / 14.0, s.v / 14.0, 3) - 0.5;
        let line = fine.layered(s.u / 40.0, s.v * 4.0, 2) - 0.5;
        let mut t = Texel::new(v3(0.66, 0.665, 0.67) * (1.0 + 0.10 * cloud + 0.08 * line), 0.46 + 0.10 * cloud);
        t.height = 0.016 * (s.v * 9.0).sin() + 0.01 * line;
        let brown = step(0.48, 0.75, varnish.layered(s.u / 20.0, s.v / 12.0, 4));
        t.tint(v3(0.42, 0.30, 0.18), 0.4, brown * 0.30);
        let crumb = soot.layered(s.u / 1.8, s.v / 1.8, 4);
        let patches = soot.layered(s.u / 9.0, s.v / 6.0, 4);
        let top = step(16.0, 2.0, s.v);
        metal::carbon(&mut t, top * step(0.30, 0.62, patches + 0.35 * top), crumb);
        t
    };
    let mut sheet = Sheet::new(spot(PI * RADIUS, LENGTH), 9.0, Grain::AlongU, 0.35, metal);
    sheet.travel = Grain::AlongV;
    // Edges of the grooves are broken bright; the floors of the grooves are dark.
    sheet.paint(Spot::default(), sheet.size, |s, t| {
        for (from, to) in GROOVES {
            let edge = (s.v - from).abs().min((s.v - to).abs());
            t.tint(grey(0.72), 0.65, 0.55 * step(0.35, 0.1, edge));
            if s.v > from && s.v < to {
                metal::carbon(t, 0.5, 0.4);
                t.open *= 0.25;
            }
        }
    });
    sheet
}

fn pin_bore(sheet: &mut Sheet, at: Spot) {
    sheet.stamp(at, PIN * 1.8, |du, dv, t| {
        // The boss stands back from the skirt.
        let relief = step(PIN * 1.75, PIN * 1.55, (du * du + dv * dv * 0.8).sqrt());
        t.height -= 0.9 * relief;
        t.tint(v3(0.52, 0.52, 0.52), 0.30, relief * 0.8);
        metal::hole(du, dv, PIN, t);
        let r = (du * du + dv * dv).sqrt() / PIN;
        let clip = step(0.05, 0.0, (r - 0.86).abs());
        t.tint(grey(0.5), 0.6, clip * 0.8);
        t.open = t.open.max(clip * 0.5);
    });
}

fn crown(seed: &mut Seed) -> Sheet {
    let base = metal::skin(seed, v3(0.30, 0.29, 0.28), 0.05);
    let soot = seed.noise();
    Sheet::new(spot(RADIUS * 2.0, RADIUS * 2.0), 6.0, Grain::None, 0.0, move |s| {
        let mut t = base(s);
        let patches = soot.layered(s.u / 9.0, s.v / 9.0, 5);
        metal::carbon(&mut t, step(0.25, 0.55, patches), soot.layered(s.u, s.v, 3));
        t
    })
}

fn mesh(facing: f32) -> Mesh {
    let mut mesh = Mesh::default();
    let away = Outside::AwayFromViewer;
    let at = |u: f32, x: f32, radius: f32| {
        let angle = facing - FRAC_PI_2 * 1.15 + u / RADIUS * 1.15;
        point(x - LENGTH / 2.0, angle, radius)
    };
    let full = PI * RADIUS;
    let mut from = 0.0;
    for (start, end) in GROOVES.into_iter().chain([(LENGTH, LENGTH)]) {
        // Lands are turned a little smaller than the skirt.
        let radius = if from > 20.0 { RADIUS } else { RADIUS - 0.35 };
        mesh.patch(FACE, (spot(0.0, from), spot(full, start - from)), (130, 8), away, |s| {
            let bevel = 0.8 * step(1.0, 0.0, s.v) + 0.5 * step(LENGTH - 0.9, LENGTH, s.v);
            at(s.u, s.v, radius - bevel)
        });
        if end > start {
            mesh.patch(FACE, (spot(0.0, start), spot(full, end - start)), (130, 1), away, |s| {
                at(s.u, s.v, radius - DEPTH)
            });
            for (x, side) in [(start, Outside::TowardsViewer), (end, away)] {
                mesh.patch(WALL, (Spot::default(), spot(full, DEPTH)), (130, 1), side, |s| {
                    at(s.u, x, radius - DEPTH + s.v)
                });
            }
        }
        from = end;
    }
    let (right, up) = (v3(0.0, -1.0, 0.0), v3(0.0, 0.0, 1.0));
    let middle = v3(-LENGTH / 2.0, 0.0, RADIUS);
    mesh.face(CROWN, spot(RADIUS, RADIUS), (middle, right, up), 0.0, |_| RADIUS - 0.9);
    mesh
}

fn point(x: f32, angle: f32, radius: f32) -> V3 {
    v3(x, -radius * angle.cos(), RADIUS + radius * angle.sin())
}
