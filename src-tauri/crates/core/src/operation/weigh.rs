//! A new rod or piston among old ones, brought to their weight.

use super::row::{Brought, Row, Scene, Stage};
use crate::engine::PartKind;
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::Weigh,
    done: |_| "weigh all, and match the new to the others",
    stage: Stage::Rebuild,
    hands: Hands::Here,
    is_by_part: false,
    mind: "Where the manual says nothing: rods within 5 g of each other with their bolts, pistons within 2 g.",
    source: "TM 10-3930-653-14&P p. 4-35 (the weights of another engine).",
    brought: |scene| [PartKind::Rod, PartKind::Piston].into_iter().filter_map(|kind| mixed(scene, kind)).collect(),
};

/// All of a kind of which some are renewed and others stay. A whole new set is matched by its maker.
fn mixed(scene: &Scene<'_>, kind: PartKind) -> Option<Brought> {
    let renewed = scene.with(kind, Work::Replace);
    let stay = scene.parts(kind, |own| !matches!(own.outcome, Outcome::Replace | Outcome::CantSay));
    if renewed.is_empty() || stay.is_empty() {
        return None;
    }
    let all = scene.parts(kind, |_| true);
    Some(Brought::new(kind, all, "New and old run together: unequal weights shake the engine.".into()))
}
