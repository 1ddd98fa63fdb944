//! Sizes and ranges in words.

use crate::figure::Readings;
use crate::measure::LengthUnit::{Inch, Millimetre, Thou};
use crate::measure::{Length, in_unit, range, range_in_unit};
use crate::sheet::SizeGroup;

/// A size of a series: "standard", "0.010 in undersize".
pub(super) fn size_words(size: Length, group: SizeGroup, readings: &Readings<'_>) -> String {
    if size == Length::default() {
        return "standard".into();
    }
    let side = if group == SizeGroup::Bores { "oversize" } else { "undersize" };
    format!("{} {side}", size_text(size, readings))
}

/// An oversize: "standard", "0.010 in oversize".
pub(super) fn oversize_words(size: Length, readings: &Readings<'_>) -> String {
    size_words(size, SizeGroup::Bores, readings)
}

/// An under- or oversize as the trade writes it: three decimals of an inch or two of a millimetre. A metric size in an
/// inch engine keeps its own name, and the other way round.
pub(super) fn size_text(size: Length, readings: &Readings<'_>) -> String {
    let (thou, hundredth) = (Length::from_nanometres(25_400), Length::from_nanometres(10_000));
    let whole = |step: Length| size.nanometres() % step.nanometres() == 0;
    match readings.unit() {
        Inch | Thou if whole(thou) => size.show(thou, Inch),
        _ if whole(hundredth) => size.show(hundredth, Millimetre),
        _ if whole(thou) => size.show(thou, Inch),
        unit => in_unit(size, unit),
    }
}

/// "2.2483 to 2.2490 in", or one value where both ends are the same.
pub(super) fn range_words((low, high): (Length, Length), readings: &Readings<'_>) -> String {
    range_in_unit(low, high, readings.unit())
}

/// A computed range, rounded once to the step in which sizes are given.
pub(super) fn rounded((low, high): (Length, Length), readings: &Readings<'_>) -> String {
    let unit = readings.unit();
    range(low, high, unit.usual_step(), unit)
}
