//! What was drawn over a photo: outlines, arrows and numbered notes, in ink on a rim of white so that they can be seen on
//! bright and on dark metal.

use std::fmt::Write;

use wearbook_core::job::{Markup, numbers};

use super::Point;
use super::svg::INK;

/// The far edge of a picture, as places on it are kept.
const EDGE: f64 = 10_000.0;

// Sizes in hundredths of the picture's shorter side.
/// A line, and the rim of white round it.
const LINE: f64 = 1.3;
const RIM: f64 = 3.2;
/// A side of an arrow's head.
const BARB: f64 = 7.0;
/// A number's disc, and its figure.
const DISC: f64 = 5.6;
const FIGURE: f64 = 7.6;

/// Cosine and sine of 150 degrees, by which an arrow's barbs are turned from its direction.
const BACK: (f64, f64) = (-0.866_025_403_784_438_6, 0.5);

/// Draws on a picture of a width and height. Lines first, so that no line crosses a number.
pub(crate) fn markups(markups: &[Markup], (width, height): (f64, f64)) -> String {
    let unit = width.min(height) / 100.0;
    let on_picture = |(x, y): (u16, u16)| (f64::from(x) / EDGE * width, f64::from(y) / EDGE * height);
    let mut body = String::new();
    let paths: String = markups.iter().filter_map(|markup| path(markup, &on_picture, unit)).collect();
    if !paths.is_empty() {
        for (colour, weight) in [("#ffffff", RIM), (INK, LINE)] {
            let weight = weight * unit;
            // Writing to a string can't fail.
            let _ = write!(
                body,
                r#"<path d="{paths}" fill="none" stroke="{colour}" stroke-width="{weight:.2}" stroke-linecap="round" stroke-linejoin="round"/>"#
            );
        }
    }
    for (markup, number) in markups.iter().zip(numbers(markups)) {
        if let Some(number) = number {
            let (x, y) = on_picture(markup.anchor());
            let edge = (DISC + LINE) * unit;
            // Above an outline, so that it hides nothing of what lies within.
            let y = if matches!(markup, Markup::Outline { .. }) { y - edge } else { y };
            let within = |at: f64, side: f64| at.max(edge).min((side - edge).max(edge));
            let (x, y) = (within(x, width), within(y, height));
            let (radius, line, size) = (DISC * unit, LINE * unit, FIGURE * unit);
            let base = y + size * 0.36;
            let _ = write!(
                body,
                r##"<circle cx="{x:.2}" cy="{y:.2}" r="{radius:.2}" fill="#ffffff" stroke="{INK}" stroke-width="{line:.2}"/><text x="{x:.2}" y="{base:.2}" text-anchor="middle" font-family="DejaVu Sans Mono" font-size="{size:.2}" fill="{INK}">{number}</text>"##
            );
        }
    }
    body
}

/// The line of an outline or an arrow; a note is only its number.
fn path(markup: &Markup, on_picture: &dyn Fn((u16, u16)) -> Point, unit: f64) -> Option<String> {
    match markup {
        Markup::Outline { points, .. } => {
            let points: Vec<String> =
                points.iter().map(|point| on_picture(*point)).map(|(x, y)| format!("{x:.2} {y:.2}")).collect();
            Some(format!("M{}Z", points.join("L")))
        }
        Markup::Arrow { from, to, .. } => {
            let ((x1, y1), (x2, y2)) = (on_picture(*from), on_picture(*to));
            let (dx, dy) = (x2 - x1, y2 - y1);
            let length = (dx * dx + dy * dy).sqrt().max(f64::MIN_POSITIVE);
            let (dx, dy) = (dx / length * BARB * unit, dy / length * BARB * unit);
            let barb = |side: f64| (x2 + dx * BACK.0 - side * dy * BACK.1, y2 + dy * BACK.0 + side * dx * BACK.1);
            let ((left_x, left_y), (right_x, right_y)) = (barb(1.0), barb(-1.0));
            Some(format!(
                "M{x1:.2} {y1:.2}L{x2:.2} {y2:.2}M{left_x:.2} {left_y:.2}L{x2:.2} {y2:.2}L{right_x:.2} {right_y:.2}"
            ))
        }
        Markup::Note { .. } => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_arrow_points_at_its_tip_and_a_note_is_a_number() {
        let arrow = Markup::Arrow { from: (0, 5_000), to: (5_000, 5_000), note: String::new() };
        let note = Markup::Note { at: (10_000, 0), note: "crack".into() };
        let svg = markups(&[arrow, note], (200.0, 100.0));
        assert!(svg.contains("M0.00 50.00L100.00 50.00M93.94 53.50L100.00 50.00L93.94 46.50"), "{svg}");
        assert!(svg.contains(r#"<circle cx="193.10" cy="6.90""#) && svg.contains(">1</text>"), "{svg}");
        assert_eq!(svg.matches("<circle").count(), 1, "what has no note has no number");
    }

    #[test]
    fn an_outline_is_closed_and_nothing_drawn_is_nothing() {
        let outline = Markup::Outline { points: vec![(0, 0), (10_000, 0), (0, 10_000)], note: String::new() };
        assert!(markups(&[outline], (10.0, 20.0)).contains("M0.00 0.00L10.00 0.00L0.00 20.00Z"));
        assert_eq!(markups(&[], (10.0, 20.0)), "");
    }
}
