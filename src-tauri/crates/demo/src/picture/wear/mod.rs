//! Wear, painted onto a sheet: one file per kind of damage.

mod copper;
mod corrosion;
mod debris;
mod dished;
mod fatigue;
mod fretting;
mod heat;
mod pitting;
mod polish;
mod rust;
mod scoring;
mod scuffing;
mod spalling;
mod wiping;

use super::field::{Field, Outline};
use super::mesh::Spot;
use super::noise::{Noise, Seed};
use super::sheet::Sheet;

/// One tag: what is to be seen, how bad, and where.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wear<Z> {
    /// What is to be seen.
    pub kind: Kind,
    /// 1 (just visible) to 4 (metal gone or moved); other values are taken as the nearest of these.
    pub grade: u8,
    /// Where on the part.
    pub zone: Z,
}

/// The kinds of wear that can be drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Scratches in the direction of movement.
    Scoring,
    /// Foreign particles pressed into the surface, with a burnished ring around each.
    EmbeddedDebris,
    /// Small craters.
    Pitting,
    /// Temper colours from local heat.
    HotSpot,
    /// The bearing's running layer is worn through to the copper alloy below.
    CopperShowing,
    /// Lining metal smeared along the direction of movement.
    Wiping,
    /// A mosaic of fine cracks, later with pieces missing.
    FatigueCracks,
    /// Dull, dark etching.
    Corrosion,
    /// Fretting on the back of a shell: polished spots with brown rims.
    BrightBack,
    /// Iron oxide.
    Rust,
    /// Torn and smeared bands from running dry.
    Scuffing,
    /// Flakes broken out of a hardened face.
    Spalling,
    /// A face worn hollow.
    Dished,
    /// The tip of a cam lobe worn flat.
    WornNose,
    /// Normal wear: an even polish.
    Even,
}

impl Kind {
    /// Every kind, in the order of declaration.
    pub const ALL: [Kind; 15] = [
        Kind::Scoring,
        Kind::EmbeddedDebris,
        Kind::Pitting,
        Kind::HotSpot,
        Kind::CopperShowing,
        Kind::Wiping,
        Kind::FatigueCracks,
        Kind::Corrosion,
        Kind::BrightBack,
        Kind::Rust,
        Kind::Scuffing,
        Kind::Spalling,
        Kind::Dished,
        Kind::WornNose,
        Kind::Even,
    ];
}

/// Paints all tags onto a sheet; `outline` gives the place of a zone on a sheet of a given size.
pub(super) fn paint<Z: Copy>(sheet: &mut Sheet, tags: &[Wear<Z>], outline: impl Fn(Z, Spot) -> Outline, seed: &Seed) {
    let mut marks: Vec<Mark> = Vec::new();
    for tag in tags {
        let mark = Mark { kind: tag.kind, grade: Grade(tag.grade.clamp(1, 4)), outline: outline(tag.zone, sheet.size) };
        mark.join(&mut marks);
    }
    for (number, mark) in marks.iter().enumerate() {
        mark.paint(sheet, &mut seed.branch(mark.kind as u64 * 64 + number as u64 + 1000));
    }
}

/// One patch of wear.
struct Mark {
    kind: Kind,
    grade: Grade,
    outline: Outline,
}

impl Mark {
    /// Adds this mark to the others, as one with a neighbour of the same kind and grade: a patch that covers three
    /// zones has no seams between them.
    fn join(mut self, marks: &mut Vec<Mark>) {
        while let Some((index, outline)) = marks.iter().enumerate().find_map(|(index, other)| {
            let same = other.kind == self.kind && other.grade == self.grade;
            Some((index, same.then(|| other.outline.joined(self.outline))??))
        }) {
            marks.remove(index);
            self.outline = outline;
        }
        marks.push(self);
    }

    fn paint(&self, sheet: &mut Sheet, seed: &mut Seed) {
        let grade = self.grade;
        let field = &Field::new(self.outline, seed);
        match self.kind {
            Kind::Scoring => scoring::paint(sheet, field, grade, seed),
            Kind::EmbeddedDebris => debris::paint(sheet, field, grade, seed),
            Kind::Pitting => pitting::paint(sheet, field, grade, seed),
            Kind::HotSpot => heat::paint(sheet, field, grade, seed),
            Kind::CopperShowing => copper::paint(sheet, field, grade, seed),
            Kind::Wiping => wiping::paint(sheet, field, grade, seed),
            Kind::FatigueCracks => fatigue::paint(sheet, field, grade, seed),
            Kind::Corrosion => corrosion::paint(sheet, field, grade, seed),
            Kind::BrightBack => fretting::paint(sheet, field, grade, seed),
            Kind::Rust => rust::paint(sheet, field, grade, seed),
            Kind::Scuffing => scuffing::paint(sheet, field, grade, seed),
            Kind::Spalling => spalling::paint(sheet, field, grade, seed),
            Kind::Dished => dished::paint(sheet, field, grade, seed),
            Kind::WornNose => polish::worn_nose(sheet, field, grade, seed),
            Kind::Even => polish::even(sheet, field, grade, seed),
        }
    }
}

/// A grade of 1 to 4.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Grade(u8);

impl Grade {
    /// The value that belongs to this grade.
    fn of(self, [one, two, three, four]: [f32; 4]) -> f32 {
        match self.0 {
            1 => one,
            2 => two,
            3 => three,
            _ => four,
        }
    }

    /// A count for a field of 250 mm², scaled to the field at hand.
    fn count(self, per_field: [f32; 4], field: &Field) -> usize {
        (self.of(per_field) * (field.area() / 250.0).clamp(0.15, 6.0)).ceil() as usize
    }
}

/// The outline of a small ragged thing: a grain of dirt, a crater, a flake.
struct Blot {
    noise: Noise,
    radius: f32,
    stretch: f32,
    turn: (f32, f32),
    raggedness: f32,
}

impl Blot {
    fn new(seed: &mut Seed, radius: f32, raggedness: f32) -> Blot {
        Blot {
            noise: seed.noise(),
            radius,
            stretch: seed.between(1.0, 1.5),
            turn: seed.between(0.0, std::f32::consts::TAU).sin_cos(),
            raggedness,
        }
    }

    /// How far out a point lies: less than 1 inside, 1 on the outline, more outside.
    fn off(&self, du: f32, dv: f32) -> f32 {
        let (sin, cos) = self.turn;
        let (x, y) = ((du * cos - dv * sin) / self.stretch, du * sin + dv * cos);
        let r = (x * x + y * y).sqrt().max(1e-4);
        let bump = self.noise.layered(x / r * 1.3 + 5.0, y / r * 1.3, 3) - 0.5;
        r / (self.radius * (1.0 + 1.6 * self.raggedness * bump))
    }
}
