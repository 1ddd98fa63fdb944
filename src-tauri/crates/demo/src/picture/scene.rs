//! A part on its bench, ready to be photographed.

use super::bench::Bench;
use super::camera::{Camera, Stance};
use super::film::{Frame, Shot};
use super::hollow::Hollow;
use super::light::{Glint, Light};
use super::mesh::{Mesh, Spot, Triangle};
use super::noise::Seed;
use super::raster::{Raster, meet};
use super::rows::each_row;
use super::shadow::Shadow;
use super::sheet::{Grain, Sheet};
use super::vector::{V3, grey, v3};

/// The sheet that carries the wear is the first of every scene.
pub(super) const FACE: usize = 0;

#[derive(Debug)]
pub(super) struct Scene {
    pub(super) mesh: Mesh,
    pub(super) sheets: Vec<Sheet>,
    pub(super) hollow: Hollow,
    pub(super) bench: Bench,
    pub(super) light: Light,
    pub(super) camera: Camera,
    /// Distance in mm at which the picture is sharp.
    pub(super) focus: f32,
}

/// Everything around the part: chosen anew for every picture.
#[derive(Debug)]
pub(super) struct Setting {
    pub(super) bench: Bench,
    pub(super) light: Light,
    pub(super) camera: Camera,
    pub(super) focus: f32,
}

impl Setting {
    pub(super) fn new(bench: Bench, stance: Stance, size: (u32, u32), seed: &mut Seed) -> Setting {
        Setting {
            light: Light::new(seed, stance.round, bench.average()),
            camera: Camera::new(stance, size.0, size.1),
            focus: stance.distance,
            bench,
        }
    }

    pub(super) fn with(self, mesh: Mesh, sheets: Vec<Sheet>, hollow: Hollow) -> Scene {
        let Setting { bench, light, camera, focus } = self;
        Scene { mesh, sheets, hollow, bench, light, camera, focus }
    }
}

impl Scene {
    /// Exposes a frame of linear light.
    pub(super) fn expose(&mut self, width: u32, height: u32, seed: &mut Seed) -> Frame {
        for sheet in &mut self.sheets {
            sheet.settle();
        }
        let raster = Raster::new(&self.mesh, &self.camera, width, height);
        let shadow = Shadow::new(&self.mesh, &self.light.key, seed);
        let mut frame = Frame::new(width, height, self.focus);
        let scene = &*self;
        each_row(&mut frame.shots, width as usize, |row, shots| {
            let y = row as f32 + 0.5;
            let cells = raster.cells.iter().skip(row * width as usize);
            for (column, (shot, cell)) in shots.iter_mut().zip(cells).enumerate() {
                *shot = scene.shoot(cell.triangle(&scene.mesh), column as f32 + 0.5, y, &shadow);
            }
        });
        frame
    }

    /// The place on the worn face that a pixel shows, if it shows the face at all.
    #[cfg(test)]
    pub(super) fn face_at(&self, raster: &Raster, x: u32, y: u32) -> Option<Spot> {
        let cell = raster.cells.get((y * raster.width + x) as usize)?;
        let triangle = cell.triangle(&self.mesh)?;
        let sight = self.camera.sight(x as f32 + 0.5, y as f32 + 0.5);
        (triangle.sheet == FACE).then(|| meet(triangle, self.camera.eye, sight).spot)
    }

    fn shoot(&self, triangle: Option<&Triangle>, x: f32, y: f32, shadow: &Shadow) -> Shot {
        let sight = self.camera.sight(x, y);
        match triangle.and_then(|t| Some((t, self.sheets.get(t.sheet)?))) {
            Some((triangle, sheet)) => self.shoot_part(triangle, sheet, sight, shadow),
            None => self.shoot_bench(sight, shadow),
        }
    }

    fn shoot_part(&self, triangle: &Triangle, sheet: &Sheet, sight: V3, shadow: &Shadow) -> Shot {
        let place = meet(triangle, self.camera.eye, sight);
        let view = -sight;
        let texel = sheet.sample(place.spot);
        let across = place.normal.cross(place.along) * triangle.hand;
        let (by_u, by_v) = texel.slope();
        let normal = (place.normal - place.along * by_u - across * by_v).unit();
        let (u, v) = sheet.grain_at(place.spot);
        let brushed = if sheet.grain == Grain::None { 0.0 } else { sheet.brushed };
        let grain = place.along * u + across * v;
        let along = (grain - normal * normal.dot(grain)).unit();
        let glint = Glint { point: place.point, normal, along, brushed, texel };
        let mut colour = self.light.on_metal(&glint, view, &self.hollow);
        // Close to the bench the part stands in its own dimness.
        if matches!(self.hollow, Hollow::Open) {
            let near = (1.0 - place.point.z / 14.0).clamp(0.0, 1.0);
            let sky = shadow.at(place.point.x + normal.x * 4.0, place.point.y + normal.y * 4.0).sky;
            colour = colour * (1.0 - 0.55 * near * (1.0 - sky));
        }
        Shot { colour, depth: self.camera.depth(place.point), surface: (triangle.sheet + 1).min(255) as u8 }
    }

    fn shoot_bench(&self, sight: V3, shadow: &Shadow) -> Shot {
        let way = self.camera.eye.z / (-sight.z).max(0.02);
        let point = self.camera.eye + sight * way;
        let ground = self.bench.at(point.x, point.y);
        let reach = shadow.at(point.x, point.y);
        let normal = v3(-ground.slope.0, -ground.slope.1, 1.0).unit();
        let key = self.light.key;
        let sky = Light::gathered(&self.light, point, normal, &Hollow::Open);
        let lit = key.colour * normal.dot(key.direction).max(0.0);
        // Light from the lamp and light from everywhere else are dimmed by different shadows.
        let rest = sky - lit;
        let mut colour = ground.colour * (lit * reach.key + rest * reach.sky);
        if ground.gloss > 0.02 {
            let half = (key.direction - sight).unit();
            let wide = 0.5 - 0.35 * ground.gloss;
            let off = (1.0 - half.dot(normal)).max(0.0) * 2.0;
            let glare = (-off / (wide * wide)).exp() * ground.gloss * 0.35 / wide;
            colour = colour + key.colour * (glare * 0.25 * reach.key) + grey(0.02 * ground.gloss * reach.sky);
        }
        Shot { colour, depth: self.camera.depth(point), surface: 0 }
    }
}

/// Shorthand for a place on a sheet.
pub(super) fn spot(u: f32, v: f32) -> Spot {
    Spot { u, v }
}
