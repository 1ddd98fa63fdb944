//! Quantities that are read and judged as they are.

use super::{Bench, Figure, Value, rod};
use crate::engine::Part;
use crate::measure::{Has, Quantity, Spots, Station};
use crate::sheet::Proportions;

/// The figures of a quantity that was read: one, or one each ring.
pub(super) fn figures(bench: Bench<'_>, part: Part, has: &Has) -> Vec<Figure> {
    let quantity = has.quantity;
    match (has.is_read(), quantity, has.spots) {
        (false, ..) => vec![],
        (_, Quantity::Other, _) => named(bench, part),
        (_, Quantity::Bend | Quantity::Twist, _) if part.kind == crate::engine::PartKind::Rod => {
            rod::figure(bench, part, quantity).into_iter().collect()
        }
        // A line of bores is judged as a whole, run-outs by pairs; the offsets themselves have no limit.
        (_, Quantity::LineOffset, _) => vec![],
        (_, _, Spots::Rings) => Spots::Rings
            .all()
            .into_iter()
            .filter_map(|spot| one(bench, part, quantity, spot.station))
            .chain(elsewhere(bench, part, quantity))
            .collect(),
        _ => one(bench, part, quantity, None).into_iter().collect(),
    }
}

fn one(bench: Bench<'_>, part: Part, quantity: Quantity, station: Option<Station>) -> Option<Figure> {
    let value = bench.readings.value(part, quantity, bench.phase, station)?;
    Some(bench.judge(part, quantity, "", station, value, Proportions::default()))
}

/// Ring readings that do not say which ring.
fn elsewhere(bench: Bench<'_>, part: Part, quantity: Quantity) -> Option<Figure> {
    let readings = bench.readings;
    let lone =
        readings.quantity(part, quantity, bench.phase).find(|standing| standing.reading.spot.station.is_none())?;
    let value = Value::single(lone.length, lone.uncertainty, lone.step, lone.reading.spot);
    Some(bench.judge(part, quantity, "", None, value, Proportions::default()))
}

/// Quantities of the manual's own, each by its name.
fn named(bench: Bench<'_>, part: Part) -> Vec<Figure> {
    bench
        .readings
        .quantity(part, Quantity::Other, bench.phase)
        .map(|standing| {
            let value = Value::single(standing.length, standing.uncertainty, standing.step, standing.reading.spot);
            bench.judge(part, Quantity::Other, &standing.reading.name, None, value, Proportions::default())
        })
        .collect()
}
