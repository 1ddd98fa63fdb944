//! The shape of a part: triangles, each carrying a place on a flat sheet of surface.

use super::vector::V3;

/// A place on a sheet, in millimetres from its corner.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Spot {
    pub(super) u: f32,
    pub(super) v: f32,
}

#[derive(Clone, Copy, Debug)]
pub(super) struct Vertex {
    pub(super) point: V3,
    pub(super) normal: V3,
    /// The direction in which `u` grows on the sheet.
    pub(super) along: V3,
    pub(super) spot: Spot,
}

#[derive(Clone, Copy, Debug)]
pub(super) struct Triangle {
    pub(super) corners: [Vertex; 3],
    pub(super) sheet: usize,
    /// +1 or -1: whether `v` grows to the left or to the right of `u` seen from outside.
    pub(super) hand: f32,
}

/// Which side of a patch is metal's outside, seen with `u` to the right and `v` upwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Outside {
    TowardsViewer,
    AwayFromViewer,
}

#[derive(Debug, Default)]
pub(super) struct Mesh {
    pub(super) triangles: Vec<Triangle>,
}

impl Mesh {
    /// Covers a rectangle of a sheet (its corner and size in mm) with pieces, bent into shape by `bend`.
    ///
    /// `bend` must also answer a little beyond the rectangle: normals are found by stepping aside.
    pub(super) fn patch(
        &mut self,
        sheet: usize,
        (corner, size): (Spot, Spot),
        cells: (u16, u16),
        outside: Outside,
        bend: impl Fn(Spot) -> V3,
    ) {
        let hand = if outside == Outside::TowardsViewer { 1.0 } else { -1.0 };
        let vertex = |i: u16, j: u16| {
            let spot = Spot {
                u: corner.u + size.u * f32::from(i) / f32::from(cells.0),
                v: corner.v + size.v * f32::from(j) / f32::from(cells.1),
            };
            vertex_at(spot, size, hand, &bend)
        };
        for j in 0..cells.1 {
            for i in 0..cells.0 {
                let (a, b) = (vertex(i, j), vertex(i + 1, j));
                let (c, d) = (vertex(i, j + 1), vertex(i + 1, j + 1));
                for corners in [[a, b, d], [a, d, c]] {
                    self.triangles.push(Triangle { corners, sheet, hand });
                }
            }
        }
    }

    /// Covers a flat face between two outlines around `middle`; the face looks along `right` × `up`.
    ///
    /// The sheet lies on the face undistorted, with `middle` at `centre`.
    pub(super) fn face(
        &mut self,
        sheet: usize,
        centre: Spot,
        (middle, right, up): (V3, V3, V3),
        inner: f32,
        outer: impl Fn(f32) -> f32,
    ) {
        const STEPS: u16 = 120;
        let normal = right.cross(up);
        let vertex = |step: u16, out: bool| {
            let angle = f32::from(step) / f32::from(STEPS) * std::f32::consts::TAU;
            let r = if out { outer(angle) } else { inner };
            let (du, dv) = (r * angle.cos(), r * angle.sin());
            Vertex {
                point: middle + right * du + up * dv,
                normal,
                along: right,
                spot: Spot { u: centre.u + du, v: centre.v + dv },
            }
        };
        for step in 0..STEPS {
            let (a, b) = (vertex(step, false), vertex(step, true));
            let (c, d) = (vertex(step + 1, false), vertex(step + 1, true));
            for corners in [[a, b, d], [a, d, c]] {
                self.triangles.push(Triangle { corners, sheet, hand: 1.0 });
            }
        }
    }
}

fn vertex_at(spot: Spot, size: Spot, hand: f32, bend: &impl Fn(Spot) -> V3) -> Vertex {
    let (du, dv) = (size.u * 1e-3, size.v * 1e-3);
    let by_u = bend(Spot { u: spot.u + du, ..spot }) - bend(Spot { u: spot.u - du, ..spot });
    let by_v = bend(Spot { v: spot.v + dv, ..spot }) - bend(Spot { v: spot.v - dv, ..spot });
    Vertex { point: bend(spot), normal: by_u.unit().cross(by_v.unit()).unit() * hand, along: by_u.unit(), spot }
}
