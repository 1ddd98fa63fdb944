//! Out-of-round, taper, barrel: from the diameters of a part, unless read directly.

use super::{Bench, Figure, Value};
use crate::engine::{Part, PartKind};
use crate::measure::{Length, Quantity};
use crate::sheet::Proportions;

/// The figure of form; none if it was read directly or the readings do not yield it.
pub(super) fn figure(bench: Bench<'_>, part: Part, quantity: Quantity) -> Option<Figure> {
    let readings = bench.readings;
    if readings.quantity(part, quantity, bench.phase).next().is_some() {
        return None;
    }
    let of = if part.kind == PartKind::Rod { Quantity::BigEndBore } else { Quantity::Diameter };
    let grid = readings.grid(part, of, bench.phase);
    let ends = part.kind != PartKind::Bore;
    let form = match quantity {
        Quantity::OutOfRound => grid.out_of_round()?,
        Quantity::Taper => grid.taper(ends)?,
        _ => grid.barrel()?,
    };
    let step = readings.step(part, of, bench.phase);
    let length = readings.value(part, Quantity::Length, bench.phase, None).map(|value| value.high);
    let proportions = Proportions { length, ..Proportions::default() };
    if quantity != Quantity::Barrel {
        let value = Value::single(form.value, form.uncertainty, step, form.at);
        return Some(bench.judge(part, quantity, "", None, value, proportions));
    }
    // Judged by its amount; a barrel may be no more than the taper may, unless the sheet says otherwise (common practice).
    let amount = Value::single(form.value.abs(), form.uncertainty, step, form.at);
    let sheet = &readings.job.sheet;
    let stated = [Quantity::Barrel, Quantity::Taper].into_iter().find(|q| sheet.line(part, *q, "", None).is_some());
    let limits = sheet.limits(part, stated.unwrap_or(Quantity::Barrel), "", None, proportions);
    let mut figure = bench.judge_by(part, Quantity::Barrel, "", None, amount, limits);
    let name = if form.value < Length::default() { "hourglass" } else { "barrel" };
    name.clone_into(&mut figure.name);
    (figure.low, figure.high) = (form.value, form.value);
    Some(figure)
}
