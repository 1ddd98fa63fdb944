//! A half shell of a plain bearing, lying on its back or on its edges.

use super::bench::Bench;
use super::camera::Stance;
use super::field::Outline;
use super::hollow::Hollow;
use super::mesh::{Mesh, Outside, Spot};
use super::metal;
use super::noise::Seed;
use super::scene::{Scene, Setting, spot};
use super::sheet::{Grain, Sheet, Texel};
use super::vector::{V3, grey, step, v3};
use super::wear::{self, Wear};
use std::f32::consts::{FRAC_PI_2, PI};

/// Which half of the bearing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Half {
    /// The half with the oil groove and the oil hole.
    Upper,
    /// The plain half, which carries the load.
    Lower,
}

/// A third of a shell's width.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Across {
    /// The third nearest to the camera.
    Front,
    /// The middle third, where the groove of an upper shell runs.
    Middle,
    /// The third farthest from the camera.
    Rear,
}

/// A third of a shell's arc.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Around {
    /// Next to the parting edge on the left of the picture.
    LeftEdge,
    /// The deepest part of the arc.
    Crown,
    /// Next to the parting edge on the right of the picture.
    RightEdge,
}

/// One of the nine fields of a shell's face, or of its back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ShellZone {
    /// Across the width.
    pub across: Across,
    /// Around the arc.
    pub around: Around,
}

impl ShellZone {
    /// All nine fields, front row first.
    pub fn all() -> impl Iterator<Item = ShellZone> {
        [Across::Front, Across::Middle, Across::Rear].into_iter().flat_map(|across| {
            [Around::LeftEdge, Around::Crown, Around::RightEdge]
                .into_iter()
                .map(move |around| ShellZone { across, around })
        })
    }

    pub(super) fn outline(self, size: Spot) -> Outline {
        let u = match self.around {
            Around::LeftEdge => (0.01, 0.33),
            Around::Crown => (0.33, 0.67),
            Around::RightEdge => (0.67, 0.99),
        };
        let v = match self.across {
            Across::Front => (0.02, 0.34),
            Across::Middle => (0.33, 0.67),
            Across::Rear => (0.66, 0.98),
        };
        Outline::share(size, u, v)
    }
}

/// Radius of the running face, thickness of the wall and width, in mm.
const RADIUS: f32 = 28.5;
const WALL: f32 = 2.3;
const WIDTH: f32 = 25.0;
/// Width of the oil groove and radius of the oil hole, which lies within it.
const GROOVE: f32 = 4.8;
const HOLE: f32 = 1.75;

const BACK: usize = 1;
const EDGE: usize = 2;

pub(super) fn scene(half: Half, back: bool, wear: &[Wear<ShellZone>], size: (u32, u32), seed: &Seed) -> Scene {
    let layout = &mut seed.branch(1);
    let finish = &mut seed.branch(2);
    let shape = Shape {
        groove: half == Half::Upper,
        back,
        tilt: if back { 0.0 } else { layout.between(-0.07, 0.07) },
        // The lug that keeps the shell from turning sits at one end, off the middle.
        lug_left: layout.chance(0.5),
        lug_at: if layout.chance(0.5) { 0.27 } else { 0.73 } * WIDTH,
    };
    let stance = Stance {
        target: v3(layout.between(-3.0, 3.0), layout.between(-4.0, 2.0), RADIUS * 0.45),
        round: layout.between(-26.0, 26.0),
        above: if back { layout.between(38.0, 60.0) } else { layout.between(56.0, 74.0) },
        roll: layout.between(-6.0, 6.0),
        distance: layout.between(230.0, 290.0),
        span: layout.between(77.0, 88.0),
    };
    let setting = Setting::new(Bench::new(layout), stance, size, layout);

    // The side that is turned away shows at most a strip; it is drawn coarsely.
    let (inner_detail, outer_detail) = if back { (4.0, 14.0) } else { (15.0, 4.0) };
    let mut inner = running_face(&shape, inner_detail, finish);
    let mut outer = Sheet::new(shape.sheet(RADIUS + WALL), outer_detail, Grain::AlongU, 0.5, metal::shell_back(finish));
    if shape.groove {
        let hole_at = spot(outer.size.u / 2.0, WIDTH / 2.0);
        outer.stamp(hole_at, 4.0, |du, dv, t| metal::hole(du, dv, HOLE, t));
    }
    rim(&mut outer);
    let worn = if back { &mut outer } else { &mut inner };
    wear::paint(worn, wear, |zone, size| zone.outline(size), seed);
    // Holes stay holes whatever was painted over them.
    if shape.groove && !back {
        open_hole(&mut inner);
    }
    let edge = edge(finish);
    let (face, other) = if back { (outer, inner) } else { (inner, outer) };
    setting.with(shape.mesh(), vec![face, other, edge], shape.hollow())
}

fn running_face(shape: &Shape, detail: f32, seed: &mut Seed) -> Sheet {
    let mut sheet = Sheet::new(shape.sheet(RADIUS), detail, Grain::AlongU, 0.62, metal::overlay(seed));
    sheet.lined = true;
    let size = sheet.size;
    if shape.groove {
        sheet.paint(spot(0.0, (WIDTH - GROOVE) / 2.0 - 0.6), spot(size.u, (WIDTH + GROOVE) / 2.0 + 0.6), |s, t| {
            let off = (s.v - WIDTH / 2.0).abs() / (GROOVE / 2.0);
            t.open *= 1.0 - 0.42 * step(1.0, 0.75, off);
            t.tint(grey(0.60), 0.6, 0.7 * step(0.13, 0.0, (off - 1.06).abs()));
        });
        open_hole(&mut sheet);
    }
    // Pressing the lug out of the wall leaves a dent in the face.
    let (middle, long) = (spot(if shape.lug_left { 0.0 } else { size.u }, shape.lug_at), 4.6);
    sheet.stamp(middle, 6.0, |du, dv, t| {
        let inside = step(3.3, 2.2, dv.abs()) * step(long, long - 2.0, du.abs());
        t.height -= 0.6 * inside;
        t.tint(v3(0.40, 0.38, 0.35), 0.4, inside * 0.6);
        t.open *= 1.0 - 0.35 * inside;
    });
    rim(&mut sheet);
    sheet
}

fn open_hole(sheet: &mut Sheet) {
    let at = spot(sheet.size.u / 2.0, WIDTH / 2.0);
    sheet.stamp(at, 4.0, |du, dv, t| metal::hole(du, dv, HOLE, t));
}

/// The bevels along the rims, which shine on every shell.
fn rim(sheet: &mut Sheet) {
    let size = sheet.size;
    sheet.paint(spot(0.0, 0.0), size, |s, t| {
        let to_rim = s.v.min(size.v - s.v);
        let to_end = s.u.min(size.u - s.u);
        let bevel = step(0.75, 0.45, to_rim).max(step(0.45, 0.25, to_end));
        if bevel > 0.0 {
            t.tint(grey(0.56), 0.62, bevel * 0.8);
            t.height -= (0.75 - to_rim.min(to_end)).max(0.0) * 0.5;
        }
    });
}

/// The cut through the wall: steel, with the thin line of the lining on its inner side.
fn edge(seed: &mut Seed) -> Sheet {
    let steel = metal::ground(seed, Grain::AlongU, Spot::default(), 0.45);
    Sheet::new(spot(PI * RADIUS, WALL), 12.0, Grain::AlongU, 0.4, move |s| {
        let mut t: Texel = steel(s);
        t.tint(v3(0.48, 0.33, 0.22), 0.4, step(0.52, 0.42, s.v) * 0.75);
        t.tint(grey(0.55), 0.5, step(0.12, 0.06, s.v));
        t
    })
}

struct Shape {
    groove: bool,
    back: bool,
    tilt: f32,
    lug_left: bool,
    lug_at: f32,
}

impl Shape {
    fn sheet(&self, radius: f32) -> Spot {
        spot(PI * radius, WIDTH)
    }

    fn axis(&self) -> f32 {
        if self.back { 0.0 } else { RADIUS + WALL }
    }

    fn hollow(&self) -> Hollow {
        if self.back {
            return Hollow::Open;
        }
        Hollow::Trough { axis: self.axis(), radius: RADIUS, half_width: WIDTH / 2.0, tilt: self.tilt.sin_cos() }
    }

    /// A point at a share 0 to 1 of the arc, `v` mm from the front rim.
    fn at(&self, arc: f32, v: f32, radius: f32) -> V3 {
        let angle = arc * PI - FRAC_PI_2 + self.tilt;
        let up = if self.back { 1.0 } else { -1.0 };
        v3(radius * angle.sin(), v - WIDTH / 2.0, self.axis() + up * radius * angle.cos())
    }

    fn inside(&self, v: f32) -> f32 {
        let off = (v - WIDTH / 2.0).abs() / (GROOVE / 2.0);
        let depth = if self.groove { 1.15 * step(1.05, 0.7, off) } else { 0.0 };
        RADIUS + depth
    }

    fn outside(&self, arc: f32, v: f32) -> f32 {
        let to_end = if self.lug_left { arc } else { 1.0 - arc };
        let lug = step(3.0, 2.4, (v - self.lug_at).abs()) * step(0.034, 0.026, to_end);
        RADIUS + WALL + 1.5 * lug
    }

    fn mesh(&self) -> Mesh {
        let mut mesh = Mesh::default();
        let (inner, outer) = if self.back { (BACK, 0) } else { (0, BACK) };
        let (towards, away) = (Outside::TowardsViewer, Outside::AwayFromViewer);
        let (inwards, outwards) = if self.back { (away, towards) } else { (towards, away) };
        let whole = |radius: f32| (Spot::default(), self.sheet(radius));
        let rows = if self.groove { 60 } else { 12 };
        mesh.patch(inner, whole(RADIUS), (110, rows), inwards, |s| self.at(s.u / (PI * RADIUS), s.v, self.inside(s.v)));
        mesh.patch(outer, whole(RADIUS + WALL), (110, 40), outwards, |s| {
            let arc = s.u / (PI * (RADIUS + WALL));
            self.at(arc, s.v, self.outside(arc, s.v))
        });
        let end = (Spot::default(), spot(PI * RADIUS, WALL));
        mesh.patch(EDGE, end, (110, 1), outwards, |s| self.at(s.u / (PI * RADIUS), 0.0, RADIUS + s.v));
        mesh.patch(EDGE, end, (110, 1), inwards, |s| self.at(s.u / (PI * RADIUS), WIDTH, RADIUS + s.v));
        for (arc, side) in [(0.0, inwards), (1.0, outwards)] {
            mesh.patch(EDGE, (Spot::default(), spot(WIDTH, WALL)), (60, 1), side, |s| {
                let (from, to) = (self.inside(s.u), self.outside(arc, s.u));
                self.at(arc, s.u, from + (to - from) * s.v / WALL)
            });
        }
        mesh
    }
}
