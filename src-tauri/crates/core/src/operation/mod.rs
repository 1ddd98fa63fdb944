//! What is really done, and by whom: between a decision about a part and a list stands an operation, one thing done to the
//! parts of one kind on a piece that is carried as one. Each has a file with its row of the table: what brings it, when its
//! turn comes, who usually does it.

mod bore;
mod bush;
mod carried;
mod clean;
mod crack_test;
mod dress;
mod face;
mod fit;
mod galleries;
mod grind;
mod hone;
mod line_bore;
mod one;
mod polish;
mod ream;
mod rebuild;
mod regrind;
mod resize;
mod row;
mod sleeve;
mod straighten;
mod trip;
mod wash;
mod weigh;
mod weld_up;

pub use carried::{goes_along, must_not, packed};
pub use one::{Operation, piece_of};
pub use row::Stage;

use crate::decide::Decision;
use crate::engine::Engine;
use crate::sizing::{Measured, ReadBack};
use one::operation;
use row::{Row, Scene};

/// Every row. Within a piece the stage orders them, and where that is equal this table.
const ALL: [&Row; 21] = [
    &crack_test::ROW,
    &wash::ROW,
    &straighten::ROW,
    &dress::ROW,
    &line_bore::ROW,
    &grind::ROW,
    &bore::ROW,
    &sleeve::ROW,
    &ream::ROW,
    &bush::ROW,
    &resize::ROW,
    &face::ROW,
    &regrind::ROW,
    &weld_up::ROW,
    &polish::ROW,
    &hone::ROW,
    &galleries::ROW,
    &fit::ROW,
    &weigh::ROW,
    &rebuild::ROW,
    &clean::ROW,
];

/// What is done to an engine, in the order of the pieces and on each in the order of the work.
pub(crate) fn operations(
    engine: &Engine,
    measured: &Measured<'_>,
    read_back: &[ReadBack],
    decisions: &[Decision],
) -> Vec<Operation> {
    let scene = Scene::new(engine, measured, read_back, decisions);
    // Before anything was looked at or measured there is nothing to be done yet.
    if !scene.job().is_begun() {
        return vec![];
    }
    let mut all: Vec<Operation> = Vec::new();
    for row in ALL {
        all.extend((row.brought)(&scene).into_iter().map(|brought| operation(&scene, row, brought)));
    }
    all.sort_by_key(|own| (own.piece, own.stage));
    trip::hold(&scene, &mut all);
    all
}
