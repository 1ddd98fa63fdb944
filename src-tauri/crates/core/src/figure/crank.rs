//! Straightness of a shaft from indicator readings.

use super::{Bench, Figure, Value};
use crate::engine::{At, Part, PartKind};
use crate::measure::{Length, Quantity, Spot};
use crate::sheet::Proportions;

/// Bend: half the total indicator reading on V-blocks (TM 10-3930-653-14&P p. 4-37). The run-out is that of the shaft,
/// or the largest of its journals'.
pub(super) fn bend(bench: Bench<'_>, shaft: Part) -> Option<Figure> {
    let readings = bench.readings;
    if shaft.kind == PartKind::Rod || readings.quantity(shaft, Quantity::Bend, bench.phase).next().is_some() {
        return None;
    }
    let run_out = |part: Part| readings.value(part, Quantity::RunOut, bench.phase, None);
    let on_shaft = |part: &&Part| match (shaft.at, part.at) {
        (At::Engine, At::Main(_)) => part.kind == PartKind::MainJournal,
        (At::Camshaft(shaft), At::CamBearing(own, _)) => part.kind == PartKind::CamJournal && shaft == own,
        _ => false,
    };
    let largest =
        || readings.engine.parts().iter().filter(on_shaft).filter_map(|part| run_out(*part)).max_by_key(|v| v.high);
    let whole = run_out(shaft).or_else(largest)?;
    let half = Value::single(whole.high.times(1, 2), whole.uncertainty.times(1, 2), whole.step, Spot::default());
    Some(bench.judge(shaft, Quantity::Bend, "", None, half, Proportions::default()))
}

/// How the high spots of two neighbours stand to each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pair {
    /// On one side: the difference of the run-outs counts.
    SameSide,
    /// At right angles: the sum counts, against the wider limit.
    Square,
    /// Opposite: the sum counts.
    Opposite,
}

/// What two neighbouring run-outs amount to (TM 55-1930-208-24; TM 9-2815-202-34 p. 4-157). The angle is that between
/// the high spots; between the three cases of the rule the nearest holds.
pub fn adjacent_run_outs(first: (Length, u16), second: (Length, u16)) -> (Pair, Length) {
    let apart = first.1.abs_diff(second.1) % 360;
    let apart = apart.min(360 - apart);
    match apart {
        0..45 => (Pair::SameSide, (first.0 - second.0).abs()),
        45..=135 => (Pair::Square, first.0 + second.0),
        _ => (Pair::Opposite, first.0 + second.0),
    }
}

/// The worst pair of neighbouring mains, of those in line or of those at right angles.
pub(super) fn adjacent(bench: Bench<'_>, crankshaft: Part, quantity: Quantity) -> Option<Figure> {
    let readings = bench.readings;
    let journal = |n: u8| {
        let part = Part { kind: PartKind::MainJournal, at: At::Main(n) };
        let standing = readings.quantity(part, Quantity::RunOut, bench.phase).next()?;
        Some((*standing, standing.reading.angle?))
    };
    let square = quantity == Quantity::AdjacentRunOutSquare;
    let pair = |n: u8| {
        let (first, second) = (journal(n)?, journal(n + 1)?);
        let (pair, amount) = adjacent_run_outs((first.0.length, first.1), (second.0.length, second.1));
        let uncertainty = Length::root_sum_square([first.0.uncertainty, second.0.uncertainty]);
        let value = Value::single(amount, uncertainty, first.0.step.max(second.0.step), Spot::default());
        ((pair == Pair::Square) == square).then_some((value, n))
    };
    let mains = readings.engine.arrangement().mains;
    let (value, n) = (1..mains).filter_map(pair).max_by_key(|(value, _)| value.high)?;
    let mut figure = bench.judge(crankshaft, quantity, "", None, value, Proportions::default());
    figure.at = format!("mains {n} and {}", n + 1);
    Some(figure)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn amounts(first: (i64, u16), second: (i64, u16), pair: Pair, amount: i64) {
        let tenths = |(tenths, angle)| (Length::from_nanometres(tenths * 2_540), angle);
        let (kind, sum) = adjacent_run_outs(tenths(first), tenths(second));
        assert_eq!((kind, sum.nanometres() / 2_540), (pair, amount));
    }

    // TM 55-1930-208-24 and TM 9-2815-202-34 p. 4-157: sum at most 0.003 in with high spots opposite, difference at most
    // 0.003 in on one side, sum at most 0.004 in at right angles.
    #[test]
    fn the_angle_rule() {
        amounts((20, 0), (15, 180), Pair::Opposite, 35);
        amounts((20, 10), (15, 350), Pair::SameSide, 5);
        amounts((25, 90), (16, 180), Pair::Square, 41);
        amounts((25, 0), (16, 270), Pair::Square, 41);
    }
}
