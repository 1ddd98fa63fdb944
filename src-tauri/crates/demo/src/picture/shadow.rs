//! The part's shadow on the bench: from the main lamp, and the general dimness close to the part.

use super::light::Lamp;
use super::mesh::Mesh;
use super::noise::Seed;
use super::raster::cover;
use super::vector::{V3, v3};

/// Cells along each side of the shadow map.
const CELLS: usize = 224;
/// Rays towards the lamp, and towards the sky.
const RAYS: usize = 18;

#[derive(Debug)]
pub(super) struct Shadow {
    corner: (f32, f32),
    cell: f32,
    key: Vec<f32>,
    sky: Vec<f32>,
}

/// The shares of lamp and sky light that reach a point of the bench.
#[derive(Clone, Copy, Debug)]
pub(super) struct Reach {
    pub(super) key: f32,
    pub(super) sky: f32,
}

impl Shadow {
    pub(super) fn new(mesh: &Mesh, lamp: &Lamp, seed: &mut Seed) -> Shadow {
        let points = || mesh.triangles.iter().flat_map(|t| t.corners).map(|c| c.point);
        let reach = points().fold(10.0f32, |r, p| r.max(p.x.abs()).max(p.y.abs()).max(p.z.abs()));
        let side = reach * 4.4;
        let mut shadow =
            Shadow { corner: (-side / 2.0, -side / 2.0), cell: side / CELLS as f32, key: Vec::new(), sky: Vec::new() };
        let towards_lamp: Vec<V3> = (0..RAYS)
            .map(|_| {
                let jitter = v3(seed.between(-1.0, 1.0), seed.between(-1.0, 1.0), seed.between(-1.0, 1.0));
                (lamp.direction + jitter * lamp.spread).unit()
            })
            .collect();
        let towards_sky: Vec<V3> = (0..RAYS)
            .map(|ray| {
                // Spread evenly in azimuth, weighted by the cosine in height.
                let azimuth = (ray as f32 + seed.unit()) / RAYS as f32 * std::f32::consts::TAU;
                let out = (((ray * 7) % RAYS) as f32 + seed.unit()) / RAYS as f32;
                let flat = out.sqrt().min(0.97);
                v3(azimuth.cos() * flat, azimuth.sin() * flat, (1.0 - flat * flat).sqrt())
            })
            .collect();
        shadow.key = shadow.cast(mesh, &towards_lamp);
        shadow.sky = shadow.cast(mesh, &towards_sky);
        shadow
    }

    /// What reaches the bench at a point in mm.
    pub(super) fn at(&self, x: f32, y: f32) -> Reach {
        let (cx, cy) = ((x - self.corner.0) / self.cell - 0.5, (y - self.corner.1) / self.cell - 0.5);
        Reach { key: 1.0 - blended(&self.key, cx, cy), sky: 1.0 - blended(&self.sky, cx, cy) }
    }

    fn cast(&self, mesh: &Mesh, rays: &[V3]) -> Vec<f32> {
        let mut hidden = vec![0.0f32; CELLS * CELLS];
        // The last ray that hit each cell, so that two triangles on one ray count once.
        let mut last = vec![usize::MAX; CELLS * CELLS];
        for (ray, d) in rays.iter().enumerate() {
            for triangle in &mesh.triangles {
                let corners = triangle.corners.map(|c| {
                    let fall = c.point.z.max(0.0) / d.z.max(0.05);
                    (
                        (c.point.x - d.x * fall - self.corner.0) / self.cell,
                        (c.point.y - d.y * fall - self.corner.1) / self.cell,
                    )
                });
                cover(corners, (CELLS, CELLS), |x, y, _| {
                    let index = y * CELLS + x;
                    if let (Some(mark), Some(cell)) = (last.get_mut(index), hidden.get_mut(index))
                        && *mark != ray
                    {
                        *mark = ray;
                        *cell += 1.0 / rays.len() as f32;
                    }
                });
            }
        }
        softened(&softened(&hidden))
    }
}

fn softened(cells: &[f32]) -> Vec<f32> {
    let at = |x: usize, y: usize| cells.get(y.min(CELLS - 1) * CELLS + x.min(CELLS - 1)).copied().unwrap_or(0.0);
    (0..CELLS * CELLS)
        .map(|index| {
            let (x, y) = (index % CELLS, index / CELLS);
            let (left, up) = (x.saturating_sub(1), y.saturating_sub(1));
            let cross = at(left, y) + at(x + 1, y) + at(x, up) + at(x, y + 1);
            at(x, y) * 0.4 + cross * 0.15
        })
        .collect()
}

fn blended(cells: &[f32], x: f32, y: f32) -> f32 {
    if cells.is_empty() || x < 0.0 || y < 0.0 {
        return 0.0;
    }
    let (i, j) = (x as usize, y as usize);
    if i + 1 >= CELLS || j + 1 >= CELLS {
        return 0.0;
    }
    let at = |i: usize, j: usize| cells.get(j * CELLS + i).copied().unwrap_or(0.0);
    let (tx, ty) = (x - i as f32, y - j as f32);
    let top = at(i, j) * (1.0 - tx) + at(i + 1, j) * tx;
    let bottom = at(i, j + 1) * (1.0 - tx) + at(i + 1, j + 1) * tx;
    top * (1.0 - ty) + bottom * ty
}
