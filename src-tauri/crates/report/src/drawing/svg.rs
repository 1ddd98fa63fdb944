//! Ink on an SVG sheet: outlines, hatching, centre lines and letters.

use std::fmt::Write;

use super::Point;
use super::hatch::Ink;
use super::outline::circle;

/// The one colour of the sheet.
pub(super) const INK: &str = "#161c28";
/// Outlines, millimetres.
const OUTLINE: f64 = 0.28;
/// Hatching, centre lines, frames.
const FINE: f64 = 0.16;

/// A drawing under way.
#[derive(Debug, Default)]
pub(crate) struct Svg {
    body: String,
}

/// Where a line of letters is held.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Anchor {
    Start,
    Middle,
}

/// A face and a size in millimetres.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Face {
    Figures(f64),
    Words(f64),
    Italic(f64),
}

impl Svg {
    /// An outline with its inside inked, moved so that its origin comes to lie at a point.
    pub(crate) fn shape(&mut self, at: Point, contours: &[Vec<Point>], ink: Ink) {
        let contours: Vec<Vec<Point>> = contours.iter().map(|contour| moved(contour, at)).collect();
        let fill = if ink == Ink::Solid { INK } else { "#ffffff" };
        let dashes = if ink == Ink::Dashed { r#" stroke-dasharray="0.9 0.75""# } else { "" };
        let width = if ink == Ink::Dashed { FINE } else { OUTLINE };
        let path = closed(&contours);
        self.put(format_args!(
            r#"<path d="{path}" fill="{fill}" fill-rule="evenodd" stroke="{INK}" stroke-width="{width}"{dashes}/>"#
        ));
        self.hatch(&contours, ink);
    }

    /// Outlines filled, without a line around them.
    pub(crate) fn solid(&mut self, contours: &[Vec<Point>]) {
        let path = closed(contours);
        self.put(format_args!(r##"<path d="{path}" fill="#000000"/>"##));
    }

    /// Hatching without an outline.
    pub(crate) fn hatch(&mut self, contours: &[Vec<Point>], ink: Ink) {
        let mut strokes = String::new();
        for ((x1, y1), (x2, y2)) in ink.strokes(contours) {
            strokes += &format!("M{x1:.2} {y1:.2}L{x2:.2} {y2:.2}");
        }
        if !strokes.is_empty() {
            self.put(format_args!(r#"<path d="{strokes}" fill="none" stroke="{INK}" stroke-width="{FINE}"/>"#));
        }
    }

    /// An open line as heavy as an outline.
    pub(crate) fn outline(&mut self, points: &[Point]) {
        self.run(points, OUTLINE, "");
    }

    /// An open line of dashes.
    pub(crate) fn dashed(&mut self, points: &[Point]) {
        self.run(points, OUTLINE, r#" stroke-dasharray="1.2 0.7""#);
    }

    /// A fine open line of dots.
    pub(crate) fn dotted(&mut self, points: &[Point]) {
        self.run(points, FINE, r#" stroke-dasharray="0.3 0.6""#);
    }

    fn run(&mut self, points: &[Point], width: f64, dashes: &str) {
        let mut path = String::new();
        for (nth, (x, y)) in points.iter().enumerate() {
            path += &format!("{}{x:.2} {y:.2}", if nth == 0 { 'M' } else { 'L' });
        }
        if points.len() > 1 {
            self.put(format_args!(
                r#"<path d="{path}" fill="none" stroke="{INK}" stroke-width="{width}" stroke-linejoin="round"{dashes}/>"#
            ));
        }
    }

    /// A disc without ink, for letters to stand on.
    pub(crate) fn disc(&mut self, at: Point, radius: f64) {
        let path = closed(&[circle(at, radius)]);
        self.put(format_args!(r##"<path d="{path}" fill="#ffffff"/>"##));
    }

    /// A fine line.
    pub(crate) fn line(&mut self, (x1, y1): Point, (x2, y2): Point) {
        let path = format!("M{x1:.2} {y1:.2}L{x2:.2} {y2:.2}");
        self.put(format_args!(r#"<path d="{path}" stroke="{INK}" stroke-width="{FINE}"/>"#));
    }

    /// A stroke of a pen, with round ends.
    pub(crate) fn pen(&mut self, (x1, y1): Point, (x2, y2): Point) {
        let path = format!("M{x1:.2} {y1:.2}L{x2:.2} {y2:.2}");
        self.put(format_args!(r#"<path d="{path}" stroke="{INK}" stroke-width="0.4" stroke-linecap="round"/>"#));
    }

    /// A centre line: long dash, dot (ISO 128-20, line type 04).
    pub(crate) fn centre_line(&mut self, (x1, y1): Point, (x2, y2): Point) {
        let path = format!("M{x1:.2} {y1:.2}L{x2:.2} {y2:.2}");
        self.put(format_args!(
            r#"<path d="{path}" stroke="{INK}" stroke-width="{FINE}" stroke-dasharray="3.4 0.6 0.4 0.6"/>"#
        ));
    }

    /// A line of letters, its middle at the height of the point.
    pub(crate) fn letters(&mut self, (x, y): Point, anchor: Anchor, face: Face, text: &str) {
        let text = escaped(text);
        let anchor = match anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
        };
        let (family, size, style) = match face {
            Face::Figures(size) => ("DejaVu Sans Mono", size, ""),
            Face::Words(size) => ("Libertinus Serif", size, ""),
            Face::Italic(size) => ("Libertinus Serif", size, r#" font-style="italic""#),
        };
        // About a third of the size lies between the base line and the middle of the letters.
        let y = y + size * 0.34;
        self.put(format_args!(
            r#"<text x="{x:.2}" y="{y:.2}" text-anchor="{anchor}" font-family="{family}" font-size="{size}"{style} fill="{INK}">{text}</text>"#
        ));
    }

    /// The finished drawing of a width and height, printed at a share of them.
    pub(crate) fn finish(self, (width, height): (f64, f64), scale: f64) -> String {
        let printed = format!(r#"width="{:.2}mm" height="{:.2}mm""#, width * scale, height * scale);
        let body = self.body;
        format!(
            r#"<svg xmlns="http://www.w3.org/2000/svg" {printed} viewBox="0 0 {width:.2} {height:.2}">{body}</svg>"#
        )
    }

    fn put(&mut self, element: std::fmt::Arguments<'_>) {
        // Writing to a string can't fail.
        let _ = self.body.write_fmt(element);
    }
}

fn moved(contour: &[Point], (dx, dy): Point) -> Vec<Point> {
    contour.iter().map(|(x, y)| (x + dx, y + dy)).collect()
}

fn closed(contours: &[Vec<Point>]) -> String {
    let mut path = String::new();
    for contour in contours {
        for (nth, (x, y)) in contour.iter().enumerate() {
            path += &format!("{}{x:.2} {y:.2}", if nth == 0 { 'M' } else { 'L' });
        }
        path.push('Z');
    }
    path
}

fn escaped(text: &str) -> String {
    crate::clean::line(text).replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}
