//! Bend and twist of a rod, over the length that the sheet names.

use super::{Bench, Figure, Value};
use crate::engine::Part;
use crate::measure::{Length, Quantity};
use crate::sheet::{Per, Proportions};

/// Bend or twist. Where both the reading and the sheet name a length, the reading is brought to the sheet's; a gap of
/// feelers over the distance of the parallels is a twist per length (FAA-H-8083-32).
pub(super) fn figure(bench: Bench<'_>, rod: Part, quantity: Quantity) -> Option<Figure> {
    let standing = bench.readings.quantity(rod, quantity, bench.phase).next()?;
    let sheet = &bench.readings.job.sheet;
    let over = standing.reading.over.as_ref().map(|over| over.length);
    let per = sheet.line(rod, quantity, "", None).and_then(|line| line.rate.as_ref()).and_then(|rate| match rate.of {
        Per::Over => Some(rate.per.length),
        _ => None,
    });
    let brought = |length: Length| match (over, per) {
        (Some(over), Some(per)) => length.times(per.nanometres(), over.nanometres()),
        _ => length,
    };
    let value =
        Value::single(brought(standing.length), brought(standing.uncertainty), standing.step, standing.reading.spot);
    let proportions = Proportions { over: over.and(per).or(over), ..Proportions::default() };
    Some(bench.judge(rod, quantity, "", None, value, proportions))
}
