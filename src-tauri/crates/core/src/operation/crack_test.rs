//! What is tested for cracks: a crankshaft before money is spent on its journals, and any piece on which a crack is
//! suspected.

use super::row::{Brought, Row, Scene, Stage};
use crate::engine::{Part, PartKind};
use crate::wear::Tag;
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::CrackTest,
    done: |_| "test for cracks",
    stage: Stage::Test,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "A dye or magnetic test with its own chemicals and lamp: as their makers say. Clean it first, demagnetise it after.",
    source: "TM 5-4320-300-14 p. 6-103 (magnetic inspection of a ground shaft); AC 43.13-1B; common practice.",
    brought: |scene| {
        let pieces = [PartKind::Crankshaft, PartKind::Block, PartKind::Rod, PartKind::Camshaft];
        let tested = |kind| suspected(scene, kind).or_else(|| journals(scene).filter(|own| own.kind == kind));
        pieces.into_iter().filter_map(tested).collect()
    },
};

/// A shaft whose journals are ground or polished.
fn journals(scene: &Scene<'_>) -> Option<Brought> {
    let shaft = scene.parts(PartKind::Crankshaft, |own| own.outcome != Outcome::Replace);
    let because = "A shaft whose journals are worked on is tested first: a cracked one is not worth it.";
    (scene.works_on_journals() && !shaft.is_empty()).then(|| Brought::new(PartKind::Crankshaft, shaft, because.into()))
}

/// The pieces of a kind on which, or on a part of which, a crack is suspected and not certain.
fn suspected(scene: &Scene<'_>, kind: PartKind) -> Option<Brought> {
    let arrangement = scene.engine.arrangement();
    let is_of = |part: Part, piece: Part| part == piece || part.comes_with(arrangement) == Some(piece);
    let records = &scene.job().parts;
    let is_suspected = |piece: &Part| {
        let mut of_piece = records.iter().filter(|(part, _)| is_of(**part, *piece));
        of_piece.any(|(_, record)| record.grade(Tag::Cracks).is_some())
    };
    let mut parts = scene.parts(kind, |own| own.outcome != Outcome::Replace);
    parts.retain(is_suspected);
    let because = "A crack is suspected.";
    (!parts.is_empty()).then(|| Brought {
        which: scene.which(kind, &parts),
        settles: true,
        ..Brought::new(kind, parts, because.into())
    })
}
