//! Figures: what follows from the readings of each part, each with its verdict and the reason for it.

mod bench;
mod clearance;
mod crank;
mod doubt;
mod form;
mod line;
mod lobe;
mod loss;
mod plain;
mod ring;
mod rod;
mod standing;

pub use bench::{Bench, Figure};
pub use crank::{Pair, adjacent_run_outs};
pub use doubt::doubt;
pub use line::line_of_bores;
pub use ring::gap_growth;
pub use standing::{Readings, Sizes, Standing, Value};

use crate::engine::Part;
use crate::measure::Quantity;

/// All figures of a part in one phase, in the order of its table of quantities.
pub fn figures(bench: Bench<'_>, part: Part) -> Vec<Figure> {
    let mut all = Vec::new();
    for has in part.kind.quantities() {
        all.extend(plain::figures(bench, part, has));
        let quantity = has.quantity;
        all.extend(match quantity {
            Quantity::OutOfRound | Quantity::Taper | Quantity::Barrel => form::figure(bench, part, quantity),
            Quantity::Clearance | Quantity::EndClearance | Quantity::SideClearance => {
                clearance::figure(bench, part, quantity)
            }
            Quantity::PinClearance => clearance::pin(bench, part),
            Quantity::Wear => loss::wear(bench, part),
            Quantity::Lift => lobe::lift(bench, part),
            Quantity::HeightLoss => loss::height(bench, part),
            Quantity::LiftLoss => loss::lift(bench, part),
            Quantity::LiftSpread => lobe::spread(bench, part),
            Quantity::GapGrowth => ring::growth(bench, part),
            Quantity::Bend => crank::bend(bench, part),
            Quantity::AdjacentRunOut | Quantity::AdjacentRunOutSquare => crank::adjacent(bench, part, quantity),
            Quantity::LineAdjacent | Quantity::LineOverall => line::figure(bench, part, quantity),
            _ => None,
        });
    }
    all
}
