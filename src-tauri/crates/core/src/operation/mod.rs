//! What is really done, and by whom: between a decision about a part and a list stands an operation, one thing done to the
//! parts of one kind on a piece that is carried as one. Each has a file with its row of the table: what brings it, when its
//! turn comes, who usually does it.

mod balance;
mod bore;
mod bush;
mod carried;
mod clean;
mod come;
mod crack_test;
mod dress;
mod face;
mod fit;
mod galleries;
mod grind;
mod hone;
mod line_bore;
mod liner;
mod one;
mod plugs;
mod polish;
mod protrusion;
mod ream;
mod rebuild;
mod regrind;
mod resize;
mod rod_bolts;
mod row;
mod sleeve;
mod straighten;
#[cfg(test)]
mod testing;
mod trip;
mod wash;
mod weigh;
mod weld_up;

pub use carried::{goes_along, must_not, packed};
pub(crate) use come::has_come;
pub use one::{Operation, piece_of};
pub use row::Stage;

use crate::decide::Decision;
use crate::engine::Engine;
use crate::sizing::{Measured, ReadBack};
use one::operation;
use row::{Row, Scene};

/// Every row. Within a piece the stage orders them, and where that is equal this table.
const ALL: [&Row; 26] = [
    &crack_test::ROW,
    &wash::ROW,
    &straighten::ROW,
    &dress::ROW,
    &line_bore::ROW,
    &rod_bolts::ROW,
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
    &balance::ROW,
    &hone::ROW,
    &galleries::ROW,
    &liner::ROW,
    &fit::ROW,
    &plugs::ROW,
    &weigh::ROW,
    &protrusion::ROW,
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
