//! The form of journals and bores, with their deviations drawn many times too large.

use wearbook_core::document::{FormDrawing, FormStation};
use wearbook_core::measure::Length;

use super::Point;
use super::hatch::Ink;
use super::svg::{Anchor, Face, Svg};

/// The field of one drawing, millimetres: as wide as five fit beside each other.
const FIELD: (f64, f64) = (30.0, 25.0);
/// From the axis to the surface of a part that has not worn.
const HALF: f64 = 6.5;
/// The largest deviation of a surface on paper.
const DEEPEST: f64 = 3.2;
/// Length of the part on paper.
const LENGTH: f64 = 19.0;
/// From the axis of a bore to the outside of its wall.
const OUTSIDE: f64 = 10.6;
/// How many times too large deviations may be drawn.
const FACTORS: [f64; 14] =
    [3_000.0, 2_000.0, 1_500.0, 1_000.0, 750.0, 500.0, 300.0, 200.0, 150.0, 100.0, 75.0, 50.0, 30.0, 20.0];

/// The drawings of parts of one kind, all deviations from the least worn diameter alike too large; and how many times.
pub(crate) fn forms(hollow: bool, parts: &[FormDrawing]) -> (Vec<String>, f64) {
    let diameters = parts.iter().flat_map(|part| &part.stations).flat_map(|station| [station.a, station.b]).flatten();
    let (least, most) = diameters.fold((f64::MAX, f64::MIN), |(least, most), length| {
        (least.min(millimetres(length)), most.max(millimetres(length)))
    });
    let reference = if hollow { least } else { most };
    let spread = most - least;
    let fits = |factor: &f64| spread / 2.0 * factor <= DEEPEST;
    let factor = FACTORS.into_iter().find(fits).unwrap_or(1.0);
    (parts.iter().map(|part| Scale { hollow, reference, factor }.draw(part)).collect(), factor)
}

#[derive(Debug, Clone, Copy)]
struct Scale {
    hollow: bool,
    reference: f64,
    factor: f64,
}

impl Scale {
    fn draw(self, part: &FormDrawing) -> String {
        let mut svg = Svg::default();
        let places: Vec<f64> = along(part.stations.len());
        let (first, last) = (places.first().copied().unwrap_or(0.0), places.last().copied().unwrap_or(0.0));
        let axis = |along: f64| self.on_paper(along, 0.0);
        svg.centre_line(axis(first - 2.5), axis(last + 2.5));
        let surface = |side: f64, of: fn(&FormStation) -> Option<Length>| -> Vec<Point> {
            let at = |(station, along): (&FormStation, &f64)| {
                Some(self.on_paper(*along, side * self.half(millimetres(of(station)?))))
            };
            part.stations.iter().zip(&places).filter_map(at).collect()
        };
        for side in [-1.0, 1.0] {
            let upright = surface(side, |station| station.a);
            if self.hollow {
                // The wall is cut through, and hatched as a section is.
                let outside = [last, first].map(|along| self.on_paper(along, side * OUTSIDE));
                svg.hatch(&[upright.iter().copied().chain(outside).collect()], Ink::Sparse);
            }
            svg.outline(&upright);
            svg.dashed(&surface(side, |station| station.b));
            let least_worn = |along: f64| self.on_paper(along, side * HALF);
            svg.dotted(&[least_worn(first), least_worn(last)]);
        }
        if !self.hollow {
            let (left, right) = (surface(-1.0, |station| station.a), surface(1.0, |station| station.a));
            for (from, to) in [(left.first(), right.first()), (left.last(), right.last())] {
                svg.outline(&from.into_iter().chain(to).copied().collect::<Vec<_>>());
            }
        }
        for (station, along) in part.stations.iter().zip(&places) {
            let (x, y) = if self.hollow {
                (FIELD.0 - 8.0, axis(*along).1.clamp(1.2, FIELD.1 - 1.2))
            } else {
                (axis(*along).0, FIELD.1 - 1.4)
            };
            let anchor = if self.hollow { Anchor::Start } else { Anchor::Middle };
            svg.letters((x, y), anchor, Face::Figures(2.3), &station.name);
        }
        svg.finish(FIELD, 1.0)
    }

    /// From the axis to the surface.
    fn half(self, diameter: f64) -> f64 {
        (HALF + (diameter - self.reference) / 2.0 * self.factor).clamp(0.5, OUTSIDE)
    }

    /// A shaft lies, a bore stands.
    fn on_paper(self, along: f64, across: f64) -> Point {
        if self.hollow { (OUTSIDE + 0.3 + across, along + 3.0) } else { (5.5 + along, 11.0 + across) }
    }
}

/// Evenly spaced places along the part.
fn along(stations: usize) -> Vec<f64> {
    let count = u16::try_from(stations).unwrap_or(u16::MAX);
    let gaps = f64::from(count.saturating_sub(1).max(1));
    (0..count).map(|nth| f64::from(nth) / gaps * LENGTH).collect()
}

fn millimetres(length: Length) -> f64 {
    length.nanometres() as f64 / 1e6
}

#[cfg(test)]
mod tests {
    use super::*;

    fn part(diameters: &[(i64, i64)]) -> FormDrawing {
        let station = |(a, b): &(i64, i64)| FormStation {
            name: "front".into(),
            a: Some(Length::from_nanometres(*a)),
            b: Some(Length::from_nanometres(*b)),
        };
        FormDrawing { label: String::new(), stations: diameters.iter().map(station).collect(), alt: String::new() }
    }

    #[track_caller]
    fn factor(hollow: bool, diameters: &[(i64, i64)], expected: f64) {
        let (drawn, factor) = forms(hollow, &[part(diameters)]);
        assert_eq!(factor, expected);
        assert!(!drawn[0].contains("NaN"), "{}", drawn[0]);
    }

    #[test]
    fn deviations_are_as_large_as_they_fit() {
        // 0.03 mm off the diameter is 0.015 mm off the surface: 200 times that is 3 mm.
        factor(false, &[(62_000_000, 61_970_000), (61_990_000, 61_980_000)], 200.0);
        factor(true, &[(90_000_000, 90_000_000), (90_000_000, 90_000_000)], 3_000.0);
        factor(false, &[(i64::MIN / 4, i64::MAX / 4), (0, 0)], 1.0);
        factor(false, &[], 3_000.0);
    }

    #[test]
    fn a_worn_shaft_is_thinner_and_a_worn_bore_wider() {
        let shaft = Scale { hollow: false, reference: 62.0, factor: 200.0 };
        let bore = Scale { hollow: true, reference: 90.0, factor: 200.0 };
        assert!(shaft.half(61.98) < HALF && bore.half(90.02) > HALF);
    }
}
