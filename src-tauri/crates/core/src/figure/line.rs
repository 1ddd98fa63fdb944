//! The line of the main housing bores.

use super::{Bench, Figure, Value};
use crate::engine::{At, Part, PartKind};
use crate::measure::{Direction, Length, Quantity, Spot};
use crate::sheet::Proportions;

/// The greatest step between neighbours and the greatest difference over all, of offsets from one straight reference:
/// the gap of feelers under a straightedge, or the offset by a bar. A bore that was not measured is passed over.
pub fn line_of_bores(offsets: &[Option<Length>]) -> Option<(Length, Length)> {
    let adjacent =
        offsets.iter().zip(offsets.iter().skip(1)).filter_map(|(one, next)| Some(((*one)? - (*next)?).abs())).max()?;
    let known = || offsets.iter().flatten().copied();
    Some((adjacent, known().max()? - known().min()?))
}

/// Line of the bores, from neighbour to neighbour or over all; the worse direction counts.
pub(super) fn figure(bench: Bench<'_>, block: Part, quantity: Quantity) -> Option<Figure> {
    let readings = bench.readings;
    if readings.quantity(block, quantity, bench.phase).next().is_some() {
        return None;
    }
    let mains = readings.engine.arrangement().mains;
    let along = |direction: Option<Direction>| {
        let standing: Vec<_> = (1..=mains)
            .map(|n| {
                let bore = Part { kind: PartKind::HousingBore, at: At::Main(n) };
                readings
                    .quantity(bore, Quantity::LineOffset, bench.phase)
                    .find(|standing| standing.reading.spot.direction == direction)
            })
            .collect();
        let offsets: Vec<Option<Length>> = standing.iter().map(|s| s.map(|s| s.length)).collect();
        let (adjacent, overall) = line_of_bores(&offsets)?;
        let u = standing.iter().flatten().map(|s| s.uncertainty).max().unwrap_or_default();
        let step = standing.iter().flatten().map(|s| s.step).max().unwrap_or_default();
        let amount = if quantity == Quantity::LineAdjacent { adjacent } else { overall };
        Some(Value::single(amount, Length::root_sum_square([u, u]), step, Spot::new(None, direction)))
    };
    let value = [None, Some(Direction::A), Some(Direction::B)].into_iter().filter_map(along).max_by_key(|v| v.high)?;
    Some(bench.judge(block, quantity, "", None, value, Proportions::default()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn line(offsets: &[Option<i64>], adjacent: i64, overall: i64) {
        let offsets: Vec<Option<Length>> = offsets.iter().map(|o| o.map(Length::from_nanometres)).collect();
        let (a, o) = line_of_bores(&offsets).unwrap();
        assert_eq!((a.nanometres(), o.nanometres()), (adjacent, overall));
    }

    // Own arithmetic.
    #[test]
    fn neighbours_and_over_all() {
        line(&[Some(0), Some(10), Some(20), Some(10), Some(0)], 10, 20);
        line(&[Some(0), None, Some(20), Some(-5)], 25, 25);
    }

    #[test]
    fn one_bore_is_no_line() {
        assert_eq!(line_of_bores(&[Some(Length::default()), None]), None);
    }
}
