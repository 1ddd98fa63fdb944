//! A journal of the crankshaft between its two cheeks.

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
use super::wear::{self, Wear};
use std::f32::consts::{FRAC_PI_2, PI};

/// A part of a journal's running face, along its length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JournalZone {
    /// The third on the left of the picture.
    Front,
    /// The middle third, around the oil hole.
    Middle,
    /// The third on the right of the picture.
    Rear,
    /// The whole length.
    Whole,
}

impl JournalZone {
    /// Every zone.
    pub const ALL: [JournalZone; 4] = [JournalZone::Front, JournalZone::Middle, JournalZone::Rear, JournalZone::Whole];

    pub(super) fn outline(self, size: Spot) -> Outline {
        let v = match self {
            JournalZone::Front => (0.03, 0.36),
            JournalZone::Middle => (0.33, 0.67),
            JournalZone::Rear => (0.64, 0.97),
            JournalZone::Whole => (0.04, 0.96),
        };
        Outline::share(size, (0.10, 0.90), v)
    }
}

const RADIUS: f32 = 28.0;
const WIDTH: f32 = 34.0;
const FILLET: f32 = 2.6;
/// Thickness of the cheeks, and height of the axis above the bench.
const CHEEK: f32 = 20.0;
const AXIS: f32 = 74.0;

const SKIN: usize = 1;
const FLAT: usize = 2;
const ROUND: usize = 3;

pub(super) fn scene(wear: &[Wear<JournalZone>], size: (u32, u32), seed: &Seed) -> Scene {
    let layout = &mut seed.branch(1);
    let finish = &mut seed.branch(2);
    let above = layout.between(32.0, 50.0);
    let facing = above.to_radians();
    let stance = Stance {
        target: v3(
            layout.between(-2.5, 2.5),
            -RADIUS * 0.7 * facing.cos(),
            AXIS + RADIUS * 0.7 * facing.sin() + layout.between(-3.0, 2.0),
        ),
        round: layout.between(-20.0, 20.0),
        above,
        roll: layout.between(-7.0, 7.0),
        distance: layout.between(190.0, 240.0),
        span: layout.between(58.0, 66.0),
    };
    let setting = Setting::new(Bench::new(layout), stance, size, layout);
    let mut face = Sheet::new(
        spot(PI * RADIUS, WIDTH),
        15.0,
        Grain::AlongU,
        0.60,
        metal::ground(finish, Grain::AlongU, Spot::default(), 0.68),
    );
    shade(&mut face);
    wear::paint(&mut face, wear, |zone, size| zone.outline(size), seed);
    let hole_at = spot(face.size.u * layout.between(0.42, 0.62), WIDTH * 0.5);
    face.stamp(hole_at, 6.0, |du, dv, t| metal::hole(du, dv, 3.0, t));
    let skin = metal::skin(finish, v3(0.13, 0.122, 0.115), 0.22);
    let skin = Sheet::new(spot(200.0, CHEEK), 5.0, Grain::None, 0.0, skin);
    let middle = spot(80.0, 80.0);
    let flat = metal::ground(finish, Grain::Round, middle, 0.42);
    let flat = Sheet::new(spot(160.0, 160.0), 4.0, Grain::Round, 0.4, move |s| {
        let mut t = flat(s);
        let r = super::field::distance(s, middle);
        // Only the thrust ring next to the journal is machined bright.
        t.tint(v3(0.22, 0.21, 0.20), 0.22, step(RADIUS + 8.0, RADIUS + 8.6, r) * 0.85);
        t
    });
    let round = metal::ground(finish, Grain::AlongU, Spot::default(), 0.60);
    let mut round = Sheet::new(spot(PI * RADIUS, FILLET * FRAC_PI_2), 10.0, Grain::AlongU, 0.5, round);
    round.paint(Spot::default(), round.size, |_, t| t.open *= 0.72);
    setting.with(mesh(facing), vec![face, skin, flat, round], Hollow::Open)
}

/// The cheeks keep some light from the ends of the journal.
fn shade(sheet: &mut Sheet) {
    sheet.paint(Spot::default(), sheet.size, |s, t| {
        let to_cheek = s.v.min(WIDTH - s.v);
        t.open *= 1.0 - 0.30 * step(6.0, 0.0, to_cheek);
    });
}

fn around(x: f32, angle: f32, radius: f32) -> V3 {
    v3(x, -radius * angle.cos(), AXIS + radius * angle.sin())
}

fn mesh(facing: f32) -> Mesh {
    let mut mesh = Mesh::default();
    let away = Outside::AwayFromViewer;
    let whole = (Spot::default(), spot(PI * RADIUS, WIDTH));
    // The sheet covers the half that faces the camera; a little more closes the silhouette.
    let angle = |u: f32| facing - FRAC_PI_2 * 1.06 + u / RADIUS * 1.06;
    mesh.patch(FACE, whole, (140, 6), away, |s| around(s.v - WIDTH / 2.0, angle(s.u), RADIUS));
    let end = WIDTH / 2.0;
    for sign in [-1.0, 1.0] {
        let side = if sign > 0.0 { away } else { Outside::TowardsViewer };
        mesh.patch(ROUND, (Spot::default(), spot(PI * RADIUS, FILLET * FRAC_PI_2)), (140, 6), side, |s| {
            let (sin, cos) = (s.v / FILLET).sin_cos();
            around(sign * (end + FILLET * sin), angle(s.u), RADIUS + FILLET - FILLET * cos)
        });
        let inside = end + FILLET;
        let (right, up) = (v3(0.0, -sign, 0.0), v3(0.0, 0.0, 1.0));
        let outline = |a: f32| cheek(a);
        mesh.face(FLAT, spot(80.0, 80.0), (v3(sign * inside, 0.0, AXIS), right, up), RADIUS + FILLET, outline);
        let side = if sign > 0.0 { away } else { Outside::TowardsViewer };
        mesh.patch(SKIN, (Spot::default(), spot(200.0, CHEEK)), (120, 2), side, |s| {
            let a = s.u / 200.0 * std::f32::consts::TAU;
            let r = cheek(a);
            v3(sign * (inside + s.v), -r * a.cos(), AXIS + r * a.sin())
        });
    }
    mesh
}

/// The outline of a cheek: a narrow arm above, a counterweight below; symmetrical left and right.
fn cheek(angle: f32) -> f32 {
    46.0 + 24.0 * step(0.25, -0.55, angle.sin()) - 2.0 * angle.cos().abs()
}
