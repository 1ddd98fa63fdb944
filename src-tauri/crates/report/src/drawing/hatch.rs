//! Severity as hatching: which strokes, and where they enter and leave an outline.

use wearbook_core::view::Seen;
use wearbook_core::wear::Grade;

use super::Point;

/// How an outline is filled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Ink {
    /// Not looked at: a dashed outline.
    Dashed,
    /// Looked at and clean: an outline.
    Blank,
    /// Grade 1.
    Sparse,
    /// Grade 2.
    Dense,
    /// Grade 3.
    Crossed,
    /// Grade 4.
    Solid,
}

impl Ink {
    /// The ink for what was seen.
    pub(crate) fn of(seen: Seen, worst: Option<Grade>) -> Self {
        match (seen, worst.map(Grade::number)) {
            // What was only looked at with another part is not known to be clean.
            (Seen::NotLooked | Seen::Along, _) => Self::Dashed,
            (Seen::Clean, _) => Self::Blank,
            (Seen::Worn, None | Some(0 | 1)) => Self::Sparse,
            (Seen::Worn, Some(2)) => Self::Dense,
            (Seen::Worn, Some(3)) => Self::Crossed,
            (Seen::Worn, Some(_)) => Self::Solid,
        }
    }

    /// The strokes that fill the inside of the contours, even-odd.
    pub(crate) fn strokes(self, contours: &[Vec<Point>]) -> Vec<(Point, Point)> {
        match self {
            Self::Dashed | Self::Blank | Self::Solid => vec![],
            Self::Sparse => lines(contours, 1.5, Slope::Rising),
            Self::Dense => lines(contours, 0.72, Slope::Rising),
            Self::Crossed => {
                let mut strokes = lines(contours, 0.72, Slope::Rising);
                strokes.extend(lines(contours, 0.72, Slope::Falling));
                strokes
            }
        }
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Slope {
    Rising,
    Falling,
}

/// Lines at 45°, `spacing` apart, cut to the inside of the contours.
fn lines(contours: &[Vec<Point>], spacing: f64, slope: Slope) -> Vec<(Point, Point)> {
    // With y down, a rising line has y + x constant, a falling one y − x.
    let sign = if slope == Slope::Rising { 1.0 } else { -1.0 };
    let offset = |(x, y): Point| y + sign * x;
    let offsets = contours.iter().flatten().map(|point| offset(*point));
    let (low, high) = offsets.fold((f64::MAX, f64::MIN), |(low, high), c| (low.min(c), high.max(c)));
    let step = spacing * std::f64::consts::SQRT_2;
    let mut strokes = Vec::new();
    // Half a step in, so that no line runs along a corner.
    let mut c = (low / step).floor() * step + step / 2.0;
    while c < high {
        let mut crossings: Vec<f64> = contours
            .iter()
            .flat_map(|contour| edges(contour))
            .filter_map(|(from, to)| {
                let (a, b) = (offset(from) - c, offset(to) - c);
                ((a < 0.0) != (b < 0.0)).then(|| from.0 + (to.0 - from.0) * a / (a - b))
            })
            .collect();
        crossings.sort_by(f64::total_cmp);
        let ends = crossings.chunks_exact(2).filter_map(|pair| Some((*pair.first()?, *pair.last()?)));
        strokes.extend(ends.map(|(from, to)| ((from, c - sign * from), (to, c - sign * to))));
        c += step;
    }
    strokes
}

/// The sides of a closed contour.
fn edges(contour: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    contour.iter().copied().zip(contour.iter().copied().cycle().skip(1))
}

#[cfg(test)]
mod tests {
    use super::super::outline::{circle, rectangle};
    use super::*;

    fn length(strokes: &[(Point, Point)]) -> f64 {
        strokes.iter().map(|(from, to)| (to.0 - from.0).hypot(to.1 - from.1)).sum()
    }

    /// Length of line × spacing approaches the area.
    #[track_caller]
    fn covers(contours: &[Vec<Point>], area: f64) {
        let spacing = 0.01;
        for slope in [Slope::Rising, Slope::Falling] {
            let covered = length(&lines(contours, spacing, slope)) * spacing;
            assert!((covered - area).abs() < area * 0.01, "{covered} covered of {area}");
        }
    }

    #[test]
    fn strokes_fill_the_inside_and_leave_holes_free() {
        let disc = std::f64::consts::PI * 16.0;
        covers(&[rectangle((3.0, -2.0), 6.0, 4.0)], 24.0);
        covers(&[circle((0.0, 0.0), 4.0)], disc);
        covers(&[circle((1.0, 1.0), 4.0), circle((1.0, 1.0), 2.0)], disc * 0.75);
    }

    #[test]
    fn a_worse_grade_has_more_ink() {
        let shape = [circle((0.0, 0.0), 4.0)];
        let ink = [Ink::Blank, Ink::Sparse, Ink::Dense, Ink::Crossed].map(|ink| length(&ink.strokes(&shape)));
        assert!(ink.is_sorted_by(|less, more| less * 1.5 < *more || *less == 0.0 && *more > 0.0), "{ink:?}");
        assert!(Ink::Solid.strokes(&shape).is_empty(), "solid is a fill, not strokes");
    }
}
