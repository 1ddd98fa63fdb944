//! What the part lies on: a wooden bench, painted steel, kraft paper, or a rag.

use super::noise::{Noise, Seed};
use super::vector::{V3, grey, mix, step, v3};

#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Top {
    Wood,
    Paint,
    Paper,
    Rag,
    /// Nothing near enough to be seen: darkness below.
    Dark,
}

#[derive(Debug)]
pub(super) struct Bench {
    top: Top,
    turn: (f32, f32),
    shift: (f32, f32),
    broad: Noise,
    fine: Noise,
    stain: Noise,
    tint: f32,
}

/// The bench at one point.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ground {
    pub(super) colour: V3,
    pub(super) gloss: f32,
    /// How far the surface leans along x and y.
    pub(super) slope: (f32, f32),
}

impl Bench {
    pub(super) fn new(seed: &mut Seed) -> Bench {
        let top = match seed.unit() {
            u if u < 0.32 => Top::Wood,
            u if u < 0.62 => Top::Paint,
            u if u < 0.82 => Top::Paper,
            _ => Top::Rag,
        };
        Bench::of(top, seed)
    }

    pub(super) fn of(top: Top, seed: &mut Seed) -> Bench {
        Bench {
            top,
            turn: seed.between(-0.5, 0.5).sin_cos(),
            shift: (seed.between(0.0, 900.0), seed.between(0.0, 900.0)),
            broad: seed.noise(),
            fine: seed.noise(),
            stain: seed.noise(),
            tint: seed.unit(),
        }
    }

    /// The colour of the bench seen from far enough away.
    pub(super) fn average(&self) -> V3 {
        match self.top {
            Top::Wood => v3(0.20, 0.135, 0.08),
            Top::Paint => v3(0.12, 0.135, 0.135),
            Top::Paper => v3(0.27, 0.20, 0.13),
            Top::Rag => v3(0.20, 0.21, 0.25),
            Top::Dark => grey(0.02),
        }
    }

    /// The bench at a point, in mm.
    pub(super) fn at(&self, x: f32, y: f32) -> Ground {
        let (sin, cos) = self.turn;
        let p = (x * cos - y * sin + self.shift.0, x * sin + y * cos + self.shift.1);
        let mut ground = match self.top {
            Top::Wood => self.wood(p),
            Top::Paint => self.paint(p),
            Top::Paper => self.paper(p),
            Top::Rag => self.rag(p),
            Top::Dark => return Ground { colour: grey(0.012), gloss: 0.0, slope: (0.0, 0.0) },
        };
        // Old oil: dark, with a shine of its own on hard tops.
        let oil = step(0.56, 0.72, self.stain.layered(p.0 / 34.0, p.1 / 34.0, 4));
        ground.colour = ground.colour * (1.0 - 0.55 * oil);
        ground.gloss = (ground.gloss + 0.25 * oil * self.shine()).min(1.0);
        ground
    }

    fn shine(&self) -> f32 {
        if self.top == Top::Rag || self.top == Top::Paper { 0.25 } else { 1.0 }
    }

    fn wood(&self, (x, y): (f32, f32)) -> Ground {
        let plank = (y / 88.0).floor();
        let edge = (y / 88.0 - plank - 0.5).abs();
        let gap = step(0.4935, 0.4965, edge);
        let own = self.broad.at(plank * 7.7, 0.5);
        let bend = self.broad.layered(x / 90.0, y / 30.0 + plank * 31.0, 3) * 26.0;
        let ring = self.fine.layered(x / 220.0, (y + bend) / 3.4, 3);
        let fibre = self.fine.layered(x / 17.0, y * 2.2, 2);
        let pore = step(0.70, 0.92, self.broad.at(x / 7.0, y * 3.9));
        let tone = 0.72 + 0.4 * (ring - 0.5) + 0.26 * (fibre - 0.5) + 0.25 * (own - 0.5) - 0.22 * pore;
        let dirt = self.stain.layered(x / 60.0 + 9.0, y / 60.0, 3);
        let warm = v3(0.31, 0.20, 0.11).mix(v3(0.21, 0.165, 0.12), self.tint);
        let colour = warm * (tone * (1.25 - 0.7 * dirt)).max(0.1) * (1.0 - 0.85 * gap);
        Ground { colour, gloss: 0.12, slope: ((fibre - 0.5) * 0.04, (ring - 0.5) * 0.12 + (fibre - 0.5) * 0.16) }
    }

    fn paint(&self, (x, y): (f32, f32)) -> Ground {
        let wave = self.broad.layered(x / 1.6, y / 1.6, 2) - 0.5;
        let wave_y = self.broad.layered(x / 1.6 + 50.0, y / 1.6, 2) - 0.5;
        let worn = self.stain.layered(x / 26.0 + 40.0, y / 26.0, 5);
        let chip = step(0.70, 0.715, worn);
        let scratch = self.scratches(x, y);
        let dirt = self.broad.layered(x / 42.0, y / 42.0, 4);
        let coat = v3(0.13, 0.16, 0.16).mix(v3(0.155, 0.158, 0.17), self.tint);
        let steel = v3(0.085, 0.07, 0.06);
        let mut colour = coat * (1.22 - 0.5 * dirt);
        colour = colour.mix(grey(0.30), 0.35 * scratch);
        colour = colour.mix(steel, chip);
        colour = colour * (1.0 - 0.45 * self.grit(x, y));
        Ground { colour, gloss: 0.42 - 0.25 * dirt, slope: (wave * 0.10, wave_y * 0.10) }
    }

    /// Crumbs of dirt, few and of all sizes.
    fn grit(&self, x: f32, y: f32) -> f32 {
        let crumbs = self.fine.mosaic(x / 3.1, y / 3.1);
        let size = (crumbs.cell * 7.0).fract();
        if crumbs.cell > 0.30 {
            return 0.0;
        }
        step(0.16, 0.05, crumbs.near / (0.25 + size))
    }

    fn scratches(&self, x: f32, y: f32) -> f32 {
        let mut worst: f32 = 0.0;
        for turn in 0..3 {
            let (sin, cos) = (turn as f32 * 1.1 + self.tint * 3.0).sin_cos();
            let (a, b) = (x * cos + y * sin, y * cos - x * sin);
            let line = self.fine.at(a / 45.0, b * 0.9 + turn as f32 * 77.0);
            let thin = step(0.035, 0.0, (line - 0.88).abs());
            worst = worst.max(thin * step(0.5, 0.7, self.broad.at(a / 20.0, b / 20.0)));
        }
        worst
    }

    fn paper(&self, (x, y): (f32, f32)) -> Ground {
        let cloud = self.broad.layered(x / 30.0, y / 30.0, 3);
        let fibre = self.fine.layered(x / 2.6, y / 0.5, 2) * 0.5 + self.fine.layered(y / 2.2, x / 0.45, 2) * 0.5;
        let fleck = self.grit(x * 1.3 + y * 0.5, y * 2.2 - x * 0.4);
        let crease = self.crease(x, y);
        let brown = v3(0.38, 0.265, 0.16).mix(v3(0.33, 0.26, 0.185), self.tint);
        let tone = 0.83 + 0.22 * (cloud - 0.5) + 0.3 * (fibre - 0.5) - 0.28 * fleck;
        Ground { colour: brown * tone, gloss: 0.08, slope: (crease + (fibre - 0.5) * 0.08, crease * 0.6) }
    }

    fn crease(&self, x: f32, y: f32) -> f32 {
        let height = |x: f32, y: f32| {
            let ridge = (self.stain.layered(x / 85.0 + 3.0, y / 85.0, 2) - 0.5).abs();
            step(0.05, 0.0, ridge)
        };
        (height(x + 0.6, y + 0.3) - height(x - 0.6, y - 0.3)) * 0.35
    }

    fn rag(&self, (x, y): (f32, f32)) -> Ground {
        let fold = |x: f32, y: f32| self.broad.layered(x / 42.0, y / 62.0, 2) * 11.0;
        let slope_x = fold(x + 0.8, y) - fold(x - 0.8, y);
        let slope_y = fold(x, y + 0.8) - fold(x, y - 0.8);
        // The weave: threads over and under, a little uneven.
        let (sx, sy) = (x + self.fine.at(x / 9.0, y / 9.0) * 1.5, y + self.fine.at(x / 9.0, y / 9.0 + 70.0) * 1.5);
        let (warp, weft) = ((sx * 5.2).sin(), (sy * 5.2).sin());
        let over = warp * weft;
        let fluff = self.fine.layered(x * 1.4, y * 1.4, 2);
        let cloth = v3(0.30, 0.305, 0.32).mix(v3(0.15, 0.19, 0.27), self.tint);
        let hem = step(0.47, 0.485, (x / 140.0 - (x / 140.0).floor() - 0.5).abs());
        let colour = cloth * (0.78 + 0.13 * over + 0.3 * (fluff - 0.5)).max(0.1) * mix(1.0, 0.72, hem);
        let weave = 0.12;
        Ground {
            colour,
            gloss: 0.0,
            slope: (slope_x / 1.6 + (sx * 5.2).cos() * weft * weave, slope_y / 1.6 + warp * (sy * 5.2).cos() * weave),
        }
    }
}
