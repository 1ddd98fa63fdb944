//! Uncertainty arithmetic held against the Python package `uncertainties`, on random sizes. Skipped where no Python has it
//! (Debian: python3-uncertainties; `scripts/setup tests` installs it).
#![allow(clippy::unwrap_used, reason = "a test may stop at once")]

use std::collections::BTreeMap;
use std::io::Write;
use std::process::{Command, Stdio};

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use serde_json::json;
use wearbook_core::assess::assess;
use wearbook_core::engine::Arrangement;
use wearbook_core::job::{DeviceId, Edit, EditId, Job};
use wearbook_core::measure::{Direction, Grid, Length, Quantity, Spot, Station};
use wearbook_core::sizing::running;

/// A size in nanometres with its uncertainty, or half the range in which it lies.
type Size = (i64, i64);

/// Computes each expression of sizes named a, b, c, d; prints the versions and each result with its uncertainty.
const SCRIPT: &str = "
import json, platform, sys, uncertainties
results = []
for task in json.load(sys.stdin):
    sizes = {name: uncertainties.ufloat(*size) for name, size in zip('abcd', task['sizes'])}
    result = eval(task['of'], {}, sizes)
    results.append([result.nominal_value, result.std_dev])
json.dump({'versions': [platform.python_version(), uncertainties.__version__], 'results': results}, sys.stdout)
";

/// A Python that has the package: Debian’s is not always the first on the path.
fn python() -> Option<&'static str> {
    let has = |python: &&str| {
        let import = Command::new(python).args(["-c", "import uncertainties"]).stderr(Stdio::null()).status();
        import.is_ok_and(|status| status.success())
    };
    ["python3", "/usr/bin/python3"].into_iter().find(has)
}

/// What the package makes of each expression.
fn worked_out(python: &str, tasks: &[(&str, Vec<Size>)]) -> Vec<(f64, f64)> {
    let tasks: Vec<_> = tasks.iter().map(|(of, sizes)| json!({ "of": of, "sizes": sizes })).collect();
    let mut child =
        Command::new(python).args(["-c", SCRIPT]).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().unwrap();
    child.stdin.take().unwrap().write_all(json!(tasks).to_string().as_bytes()).unwrap();
    let output = child.wait_with_output().unwrap();
    assert!(output.status.success(), "Python failed");
    let answer: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    println!("Python and uncertainties: {}", answer.get("versions").unwrap());
    serde_json::from_value(answer.get("results").unwrap().clone()).unwrap()
}

fn length(nanometres: i64) -> Length {
    Length::from_nanometres(nanometres)
}

fn at(station: Station) -> Spot {
    Spot::new(Some(station), Some(Direction::A))
}

/// Housing, upper wall, lower wall, journal: with an even half range, so that halves are whole.
fn stacks() -> Vec<Vec<Size>> {
    let size = |about: i64| (about..about + 100_000, 0i64..30_000);
    let stack = (size(82_000_000), size(3_100_000), size(3_100_000), size(75_500_000));
    let mut runner = TestRunner::deterministic();
    let mut draw = || stack.new_tree(&mut runner).unwrap().current();
    (0..300).map(|_| draw()).map(|(a, b, c, d)| vec![a, b, c, d]).collect()
}

/// The program rounds to whole nanometres, an uncertainty always up.
#[track_caller]
fn rounded_up(ours: Length, theirs: f64) {
    let above = ours.nanometres() as f64 - theirs;
    assert!((-1e-6..1.0 + 1e-6).contains(&above), "{ours:?} beside {theirs}");
}

#[test]
fn clearances_to_expect_spread_as_the_package_says() {
    let Some(python) = python() else {
        println!("skipped: no Python here has the package “uncertainties”");
        return;
    };
    let stacks = stacks();
    let tasks: Vec<_> = stacks.iter().map(|sizes| ("a - b - c - d", sizes.clone())).collect();
    for (sizes, (middle, half)) in stacks.iter().zip(worked_out(python, &tasks)) {
        let ranges: Vec<_> =
            sizes.iter().map(|(middle, half)| (length(middle - half), length(middle + half))).collect();
        let [hole, inside @ ..] = ranges.as_slice() else { continue };
        let spread = running(*hole, inside);
        rounded_up(spread.likely.1, middle + half);
        rounded_up(-spread.likely.0, half - middle);
    }
}

#[test]
fn form_is_as_uncertain_as_the_package_says() {
    let Some(python) = python() else {
        println!("skipped: no Python here has the package “uncertainties”");
        return;
    };
    let stacks = stacks();
    let mut tasks = Vec::new();
    let mut ours = Vec::new();
    for sizes in &stacks {
        let [_, (b, ub), (c, uc), (d, ud)] = *sizes.as_slice() else { continue };
        let d = d - 72_400_000;
        let sizes = vec![(b, ub), (c, uc), (d, ud)];
        let grid = |spots: [Spot; 3]| {
            let readings = spots.into_iter().zip(&sizes).map(|(spot, (value, u))| (spot, (length(*value), length(*u))));
            Grid(readings.collect::<BTreeMap<_, _>>())
        };
        let along = grid([at(Station::Front), at(Station::Middle), at(Station::Rear)]);
        let barrel = along.barrel().unwrap();
        tasks.push(("b - (a + c) / 2", sizes.clone()));
        ours.push(barrel);
        tasks.push((if b < d { "c - a" } else { "a - c" }, sizes.clone()));
        ours.push(along.taper(true).unwrap());
        let across = Grid(
            [
                (at(Station::Front), (length(b), length(ub))),
                (Spot::new(Some(Station::Front), Some(Direction::B)), (length(c), length(uc))),
            ]
            .into(),
        );
        tasks.push((if b < c { "b - a" } else { "a - b" }, sizes));
        ours.push(across.out_of_round().unwrap());
    }
    assert_eq!(ours.len(), 900);
    for (form, (value, uncertainty)) in ours.iter().zip(worked_out(python, &tasks)) {
        assert!((form.value.nanometres() as f64 - value).abs() <= 0.5, "{form:?} beside {value}");
        // Halves of an odd uncertainty are rounded before they are added.
        let above = form.uncertainty.nanometres() as f64 - uncertainty;
        assert!((-1e-6..2.0).contains(&above), "{form:?} beside {uncertainty}");
    }
}

/// From readings with four instruments to the clearance of a main bearing.
#[test]
fn a_clearance_from_readings_is_as_uncertain_as_the_package_says() {
    let Some(python) = python() else {
        println!("skipped: no Python here has the package “uncertainties”");
        return;
    };
    let stacks = stacks();
    let tasks: Vec<_> = stacks.iter().map(|sizes| ("a - b - c - d", sizes.clone())).collect();
    let parts = [
        ("housing-bore.1", "diameter"),
        ("main-shell.1.upper", "wall"),
        ("main-shell.1.lower", "wall"),
        ("main-journal.1", "diameter"),
    ];
    let text = |nanometres: i64| format!("{}.{:06} mm", nanometres / 1_000_000, nanometres % 1_000_000);
    for (sizes, (value, uncertainty)) in stacks.iter().zip(worked_out(python, &tasks)).take(40) {
        let mut changes = vec![json!({ "do": "arrange", "arrangement": Arrangement::inline(1) })];
        for (n, (size, u)) in sizes.iter().enumerate() {
            let (part, quantity) = parts.get(n).unwrap();
            let id = format!("i{n}");
            changes.push(json!({ "do": "note-instrument", "instrument": { "id": id, "name": "one", "kind": "other", "resolution": "1 µm", "uncertainty": text(*u) } }));
            changes.push(json!({ "do": "measure", "reading": { "part": part, "quantity": quantity, "value": text(*size), "instrument": id } }));
        }
        let edit = |(n, change): (usize, serde_json::Value)| Edit {
            id: EditId::next(None, n as u64, DeviceId(1)),
            change: serde_json::from_value(change).unwrap(),
        };
        let edits: Vec<Edit> = changes.into_iter().enumerate().map(edit).collect();
        let assessment = assess(&Job::fold(&edits));
        let figures = assessment
            .parts
            .iter()
            .filter(|view| view.part.to_string() == "main-journal.1")
            .flat_map(|view| &view.figures);
        let clearance = figures.into_iter().find(|figure| figure.quantity == Quantity::Clearance).unwrap();
        assert!((clearance.low.nanometres() as f64 - value).abs() < 0.5, "{clearance:?} beside {value}");
        rounded_up(clearance.uncertainty, uncertainty);
    }
}

/// An uncertainty budget, own arithmetic (JCGM 100): limit of error 2 µm and temperature 1 K on 60 mm of steel, both
/// rectangular, resolution 1 µm, repeatability 0.7 µm: together 1.437 µm.
#[test]
fn a_budget_adds_up() {
    // A rectangular spread counts with its half width over the root of three.
    let rectangular = |half_width: i64| Length::from_nanometres(half_width).times(100_000, 173_205);
    let repeatability = Length::from_nanometres(700);
    let spreads = [rectangular(2_000), rectangular(500), repeatability, rectangular(690)];
    let together = Length::root_sum_square(spreads);
    assert_eq!(together.nanometres(), 1_438, "1.437 µm, rounded up");
}
