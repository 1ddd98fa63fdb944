//! Main journals that run out beyond their limit: the shaft is bent.

use super::Measured;
use crate::engine::{Part, PartKind};
use crate::figure::Figure;
use crate::measure::{Conformity, Phase, Quantity};

/// The main journals that run out too far as found, each with the figure.
pub(crate) fn bent_mains<'a>(measured: &'a Measured<'_>) -> Vec<(Part, &'a Figure)> {
    run_outs(measured, |figure| figure.verdict == Some(Conformity::Outside))
}

/// Those of which it can't be said yet.
pub(crate) fn doubtful_mains<'a>(measured: &'a Measured<'_>) -> Vec<(Part, &'a Figure)> {
    run_outs(measured, |figure| figure.verdict == Some(Conformity::TooClose) || figure.is_open())
}

fn run_outs<'a>(measured: &'a Measured<'_>, is: impl Fn(&Figure) -> bool) -> Vec<(Part, &'a Figure)> {
    let mains = measured.readings.engine.parts().iter().filter(|part| part.kind == PartKind::MainJournal);
    let found = |part: &Part| {
        let mut figures = measured.figures(*part, Phase::Found);
        figures.find(|own| own.quantity == Quantity::RunOut && is(own)).map(|figure| (*part, figure))
    };
    mains.filter_map(found).collect()
}
