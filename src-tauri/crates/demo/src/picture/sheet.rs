//! A part's surface, unrolled flat: the canvas on which finish and wear are painted, in millimetres.

use super::mesh::Spot;
use super::rows::each_row;
use super::vector::{V3, grey};

/// One point of metal.
#[derive(Clone, Copy, Debug)]
pub(super) struct Texel {
    pub(super) colour: V3,
    /// 0 scatters light like chalk, 1 mirrors it.
    pub(super) gloss: f32,
    /// Height in mm above the new surface; negative where metal is missing.
    pub(super) height: f32,
    /// The share of light that reaches the point: less than 1 in pits, holes and grooves.
    pub(super) open: f32,
    slope: (f32, f32),
}

/// A direction over a sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Grain {
    AlongU,
    AlongV,
    /// Circles around the middle of the sheet, as left by a lathe on an end face.
    Round,
    /// No direction: cast, painted, broken.
    None,
}

#[derive(Debug)]
pub(super) struct Sheet {
    pub(super) size: Spot,
    /// The direction of the finish: glints stretch across it.
    pub(super) grain: Grain,
    /// The direction in which the surface slides: scratches follow it.
    pub(super) travel: Grain,
    /// 0 shines the same along and across the grain; towards 1 the glint stretches across it.
    pub(super) brushed: f32,
    /// A bearing lining: below the grey running layer lies a copper alloy.
    pub(super) lined: bool,
    texels_per_mm: f32,
    columns: usize,
    rows: usize,
    texels: Vec<Texel>,
}

impl Texel {
    pub(super) fn new(colour: V3, gloss: f32) -> Texel {
        Texel { colour, gloss, height: 0.0, open: 1.0, slope: (0.0, 0.0) }
    }

    /// Blends in another metal, keeping the height.
    pub(super) fn tint(&mut self, colour: V3, gloss: f32, share: f32) {
        self.colour = self.colour.mix(colour, share);
        self.gloss += (gloss - self.gloss) * share;
    }

    /// How far the surface leans along `u` and `v`, rise over run.
    pub(super) fn slope(&self) -> (f32, f32) {
        self.slope
    }
}

impl Sheet {
    /// A sheet whose every point is made by `metal`.
    pub(super) fn new(
        size: Spot,
        texels_per_mm: f32,
        grain: Grain,
        brushed: f32,
        metal: impl Fn(Spot) -> Texel + Sync,
    ) -> Sheet {
        let columns = (size.u * texels_per_mm).ceil().max(2.0) as usize;
        let rows = (size.v * texels_per_mm).ceil().max(2.0) as usize;
        let blank = Texel::new(grey(0.5), 0.5);
        let texels = vec![blank; columns * rows];
        let mut sheet =
            Sheet { size, grain, travel: grain, brushed, lined: false, texels_per_mm, columns, rows, texels };
        each_row(&mut sheet.texels, columns, |j, line| {
            for (i, texel) in line.iter_mut().enumerate() {
                *texel = metal(centre(i, j, texels_per_mm));
            }
        });
        sheet
    }

    /// Visits every texel of a rectangle, from one corner to the opposite one.
    pub(super) fn paint(&mut self, from: Spot, to: Spot, mut brush: impl FnMut(Spot, &mut Texel)) {
        let scale = self.texels_per_mm;
        let span = |a: f32, b: f32, limit: usize| {
            let start = ((a * scale).floor().max(0.0) as usize).min(limit);
            let end = ((b * scale).ceil().max(0.0) as usize).min(limit);
            (start, end.saturating_sub(start))
        };
        let (row, rows) = span(from.v, to.v, self.rows);
        let (column, columns) = span(from.u, to.u, self.columns);
        let lines = self.texels.chunks_exact_mut(self.columns).enumerate();
        for (j, line) in lines.skip(row).take(rows) {
            for (i, texel) in line.iter_mut().enumerate().skip(column).take(columns) {
                brush(centre(i, j, scale), texel);
            }
        }
    }

    /// Visits the square around a spot; the brush gets the distance from the spot in mm.
    pub(super) fn stamp(&mut self, at: Spot, radius: f32, mut brush: impl FnMut(f32, f32, &mut Texel)) {
        let from = Spot { u: at.u - radius, v: at.v - radius };
        let to = Spot { u: at.u + radius, v: at.v + radius };
        self.paint(from, to, |spot, texel| brush(spot.u - at.u, spot.v - at.v, texel));
    }

    /// Visits a strip along the travel, centred on a spot; the brush gets the distance from the spot along the
    /// travel (from minus to plus half the length) and across it, in mm.
    pub(super) fn streak(
        &mut self,
        at: Spot,
        length: f32,
        half_width: f32,
        mut brush: impl FnMut(f32, f32, &mut Texel),
    ) {
        let half = length / 2.0;
        match self.travel {
            Grain::AlongU | Grain::None => {
                let from = Spot { u: at.u - half, v: at.v - half_width };
                let to = Spot { u: at.u + half, v: at.v + half_width };
                self.paint(from, to, |s, texel| brush(s.u - at.u, s.v - at.v, texel));
            }
            Grain::AlongV => {
                let from = Spot { u: at.u - half_width, v: at.v - half };
                let to = Spot { u: at.u + half_width, v: at.v + half };
                self.paint(from, to, |s, texel| brush(s.v - at.v, s.u - at.u, texel));
            }
            Grain::Round => self.arc(at, half, half_width, brush),
        }
    }

    fn arc(&mut self, at: Spot, half: f32, half_width: f32, mut brush: impl FnMut(f32, f32, &mut Texel)) {
        let middle = Spot { u: self.size.u / 2.0, v: self.size.v / 2.0 };
        let polar = |s: Spot| {
            let (du, dv) = (s.u - middle.u, s.v - middle.v);
            ((du * du + dv * dv).sqrt(), dv.atan2(du))
        };
        let (radius, angle) = polar(at);
        let reach = radius + half_width;
        let from = Spot { u: middle.u - reach, v: middle.v - reach };
        let to = Spot { u: middle.u + reach, v: middle.v + reach };
        self.paint(from, to, |s, texel| {
            let (du, dv) = (s.u - middle.u, s.v - middle.v);
            let square = du * du + dv * dv;
            let (least, most) = ((radius - half_width).max(0.0), radius + half_width);
            // Most of the square is off the circle; leave before the costly angle.
            if square < least * least || square > most * most {
                return;
            }
            let (r, a) = polar(s);
            let mut turn = a - angle;
            if turn > std::f32::consts::PI {
                turn -= std::f32::consts::TAU;
            } else if turn < -std::f32::consts::PI {
                turn += std::f32::consts::TAU;
            }
            let along = turn * radius;
            if along.abs() <= half {
                brush(along, r - radius, texel);
            }
        });
    }

    /// The direction of the grain at a spot, as a unit step in `u` and `v`.
    pub(super) fn grain_at(&self, spot: Spot) -> (f32, f32) {
        match self.grain {
            Grain::AlongU | Grain::None => (1.0, 0.0),
            Grain::AlongV => (0.0, 1.0),
            Grain::Round => {
                let (du, dv) = (spot.u - self.size.u / 2.0, spot.v - self.size.v / 2.0);
                let length = (du * du + dv * dv).sqrt().max(1e-4);
                (-dv / length, du / length)
            }
        }
    }

    /// The size of one texel in mm.
    pub(super) fn pitch(&self) -> f32 {
        1.0 / self.texels_per_mm
    }

    /// Works out the slopes once all painting is done.
    pub(super) fn settle(&mut self) {
        let heights: Vec<f32> = self.texels.iter().map(|t| t.height).collect();
        let (columns, rows) = (self.columns, self.rows);
        let height = |i: usize, j: usize| {
            let index = j.min(rows - 1) * columns + i.min(columns - 1);
            heights.get(index).copied().unwrap_or(0.0)
        };
        let half = self.texels_per_mm / 2.0;
        for (index, texel) in self.texels.iter_mut().enumerate() {
            let (i, j) = (index % columns, index / columns);
            texel.slope = (
                (height(i + 1, j) - height(i.saturating_sub(1), j)) * half,
                (height(i, j + 1) - height(i, j.saturating_sub(1))) * half,
            );
        }
    }

    /// The surface at a spot, blended from the four texels around it.
    pub(super) fn sample(&self, spot: Spot) -> Texel {
        let x = (spot.u * self.texels_per_mm - 0.5).clamp(0.0, (self.columns - 1) as f32);
        let y = (spot.v * self.texels_per_mm - 0.5).clamp(0.0, (self.rows - 1) as f32);
        let (i, j) = (x as usize, y as usize);
        let (tx, ty) = (x - i as f32, y - j as f32);
        let corner = |di: usize, dj: usize| {
            let index = (j + dj).min(self.rows - 1) * self.columns + (i + di).min(self.columns - 1);
            self.texels.get(index).copied().unwrap_or(Texel::new(grey(0.5), 0.5))
        };
        let top = blend(corner(0, 0), corner(1, 0), tx);
        let bottom = blend(corner(0, 1), corner(1, 1), tx);
        blend(top, bottom, ty)
    }
}

/// The middle of a texel, in mm.
fn centre(column: usize, row: usize, texels_per_mm: f32) -> Spot {
    Spot { u: (column as f32 + 0.5) / texels_per_mm, v: (row as f32 + 0.5) / texels_per_mm }
}

fn blend(a: Texel, b: Texel, t: f32) -> Texel {
    let mix = |x: f32, y: f32| x + (y - x) * t;
    Texel {
        colour: a.colour.mix(b.colour, t),
        gloss: mix(a.gloss, b.gloss),
        height: mix(a.height, b.height),
        open: mix(a.open, b.open),
        slope: (mix(a.slope.0, b.slope.0), mix(a.slope.1, b.slope.1)),
    }
}
