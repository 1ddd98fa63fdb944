//! The outlines of the plan's symbols, each round the origin, at most 8.4 mm high.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use wearbook_core::engine::Symbol;

use super::Point;

/// A symbol ready to be drawn.
#[derive(Debug, Clone, Default)]
pub(crate) struct Outline {
    /// Closed contours; the inside, even-odd, is what gets the ink.
    pub(crate) contours: Vec<Vec<Point>>,
    /// Where the mark stands, and how much room it has.
    pub(crate) mark: Mark,
}

/// The place of the letters in a symbol.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Mark {
    /// The middle of the letters.
    pub(crate) at: Point,
    /// Radius of the disc that is kept free of hatching for the letters; zero where they stand outside the inked
    /// part. (Hatching is interrupted for lettering: ISO 128-50.)
    pub(crate) free: f64,
}

/// The outline of a symbol.
pub(crate) fn outline(symbol: Symbol) -> Outline {
    let (contours, at, free) = match symbol {
        Symbol::ShellUpper => (vec![half_ring(1.8, FRAC_PI_2)], (1.0, 0.0), 0.0),
        Symbol::ShellLower => (vec![half_ring(-1.8, -FRAC_PI_2)], (-1.0, 0.0), 0.0),
        Symbol::Journal => (vec![circle(MIDDLE, 4.0)], MIDDLE, 2.1),
        Symbol::Housing => (vec![rectangle(MIDDLE, 8.0, 8.0), circle(MIDDLE, 2.7)], MIDDLE, 0.0),
        Symbol::Thrust => (vec![rectangle((-3.4, 0.0), 2.2, 8.0)], (-1.5, 0.0), 0.0),
        Symbol::Rod => (rod(), MIDDLE, 0.0),
        Symbol::Piston => (piston(), MIDDLE, 0.0),
        Symbol::Rings => (rings(), MIDDLE, 0.0),
        Symbol::Bore => (vec![circle(MIDDLE, 4.2), circle(MIDDLE, 2.4)], MIDDLE, 0.0),
        Symbol::Lobe => (vec![egg()], (0.0, 1.2), 1.75),
        Symbol::Tappet => (vec![tappet()], (3.2, -1.2), 0.0),
        Symbol::Pushrod => (pushrod(), MIDDLE, 0.0),
        Symbol::Bush => (vec![circle(MIDDLE, 4.0), circle(MIDDLE, 2.7)], MIDDLE, 0.0),
        Symbol::Item => (vec![rectangle(MIDDLE, 8.4, 6.4)], MIDDLE, 0.0),
    };
    Outline { contours, mark: Mark { at, free } }
}

const MIDDLE: Point = (0.0, 0.0);

/// A full circle.
pub(crate) fn circle(centre: Point, radius: f64) -> Vec<Point> {
    arc(centre, radius, 0.0, TAU).collect()
}

/// A rectangle by its middle, width and height.
pub(crate) fn rectangle((x, y): Point, width: f64, height: f64) -> Vec<Point> {
    let (w, h) = (width / 2.0, height / 2.0);
    vec![(x - w, y - h), (x + w, y - h), (x + w, y + h), (x - w, y + h)]
}

/// Points along an arc, so close that no corner shows at this size.
pub(crate) fn arc(centre: Point, radius: f64, from: f64, to: f64) -> impl DoubleEndedIterator<Item = Point> {
    const STEPS: u8 = 48;
    (0..=STEPS).map(move |step| {
        let angle = from + (to - from) * f64::from(step) / f64::from(STEPS);
        (centre.0 + radius * angle.cos(), centre.1 + radius * angle.sin())
    })
}

/// Half a bearing, open towards the journal at its side.
fn half_ring(x: f64, from: f64) -> Vec<Point> {
    let to = from + PI;
    arc((x, 0.0), 4.2, from, to).chain(arc((x, 0.0), 2.5, from, to).rev()).collect()
}

/// Small eye, shank, big eye; the big eye towards the crankshaft.
fn rod() -> Vec<Vec<Point>> {
    const SHANK: f64 = 0.85;
    let (small, big) = ((-3.3, 0.0), (2.0, 0.0));
    let small_eye = (SHANK / 1.7_f64).asin();
    let big_eye = (SHANK / 3.0_f64).asin();
    let body = arc(small, 1.7, small_eye, TAU - small_eye).chain(arc(big, 3.0, PI + big_eye, 3.0 * PI - big_eye));
    vec![body.collect(), circle(small, 0.8), circle(big, 1.7)]
}

/// Crown towards the bore, three ring grooves, the pin's hole.
fn piston() -> Vec<Vec<Point>> {
    const GROOVE: f64 = 0.75;
    const DEPTH: f64 = 0.8;
    let mut top = vec![(-4.0, -3.9)];
    for groove in [-2.9, -1.5, -0.1] {
        let floor = -3.9 + DEPTH;
        top.extend([(groove, -3.9), (groove, floor), (groove + GROOVE, floor), (groove + GROOVE, -3.9)]);
    }
    top.push((4.0, -3.9));
    let bottom: Vec<Point> = top.iter().rev().map(|(x, y)| (*x, -y)).collect();
    top.extend(bottom);
    vec![top, circle((2.2, 0.0), 1.15)]
}

/// Three rings seen from their edges.
fn rings() -> Vec<Vec<Point>> {
    [-2.7, 0.0, 2.7].map(|x| rectangle((x, 0.0), 1.5, 8.0)).into()
}

/// Base circle and nose, joined by their common tangents.
pub(crate) fn egg() -> Vec<Point> {
    let (base, nose) = ((0.0, 1.2), (0.0, -2.9));
    let (wide, narrow) = (3.0_f64, 1.2);
    // Where the tangents touch both circles, measured from the line that joins their centres.
    let touch = ((wide - narrow) / (base.1 - nose.1)).asin();
    arc(nose, narrow, PI + touch, TAU - touch).chain(arc(base, wide, -touch, PI + touch)).collect()
}

/// A stem on a foot.
fn tappet() -> Vec<Point> {
    vec![(-1.4, -4.0), (1.4, -4.0), (1.4, 1.6), (3.8, 1.6), (3.8, 4.0), (-3.8, 4.0), (-3.8, 1.6), (-1.4, 1.6)]
}

/// A thin rod between two balls.
fn pushrod() -> Vec<Vec<Point>> {
    const ROD: f64 = 0.7;
    let touch = (ROD / 1.5_f64).asin();
    let upper = arc((0.0, -2.7), 1.5, FRAC_PI_2 + touch, FRAC_PI_2 - touch + TAU);
    let lower = arc((0.0, 2.7), 1.5, touch - FRAC_PI_2, 3.0 * FRAC_PI_2 - touch);
    vec![upper.chain(lower).collect()]
}

#[cfg(test)]
mod tests {
    use super::*;

    const ALL: [Symbol; 14] = [
        Symbol::ShellUpper,
        Symbol::ShellLower,
        Symbol::Journal,
        Symbol::Housing,
        Symbol::Thrust,
        Symbol::Rod,
        Symbol::Piston,
        Symbol::Rings,
        Symbol::Bore,
        Symbol::Lobe,
        Symbol::Tappet,
        Symbol::Pushrod,
        Symbol::Bush,
        Symbol::Item,
    ];

    #[test]
    fn every_symbol_fits_its_cell_and_no_two_look_alike() {
        let drawn: Vec<_> = ALL.map(|symbol| format!("{:?}", outline(symbol).contours)).into();
        for (nth, symbol) in ALL.into_iter().enumerate() {
            for (x, y) in outline(symbol).contours.into_iter().flatten() {
                assert!(x.abs() <= 5.2 && y.abs() <= 4.25, "{symbol:?} reaches ({x}, {y})");
            }
            assert!(!drawn[..nth].contains(&drawn[nth]), "{symbol:?} looks like another");
        }
    }

    #[test]
    fn the_egg_is_smooth() {
        let egg = egg();
        let widest = egg.iter().map(|(x, _)| *x).fold(f64::MIN, f64::max);
        assert!((widest - 3.0).abs() < 0.01);
        let top = egg.iter().map(|(_, y)| *y).fold(f64::MAX, f64::min);
        assert!((top + 4.1).abs() < 0.01);
    }
}
