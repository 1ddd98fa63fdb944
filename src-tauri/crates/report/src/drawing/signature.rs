//! A signature as it was drawn on the screen.

use wearbook_core::job::Stroke;

use super::svg::Svg;

/// The field on paper, millimetres: three times as wide as high.
const FIELD: (f64, f64) = (60.0, 20.0);
/// The field on the screen, from edge to edge.
const EDGE: f64 = 10_000.0;

/// The strokes as lines of ink.
pub(crate) fn signature(strokes: &[Stroke]) -> String {
    let mut svg = Svg::default();
    let on_paper = |(x, y): &(u16, u16)| (f64::from(*x) / EDGE * FIELD.0, f64::from(*y) / EDGE * FIELD.1);
    for stroke in strokes {
        for (from, to) in stroke.iter().zip(stroke.iter().skip(1)) {
            svg.pen(on_paper(from), on_paper(to));
        }
        // A dot is a stroke of one point.
        if let [dot] = stroke.as_slice() {
            let (x, y) = on_paper(dot);
            svg.pen((x, y), (x + 0.1, y));
        }
    }
    svg.finish(FIELD, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn strokes_become_lines_and_a_point_a_dot() {
        let svg = signature(&[vec![(0, 0), (10_000, 10_000)], vec![(5_000, 5_000)]]);
        assert!(svg.contains("M0.00 0.00L60.00 20.00") && svg.contains("M30.00 10.00L30.10 10.00"), "{svg}");
    }
}
