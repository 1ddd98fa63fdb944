//! A reading between its limits, as a small bar.

use wearbook_core::document::Bar;
use wearbook_core::measure::Length;

use super::Point;
use super::hatch::Ink;
use super::outline::rectangle;
use super::svg::Svg;

/// The bar on paper, millimetres.
const SIZE: (f64, f64) = (31.0, 4.6);
/// Clear at both ends, as a share of what is shown.
const MARGIN: f64 = 0.14;
/// The thinnest mark of a reading.
const THINNEST: f64 = 0.8;

/// What is allowed as a box open where there is no limit, what is new hatched within it, the reading as a black mark
/// with a line as far as it may be off.
pub(crate) fn bar(bar: &Bar) -> String {
    let (width, height) = SIZE;
    let middle = height / 2.0;
    let mut svg = Svg::default();
    let (least, most) = range(bar);
    let x = |length: f64| ((length - least) / (most - least) * width).clamp(0.0, width);
    let (allowed_from, allowed_to) = ends(bar.allowed, x);
    // The ends of the box stand out beyond the mark that may cover them.
    let box_height = 3.2;
    let mark_height = 1.8;
    let (new_from, new_to) = ends(bar.new, x);
    if let (Some(from), Some(to)) = (new_from, new_to) {
        let at = ((from + to) / 2.0, middle);
        svg.hatch(&[rectangle(at, (to - from).max(THINNEST), box_height)], Ink::Sparse);
    }
    let (from, to) = (allowed_from.unwrap_or(0.0), allowed_to.unwrap_or(width));
    if allowed_from.is_some() || allowed_to.is_some() {
        for y in [middle - box_height / 2.0, middle + box_height / 2.0] {
            svg.line((from, y), (to, y));
        }
    }
    let (low, high, off) = (nanometres(bar.low), nanometres(bar.high), nanometres(bar.uncertainty));
    svg.line((x(low - off), middle), (x(high + off), middle));
    for end in [x(low - off), x(high + off)] {
        svg.line((end, middle - 0.7), (end, middle + 0.7));
    }
    let mark = (x(high) - x(low)).max(THINNEST);
    let at: Point = (((x(low) + x(high)) / 2.0).clamp(mark / 2.0, width - mark / 2.0), middle);
    svg.shape(at, &[rectangle((0.0, 0.0), mark, mark_height)], Ink::Solid);
    for end in [allowed_from, allowed_to].into_iter().flatten() {
        svg.outline(&[(end, 0.2), (end, height - 0.2)]);
    }
    svg.finish(SIZE, 1.0)
}

/// A bar on which everything can be seen that one can show, for the key.
pub(crate) fn sample() -> String {
    let at = Length::from_nanometres;
    bar(&Bar {
        low: at(15),
        high: at(19),
        uncertainty: at(5),
        allowed: (Some(at(0)), Some(at(60))),
        new: (Some(at(34)), Some(at(60))),
    })
}

fn ends((from, to): (Option<Length>, Option<Length>), x: impl Fn(f64) -> f64) -> (Option<f64>, Option<f64>) {
    (from.map(|at| x(nanometres(at))), to.map(|at| x(nanometres(at))))
}

/// What the bar must show, with a margin; never empty.
fn range(bar: &Bar) -> (f64, f64) {
    let off = nanometres(bar.uncertainty);
    let mut shown = vec![nanometres(bar.low) - off, nanometres(bar.high) + off];
    let limits = [bar.allowed.0, bar.allowed.1, bar.new.0, bar.new.1];
    shown.extend(limits.into_iter().flatten().map(nanometres));
    // With a greatest value only, as of out-of-round, zero is the natural beginning.
    if bar.allowed.0.is_none() && bar.low >= Length::default() {
        shown.push(0.0);
    }
    let least = shown.iter().copied().fold(f64::MAX, f64::min);
    let most = shown.iter().copied().fold(f64::MIN, f64::max);
    let margin = ((most - least) * MARGIN).max(1.0);
    (least - margin, most + margin)
}

fn nanometres(length: Length) -> f64 {
    length.nanometres() as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(nanometres: i64) -> Option<Length> {
        Some(Length::from_nanometres(nanometres))
    }

    #[test]
    fn everything_lies_on_the_bar_whatever_the_lengths() {
        for (low, high) in [(0, 0), (5, 9), (i64::MIN / 4, i64::MAX / 4), (-7, -7)] {
            for allowed in [(None, None), (at(0), None), (None, at(20)), (at(0), at(20)), (at(20), at(0))] {
                let low = Length::from_nanometres(low);
                let drawn = bar(&Bar { low, high: Length::from_nanometres(high), allowed, ..Bar::default() });
                assert!(!drawn.contains("NaN") && !drawn.contains("inf"), "{drawn}");
            }
        }
    }

    #[test]
    fn a_reading_outside_stands_outside_the_box() {
        let (least, most) = range(&Bar {
            low: Length::from_nanometres(30),
            high: Length::from_nanometres(30),
            allowed: (None, at(20)),
            ..Bar::default()
        });
        assert!(least < 0.0 && most > 30.0);
    }
}
