//! What every picture must hold to; whether it looks right is for the eye (`examples/draw_sheet.rs`).

use super::field::Outline;
use super::raster::Raster;
use super::scene::FACE;
use super::*;

/// Small pictures keep the tests quick; the scene is the same at any size.
const SMALL: (u32, u32) = (320, 240);

const MIDDLE: ShellZone = ShellZone { across: Across::Middle, around: Around::Crown };

fn small(subject: &Subject, seed: u64) -> RgbImage {
    draw_sized(subject, seed, SMALL.0, SMALL.1)
}

/// One tag; no grade, no tag.
fn worn<Z>(kind: Kind, grade: Option<u8>, zone: Z) -> Vec<Wear<Z>> {
    grade.map(|grade| Wear { kind, grade, zone }).into_iter().collect()
}

fn lower(wear: Vec<Wear<ShellZone>>) -> Subject {
    Subject::Shell { half: Half::Lower, back: false, wear }
}

fn clean() -> Vec<Subject> {
    vec![
        lower(Vec::new()),
        Subject::Shell { half: Half::Upper, back: false, wear: Vec::new() },
        Subject::Shell { half: Half::Upper, back: true, wear: Vec::new() },
        Subject::Journal { wear: Vec::new() },
        Subject::Tappet { wear: Vec::new() },
        Subject::Lobe { wear: Vec::new() },
        Subject::Piston { wear: Vec::new() },
        Subject::Bore { wear: Vec::new() },
    ]
}

/// The mean difference of two pictures over the pixels that `counts` picks, in steps of 0 to 255.
fn difference(a: &RgbImage, b: &RgbImage, counts: impl Fn(u32, u32) -> bool) -> f64 {
    let (mut sum, mut count) = (0.0, 0.0f64);
    for ((x, y, one), other) in a.enumerate_pixels().zip(b.pixels()) {
        if counts(x, y) {
            sum += one.0.iter().zip(other.0).map(|(p, q)| f64::from(p.abs_diff(q))).sum::<f64>() / 3.0;
            count += 1.0;
        }
    }
    sum / count.max(1.0)
}

/// Draws a subject sound, at grade 1 and at grade 4, and compares.
#[track_caller]
fn check_grows(kind: Kind, subject: impl Fn(Option<u8>) -> Subject, outline: impl Fn(mesh::Spot) -> Outline) {
    let seed = 11;
    let [sound, slight, severe] = [None, Some(1), Some(4)].map(|grade| small(&subject(grade), seed));
    let everywhere = |_, _| true;
    let (slight, grown) = (difference(&sound, &slight, everywhere), difference(&sound, &severe, everywhere));
    assert!(slight > 0.0, "{kind:?} of grade 1 can't be seen");
    assert!(grown > slight, "{kind:?} does not grow: {slight} at grade 1, {grown} at grade 4");

    let scene = scene(&subject(None), &Seed::new(seed), SMALL);
    let raster = Raster::new(&scene.mesh, &scene.camera, SMALL.0, SMALL.1);
    let outline = outline(scene.sheets[FACE].size);
    let inside = |x, y| scene.face_at(&raster, x, y).is_some_and(|spot| outline.holds(spot));
    let (zone, rest) = (difference(&sound, &severe, inside), difference(&sound, &severe, |x, y| !inside(x, y)));
    assert!(zone > 2.0 * rest, "{kind:?} strays: {zone} in its zone, {rest} outside");
}

#[test]
fn the_same_seed_gives_the_same_bytes_and_another_seed_another_photograph() {
    for subject in clean() {
        let once = small(&subject, 5);
        assert_eq!(jpeg(&once).unwrap(), jpeg(&small(&subject, 5)).unwrap(), "{subject:?}");
        let apart = difference(&once, &small(&subject, 6), |_, _| true);
        assert!(apart > 5.0, "{subject:?} looks the same for two seeds: {apart}");
    }
}

#[test]
fn every_kind_grows_with_its_grade_and_stays_in_its_zone() {
    for kind in Kind::ALL {
        check_grows(kind, |grade| lower(worn(kind, grade, MIDDLE)), |size| MIDDLE.outline(size));
    }
}

#[test]
fn wear_on_other_parts_grows_and_stays_in_its_zone() {
    let front = ShellZone { across: Across::Front, around: Around::Crown };
    let back = |wear| Subject::Shell { half: Half::Lower, back: true, wear };
    check_grows(Kind::BrightBack, |g| back(worn(Kind::BrightBack, g, front)), |size| front.outline(size));

    let journal = |g| Subject::Journal { wear: worn(Kind::Scoring, g, JournalZone::Rear) };
    check_grows(Kind::Scoring, journal, |size| JournalZone::Rear.outline(size));

    let tappet = |g| Subject::Tappet { wear: worn(Kind::Spalling, g, TappetZone::Centre) };
    check_grows(Kind::Spalling, tappet, |size| TappetZone::Centre.outline(size));

    let lobe = |g| Subject::Lobe { wear: worn(Kind::Pitting, g, LobeZone::NearFlank) };
    check_grows(Kind::Pitting, lobe, |size| LobeZone::NearFlank.outline(size));

    let piston = |g| Subject::Piston { wear: worn(Kind::Scuffing, g, PistonZone::SkirtFoot) };
    check_grows(Kind::Scuffing, piston, |size| PistonZone::SkirtFoot.outline(size));

    let bore = |g| Subject::Bore { wear: worn(Kind::Scuffing, g, BoreZone::Top) };
    check_grows(Kind::Scuffing, bore, |size| BoreZone::Top.outline(size));
}

#[test]
fn neighbouring_zones_with_the_same_wear_make_one_patch() {
    let size = scene::spot(90.0, 25.0);
    let outline = |across, around| ShellZone { across, around }.outline(size);
    let crown = |across| outline(across, Around::Crown);
    let column = crown(Across::Front).joined(crown(Across::Middle)).and_then(|two| two.joined(crown(Across::Rear)));
    assert!(column.is_some_and(|all| all.holds(scene::spot(45.0, 1.0)) && all.holds(scene::spot(45.0, 24.0))));
    let corner = outline(Across::Rear, Around::LeftEdge);
    assert!(crown(Across::Front).joined(corner).is_none(), "zones that meet at a corner only stay apart");
    assert!(crown(Across::Front).joined(crown(Across::Rear)).is_none(), "zones with another between stay apart");
}

#[test]
fn everything_at_once_in_every_zone_still_draws() {
    fn all<Z: Copy>(zones: impl IntoIterator<Item = Z>) -> Vec<Wear<Z>> {
        let zones: Vec<Z> = zones.into_iter().collect();
        // Grades out of range are taken as the nearest.
        let grades = [0, 2, 4, 255];
        let tags = Kind::ALL.into_iter().zip(grades.into_iter().cycle()).enumerate();
        // Each zone gets every third kind, each in turn: all of both, in a third of the time.
        tags.flat_map(|(number, (kind, grade))| {
            let some = zones.iter().skip(number % zones.len().min(3)).step_by(3);
            some.map(move |zone| Wear { kind, grade, zone: *zone })
        })
        .collect()
    }
    let mut subjects = vec![
        Subject::Journal { wear: all(JournalZone::ALL) },
        Subject::Tappet { wear: all(TappetZone::ALL) },
        Subject::Lobe { wear: all(LobeZone::ALL) },
        Subject::Piston { wear: all(PistonZone::ALL) },
        Subject::Bore { wear: all(BoreZone::ALL) },
    ];
    for half in [Half::Upper, Half::Lower] {
        for back in [false, true] {
            subjects.push(Subject::Shell { half, back, wear: all(ShellZone::all()) });
        }
    }
    for subject in subjects {
        let picture = draw_sized(&subject, 3, 64, 48);
        let dark = picture.pixels().filter(|p| p.0.iter().all(|c| *c < 8)).count();
        assert!(dark < 64 * 48 / 2, "{subject:?} came out dark");
    }
}

#[test]
fn a_picture_of_no_size_is_one_pixel() {
    assert_eq!(draw_sized(&lower(Vec::new()), 1, 0, 0).dimensions(), (1, 1));
}

#[test]
fn photographs_have_the_size_and_weight_of_a_phones() {
    for (seed, subject) in (20..).zip(clean()) {
        let picture = draw(&subject, seed);
        assert_eq!(picture.dimensions(), (WIDTH, HEIGHT));
        let bytes = jpeg(&picture).unwrap().len();
        assert!((120_000..=380_000).contains(&bytes), "{subject:?}: {bytes} bytes");
    }
}
