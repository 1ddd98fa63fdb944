//! Which triangle each pixel shows.

use super::camera::{Camera, Seen};
use super::mesh::{Mesh, Spot, Triangle, Vertex};
use super::vector::V3;

/// The nearest triangle per pixel, row by row.
#[derive(Debug)]
pub(super) struct Raster {
    pub(super) width: u32,
    pub(super) cells: Vec<Cell>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Cell {
    depth: f32,
    triangle: u32,
}

const NOTHING: Cell = Cell { depth: f32::MAX, triangle: u32::MAX };

impl Cell {
    pub(super) fn triangle<'a>(&self, mesh: &'a Mesh) -> Option<&'a Triangle> {
        mesh.triangles.get(self.triangle as usize)
    }
}

impl Raster {
    pub(super) fn new(mesh: &Mesh, camera: &Camera, width: u32, height: u32) -> Raster {
        let cells = vec![NOTHING; width as usize * height as usize];
        let mut raster = Raster { width, cells };
        for (index, triangle) in mesh.triangles.iter().enumerate() {
            let seen = triangle.corners.map(|corner| camera.see(corner.point));
            raster.fill(index as u32, seen);
        }
        raster
    }

    fn fill(&mut self, triangle: u32, corners: [Seen; 3]) {
        let width = self.width as usize;
        let height = self.cells.len() / width.max(1);
        let flat = corners.map(|c| (c.x, c.y));
        cover(flat, (width, height), |x, y, share| {
            // One over the depth is what varies evenly over the picture.
            let inverse = share[0] / corners[0].depth + share[1] / corners[1].depth + share[2] / corners[2].depth;
            let depth = 1.0 / inverse;
            if let Some(cell) = self.cells.get_mut(y * width + x)
                && depth < cell.depth
            {
                *cell = Cell { depth, triangle };
            }
        });
    }
}

/// Calls `visit` for every cell whose centre lies in the triangle, with the weights of its corners.
pub(super) fn cover(
    corners: [(f32, f32); 3],
    (width, height): (usize, usize),
    mut visit: impl FnMut(usize, usize, [f32; 3]),
) {
    let [a, b, c] = corners;
    let area = (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0);
    if area.abs() < 1e-9 || !area.is_finite() {
        return;
    }
    let span = |p: f32, q: f32, r: f32, limit: usize| {
        let from = (p.min(q).min(r) - 0.5).ceil().max(0.0) as usize;
        let to = (p.max(q).max(r) - 0.5).floor() + 1.0;
        from..(to.max(0.0) as usize).min(limit)
    };
    for y in span(a.1, b.1, c.1, height) {
        for x in span(a.0, b.0, c.0, width) {
            let (px, py) = (x as f32 + 0.5, y as f32 + 0.5);
            let wb = ((px - a.0) * (c.1 - a.1) - (py - a.1) * (c.0 - a.0)) / area;
            let wc = ((b.0 - a.0) * (py - a.1) - (b.1 - a.1) * (px - a.0)) / area;
            let wa = 1.0 - wb - wc;
            // A hair of overlap closes the seams between neighbouring triangles.
            if wa >= -1e-4 && wb >= -1e-4 && wc >= -1e-4 {
                visit(x, y, [wa, wb, wc]);
            }
        }
    }
}

/// Where a line of sight meets a triangle's plane, with everything blended from the corners.
pub(super) fn meet(triangle: &Triangle, eye: V3, sight: V3) -> Vertex {
    let [a, b, c] = triangle.corners;
    let (ab, ac) = (b.point - a.point, c.point - a.point);
    let across = sight.cross(ac);
    let scale = ab.dot(across);
    let inverse = if scale.abs() < 1e-12 { 0.0 } else { 1.0 / scale };
    let from_a = eye - a.point;
    let wb = (from_a.dot(across) * inverse).clamp(0.0, 1.0);
    let wc = (sight.dot(from_a.cross(ab)) * inverse).clamp(0.0, 1.0);
    let wa = 1.0 - wb - wc;
    let blend = |part: fn(&Vertex) -> V3| part(&a) * wa + part(&b) * wb + part(&c) * wc;
    Vertex {
        point: blend(|v| v.point),
        normal: blend(|v| v.normal).unit(),
        along: blend(|v| v.along).unit(),
        spot: Spot {
            u: a.spot.u * wa + b.spot.u * wb + c.spot.u * wc,
            v: a.spot.v * wa + b.spot.v * wb + c.spot.v * wc,
        },
    }
}
