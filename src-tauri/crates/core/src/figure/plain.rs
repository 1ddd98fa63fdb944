//! Quantities that are read and judged as they are.

use super::{Bench, Figure, Value, clearance, rod};
use crate::engine::Part;
use crate::measure::{Has, Length, Quantity, Spots, Station};
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
        (_, Quantity::Strip, _) => strip(bench, part).into_iter().collect(),
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

/// A plastic strip is a second opinion on the clearance: it keeps to the same limits, and is told beside what the sizes
/// give. Where it is widest the clearance is smallest; a strip that narrows along its length tells of taper
/// (TM 5-3805-281-24-2).
fn strip(bench: Bench<'_>, part: Part) -> Option<Figure> {
    let value = bench.readings.value(part, Quantity::Strip, bench.phase, None)?;
    let sheet = &bench.readings.job.sheet;
    let own = sheet.line(part, Quantity::Strip, "", None).map(|_| Quantity::Strip);
    let limits = sheet.limits(part, own.unwrap_or(Quantity::Clearance), "", None, Proportions::default());
    let mut figure = bench.judge_by(part, Quantity::Strip, "", None, value, limits);
    if value.high > value.low {
        let unit = bench.readings.unit();
        let narrows = (value.high - value.low).show(value.step, unit);
        figure.because.push_str(&format!(" The strip differs by {narrows} along the journal: look for taper."));
    }
    if let Some(sizes) = clearance::figure(bench, part, Quantity::Clearance) {
        let doubt = Length::root_sum_square([value.uncertainty, sizes.uncertainty, value.step]);
        let apart = value.low > sizes.high + doubt || value.high < sizes.low - doubt;
        let word = if apart { "disagree: one of them is wrong" } else { "agree" };
        figure.because.push_str(&format!(" The sizes give {} and {word}.", sizes.shown));
    }
    Some(figure)
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
