//! A part with its zones, the marked ones hatched by grade.

use std::f64::consts::PI;

use wearbook_core::document::ZoneDrawing;
use wearbook_core::view::Seen;
use wearbook_core::wear::{Zone, ZoneMap};

use super::Point;
use super::hatch::Ink;
use super::outline::{arc, circle, egg, rectangle};
use super::svg::{Anchor, Face, Svg};

/// The field of a drawing, millimetres.
const FIELD: (f64, f64) = (46.0, 27.0);

type Contours = Vec<Vec<Point>>;

/// Draws a part with its marked zones.
pub(crate) fn zones(drawing: &ZoneDrawing) -> String {
    let mut svg = Svg::default();
    let sketch = sketch(drawing.map);
    for (zone, contours) in &sketch.zones {
        let grade = drawing.marked.iter().find(|(marked, _)| marked == zone).map(|(_, grade)| *grade);
        let ink = grade.map_or(Ink::Blank, |grade| Ink::of(Seen::Worn, Some(grade)));
        svg.shape((0.0, 0.0), contours, ink);
    }
    for (at, words) in sketch.letters {
        svg.letters(at, Anchor::Middle, Face::Italic(2.5), words);
    }
    svg.finish(FIELD, 1.0)
}

/// The outlines of the zones, the later over the earlier, and the words beside them.
#[derive(Debug, Default)]
struct Sketch {
    zones: Vec<(Zone, Contours)>,
    letters: Vec<(Point, &'static str)>,
}

fn sketch(map: ZoneMap) -> Sketch {
    match map {
        ZoneMap::Shell => shell(),
        ZoneMap::ThrustFace => thrust_face(),
        ZoneMap::Journal => journal(),
        ZoneMap::Lobe => lobe(),
        ZoneMap::Tappet => tappet(),
        ZoneMap::Piston => piston(),
        ZoneMap::Bore => bore(),
        ZoneMap::None => Sketch::default(),
    }
}

/// Fields in rows, with a word beside each row and above each column.
fn grid<const N: usize>(rows: &[(&'static str, [Zone; N])], columns: [&'static str; N], cell: (f64, f64)) -> Sketch {
    const LEFT: f64 = 11.0;
    const TOP: f64 = 4.5;
    let mut sketch = Sketch::default();
    let x = |column: u8| LEFT + (f64::from(column) + 0.5) * cell.0;
    let y = |row: u8| TOP + (f64::from(row) + 0.5) * cell.1;
    for (row, (words, zones)) in (0u8..).zip(rows) {
        sketch.letters.push(((LEFT / 2.0, y(row)), words));
        let fields = (0u8..).zip(zones);
        sketch.zones.extend(fields.map(|(column, zone)| (*zone, vec![rectangle((x(column), y(row)), cell.0, cell.1)])));
    }
    sketch.letters.extend((0u8..).zip(columns).map(|(column, words)| ((x(column), TOP / 2.0), words)));
    sketch
}

/// The running face rolled out, and the back beside it.
fn shell() -> Sketch {
    use Zone::*;
    let rows = [
        ("front", [FrontLeft, FrontCrown, FrontRight]),
        ("middle", [MiddleLeft, MiddleCrown, MiddleRight]),
        ("rear", [RearLeft, RearCrown, RearRight]),
    ];
    let mut sketch = grid(&rows, ["left", "crown", "right"], (8.6, 7.2));
    sketch.zones.push((Back, vec![rectangle((42.0, 15.3), 6.0, 21.6)]));
    sketch.letters.push(((42.0, 2.2), "back"));
    sketch
}

/// The wall rolled out.
fn bore() -> Sketch {
    use Zone::*;
    let rows = [
        ("top", [TopThrust, TopFront, TopOpposite, TopRear]),
        ("middle", [MiddleThrust, MiddleFront, MiddleOpposite, MiddleRear]),
        ("bottom", [BottomThrust, BottomFront, BottomOpposite, BottomRear]),
    ];
    grid(&rows, ["thrust", "front", "opposite", "rear"], (8.6, 7.2))
}

fn thrust_face() -> Sketch {
    let half = |from: f64| {
        let (middle, to) = ((23.0, 13.5), from + PI);
        vec![arc(middle, 12.0, from, to).chain(arc(middle, 7.5, from, to).rev()).collect()]
    };
    Sketch { zones: vec![(Zone::FaceUpper, half(PI)), (Zone::FaceLower, half(0.0))], letters: vec![] }
}

/// From the side, its fillets as rims, the oil hole on top.
fn journal() -> Sketch {
    let band = |x: f64| vec![rectangle((x, 11.5), 11.0, 16.0)];
    let rim = |x: f64| rectangle((x, 11.5), 2.4, 21.0);
    Sketch {
        zones: vec![
            (Zone::JournalFront, band(12.0)),
            (Zone::JournalMiddle, band(23.0)),
            (Zone::JournalRear, band(34.0)),
            (Zone::Fillet, vec![rim(5.3), rim(40.7)]),
            (Zone::OilHole, vec![circle((23.0, 11.5), 2.8)]),
        ],
        letters: vec![((12.0, 24.8), "front"), ((34.0, 24.8), "rear")],
    }
}

/// From the front, and from the side with its two edges.
fn lobe() -> Sketch {
    const LARGER: f64 = 2.9;
    let egg: Vec<Point> = egg().into_iter().map(|(x, y)| (13.0 + LARGER * x, 13.0 + LARGER * y)).collect();
    let between = |from: f64, to: f64| vec![clipped(&clipped(&egg, |y| y - from), |y| to - y)];
    let edge = |x: f64| vec![rectangle((x, 13.0), 3.0, 22.0)];
    Sketch {
        zones: vec![
            (Zone::Nose, between(0.0, 7.0)),
            (Zone::Flanks, between(7.0, 17.0)),
            (Zone::BaseCircle, between(17.0, 27.0)),
            (Zone::LobeFrontEdge, edge(30.5)),
            (Zone::LobeRearEdge, edge(41.5)),
        ],
        letters: vec![((30.5, 25.5), "front"), ((41.5, 25.5), "rear")],
    }
}

/// A convex contour where a function of the height is not below zero.
fn clipped(contour: &[Point], inside: impl Fn(f64) -> f64) -> Vec<Point> {
    let mut kept = Vec::new();
    for (from, to) in contour.iter().zip(contour.iter().cycle().skip(1)) {
        let (a, b) = (inside(from.1), inside(to.1));
        if a >= 0.0 {
            kept.push(*from);
        }
        if (a < 0.0) != (b < 0.0) {
            let share = a / (a - b);
            kept.push((from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share));
        }
    }
    kept
}

/// The foot from below, the body with its plunger from the side.
fn tappet() -> Sketch {
    let middle = (12.0, 13.0);
    let ring = |inner: f64, outer: f64| vec![circle(middle, outer), circle(middle, inner)];
    Sketch {
        zones: vec![
            (Zone::FootEdge, ring(7.8, 11.0)),
            (Zone::FootRing, ring(3.4, 7.8)),
            (Zone::FootCentre, vec![circle(middle, 3.4)]),
            (Zone::Body, vec![rectangle((36.0, 15.0), 13.0, 19.0)]),
            (Zone::Plunger, vec![rectangle((36.0, 4.0), 6.0, 5.0)]),
        ],
        letters: vec![((12.0, 25.7), "foot"), ((36.0, 15.0), "body")],
    }
}

fn piston() -> Sketch {
    let skirt = |x: f64| vec![rectangle((x, 17.5), 11.0, 14.0)];
    Sketch {
        zones: vec![
            (Zone::Crown, vec![rectangle((23.0, 2.5), 22.0, 4.0)]),
            (Zone::RingLands, vec![rectangle((23.0, 7.5), 22.0, 6.0)]),
            (Zone::ThrustSkirt, skirt(17.5)),
            (Zone::OppositeSkirt, skirt(28.5)),
            (Zone::PinBosses, vec![circle((23.0, 15.5), 3.6)]),
        ],
        letters: vec![((6.0, 17.5), "thrust"), ((40.0, 17.5), "opposite")],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::wear::Grade;

    const MAPS: [ZoneMap; 7] = [
        ZoneMap::Shell,
        ZoneMap::ThrustFace,
        ZoneMap::Journal,
        ZoneMap::Lobe,
        ZoneMap::Tappet,
        ZoneMap::Piston,
        ZoneMap::Bore,
    ];

    #[test]
    fn every_zone_is_drawn_once_within_the_field() {
        for map in MAPS {
            let drawn: Vec<Zone> = sketch(map).zones.iter().map(|(zone, _)| *zone).collect();
            for zone in map.zones() {
                assert_eq!(drawn.iter().filter(|drawn| *drawn == zone).count(), 1, "{zone:?}");
            }
            assert_eq!(drawn.len(), map.zones().len());
            for (x, y) in sketch(map).zones.into_iter().flat_map(|(_, contours)| contours).flatten() {
                assert!((0.0..=FIELD.0).contains(&x) && (0.0..=FIELD.1).contains(&y), "{map:?} reaches ({x}, {y})");
            }
        }
    }

    #[test]
    fn a_marked_zone_shows() {
        for map in MAPS {
            let of = |marked: Vec<(Zone, Grade)>| zones(&ZoneDrawing { map, marked, alt: String::new() });
            let blank = of(vec![]);
            for zone in map.zones() {
                assert_ne!(of(vec![(*zone, Grade::ONE)]), blank, "{zone:?}");
                assert_ne!(of(vec![(*zone, Grade::FOUR)]), of(vec![(*zone, Grade::THREE)]), "{zone:?}");
            }
        }
    }

    #[test]
    fn the_bands_of_a_lobe_make_the_whole() {
        let area = |contour: &[Point]| -> f64 {
            let next = contour.iter().cycle().skip(1);
            contour.iter().zip(next).map(|((x1, y1), (x2, y2))| x1 * y2 - x2 * y1).sum::<f64>().abs() / 2.0
        };
        let parts: f64 = lobe().zones.iter().take(3).map(|(_, contours)| area(&contours[0])).sum();
        let whole: f64 = area(&egg()) * 2.9 * 2.9;
        assert!((parts - whole).abs() < 0.5, "{parts} of {whole}");
    }
}
