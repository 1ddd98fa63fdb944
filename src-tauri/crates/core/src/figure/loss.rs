//! How far a size has gone from new. Manuals differ in what they call new: the smallest or the largest new size.

use super::{Bench, Figure, Value};
use crate::engine::Part;
use crate::measure::{Length, Quantity, Sense, range};
use crate::sheet::{Datum, Proportions};

/// Wear of a diameter.
pub(super) fn wear(bench: Bench<'_>, part: Part) -> Option<Figure> {
    let value = bench.readings.value(part, Quantity::Diameter, bench.phase, None)?;
    loss(bench, part, Quantity::Wear, Quantity::Diameter, value)
}

/// Loss of height of a lobe.
pub(super) fn height(bench: Bench<'_>, part: Part) -> Option<Figure> {
    let value = bench.readings.value(part, Quantity::LobeHeight, bench.phase, None)?;
    loss(bench, part, Quantity::HeightLoss, Quantity::LobeHeight, value)
}

/// Loss of lift of a lobe, with the share of the lift that is gone.
pub(super) fn lift(bench: Bench<'_>, part: Part) -> Option<Figure> {
    if bench.readings.quantity(part, Quantity::LiftLoss, bench.phase).next().is_some() {
        return None;
    }
    let value = super::lobe::lift_value(bench, part)?;
    let mut figure = loss(bench, part, Quantity::LiftLoss, Quantity::Lift, value)?;
    let was = figure.high + value.low;
    if was > Length::default() && figure.high > Length::default() {
        let percent = figure.high.times(100, was.nanometres()).nanometres();
        figure.because.push_str(&format!(" That is {percent} per cent of the lift."));
    }
    Some(figure)
}

/// The loss from new of the most worn value.
fn loss(bench: Bench<'_>, part: Part, what: Quantity, of: Quantity, value: Value) -> Option<Figure> {
    let sheet = &bench.readings.job.sheet;
    let new = sheet.limits(part, of, "", None, Proportions::default())?;
    let new = bench.resized(part, of, new).new;
    let sense = part.kind.has(of)?.sense;
    let worn = match sense {
        Sense::Least => value.low,
        Sense::Most => value.high,
    };
    let at = if sense == Sense::Least { value.low_at } else { value.high_at };
    let gone = |new: Length| if sense == Sense::Least { new - worn } else { worn - new };
    let limits = sheet.limits(part, what, "", None, Proportions::default());
    let from = |datum: Datum| match datum {
        Datum::Min => new.0.or(new.1),
        Datum::Max => new.1.or(new.0),
    };
    // The general rules and most manuals count from the end of the range that is nearer to the worn size.
    let nearer = if sense == Sense::Least { Datum::Min } else { Datum::Max };
    if limits.is_none() && gone(from(nearer)?) <= Length::default() {
        // Nothing has gone, and nobody asked.
        return None;
    }
    let single = |loss: Length| Value::single(loss, value.uncertainty, value.step, at);
    let judged = |loss: Length| bench.judge_by(part, what, "", None, single(loss), limits.clone());
    let stated = limits.as_ref().and_then(|limits| limits.datum);
    if let Some(datum) = stated {
        return Some(judged(gone(from(datum)?)));
    }
    let (near, far) = (judged(gone(from(nearer)?)), judged(gone(from(other(nearer))?)));
    if near.verdict == far.verdict || limits.as_ref().is_none_or(|limits| limits.general) {
        return Some(near);
    }
    // Which of the two is meant decides, and only the manual can tell.
    let (low, high) = (near.low.min(far.low), near.high.max(far.high));
    let name = |datum: Datum| if datum == Datum::Min { "smallest" } else { "largest" };
    let because = format!(
        "{} if counted from the {} new size, {} from the {}: the answer depends on which the manual means. Say so in the sheet.",
        near.shown,
        name(nearer),
        far.shown,
        name(other(nearer))
    );
    let shown = range(low, high, value.step, bench.readings.unit());
    Some(Figure { low, high, shown, verdict: None, because, ..near })
}

fn other(datum: Datum) -> Datum {
    match datum {
        Datum::Min => Datum::Max,
        Datum::Max => Datum::Min,
    }
}
