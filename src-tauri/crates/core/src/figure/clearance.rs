//! Running clearances: housing less shells less journal, bore less piston, tappet bore less tappet, bearing less cam journal, body
//! of a pump less its gears, bush less shaft.

use super::{Bench, Figure, Value};
use crate::engine::{At, Half, Part, PartKind};
use crate::measure::{Length, Phase, Quantity};
use crate::sheet::Proportions;

/// The clearance from what was measured in a phase; none if it was read directly or a size is missing.
pub(super) fn figure(bench: Bench<'_>, part: Part, quantity: Quantity) -> Option<Figure> {
    if bench.readings.quantity(part, quantity, bench.phase).next().is_some() {
        return None;
    }
    let value = match part.kind {
        PartKind::MainJournal | PartKind::Crankpin => bearing(bench, part)?,
        PartKind::Piston => between(
            bench,
            (Part { kind: PartKind::Bore, at: part.at }, Quantity::Diameter),
            (part, Quantity::Diameter),
        )?,
        PartKind::Tappet => between(
            bench,
            (Part { kind: PartKind::TappetBore, at: part.at }, Quantity::Diameter),
            (part, Quantity::Diameter),
        )?,
        PartKind::CamJournal => between(
            bench,
            (Part { kind: PartKind::CamBearing, at: part.at }, Quantity::Diameter),
            (part, Quantity::Diameter),
        )?,
        PartKind::PumpGears => {
            let body = Part { kind: PartKind::PumpBody, at: part.at };
            let (hole, gear) = match quantity {
                Quantity::EndClearance => (Quantity::Depth, Quantity::Length),
                _ => (Quantity::Diameter, Quantity::Diameter),
            };
            between(bench, (body, hole), (part, gear))?
        }
        PartKind::AuxiliaryBushes => between(
            bench,
            (part, Quantity::Diameter),
            (Part { kind: PartKind::AuxiliaryShaft, at: part.at }, Quantity::Diameter),
        )?,
        _ => return None,
    };
    Some(bench.judge(part, quantity, "", None, value, Proportions::default()))
}

/// The clearance of a piston pin: in the piston, or in the small end of the rod of its cylinder.
pub(super) fn pin(bench: Bench<'_>, part: Part) -> Option<Figure> {
    if bench.readings.quantity(part, Quantity::PinClearance, bench.phase).next().is_some() {
        return None;
    }
    let pin = (Part { kind: PartKind::Piston, at: part.at }, Quantity::PinDiameter);
    let hole = if part.kind == PartKind::Rod { Quantity::SmallEndBore } else { Quantity::PinBore };
    let value = between(bench, (part, hole), pin)?;
    Some(bench.judge(part, Quantity::PinClearance, "", None, value, Proportions::default()))
}

/// What was measured of a size up to this phase. A part that this phase renews or machines counts only as it is then.
fn size(bench: Bench<'_>, part: Part, quantity: Quantity) -> Option<Value> {
    let renewed = part.kind.row().always_renewed;
    let phase = if renewed || bench.phase == Phase::Found {
        bench.phase
    } else {
        bench.readings.latest(part, quantity, bench.phase)?
    };
    bench.readings.value(part, quantity, phase, None)
}

/// An inside less an outside size. Worn parts have ranges: the smallest clearance is where the hole is smallest and the
/// shaft largest.
fn between(bench: Bench<'_>, hole: (Part, Quantity), shaft: (Part, Quantity)) -> Option<Value> {
    if ![hole, shaft].iter().any(|(part, quantity)| read_now(bench, *part, *quantity)) {
        return None;
    }
    Some(less(size(bench, hole.0, hole.1)?, &[size(bench, shaft.0, shaft.1)?]))
}

/// Housing bore less two walls less journal (ISO 3548 terms; the identity of TM 5-4320-300-14).
fn bearing(bench: Bench<'_>, journal: Part) -> Option<Value> {
    // The bore of the fitted bearing says it all, if it was measured.
    if let Some(value) = between(bench, (journal, Quantity::BearingBore), (journal, Quantity::Diameter)) {
        return Some(value);
    }
    let (housing, shells) = seats(bench, journal)?;
    let now = |part: &Part, quantity| read_now(bench, *part, quantity);
    if !(now(&journal, Quantity::Diameter) || shells.iter().any(|shell| now(shell, Quantity::Wall))) {
        return None;
    }
    let walls: Vec<Value> = shells.iter().filter_map(|shell| size(bench, *shell, Quantity::Wall)).collect();
    // Both halves are of one set: where only one was measured, it stands for both.
    let (upper, lower) = match walls.as_slice() {
        [both] => (*both, *both),
        [upper, lower, ..] => (*upper, *lower),
        [] => return None,
    };
    Some(less(size(bench, housing.0, housing.1)?, &[upper, lower, size(bench, journal, Quantity::Diameter)?]))
}

/// The housing and the two shells around a journal. On a crankpin with two rods the first rod's are taken that were
/// measured.
fn seats(bench: Bench<'_>, journal: Part) -> Option<((Part, Quantity), [Part; 2])> {
    let halves = [Half::Upper, Half::Lower];
    match journal.at {
        At::Main(n) => Some((
            (Part { kind: PartKind::HousingBore, at: At::Main(n) }, Quantity::Diameter),
            halves.map(|half| Part { kind: PartKind::MainShell, at: At::MainHalf(n, half) }),
        )),
        At::Crankpin(pin) => {
            let cylinders = bench.readings.engine.arrangement().cylinders_on_crankpin(pin);
            let rod = |n: u8| {
                let rod = Part { kind: PartKind::Rod, at: At::Cylinder(n) };
                let shells = halves.map(|half| Part { kind: PartKind::RodShell, at: At::CylinderHalf(n, half) });
                ((rod, Quantity::BigEndBore), shells)
            };
            let measured = |n: &&u8| size(bench, rod(**n).0.0, Quantity::BigEndBore).is_some();
            cylinders.iter().find(measured).or(cylinders.first()).map(|n| rod(*n))
        }
        _ => None,
    }
}

fn read_now(bench: Bench<'_>, part: Part, quantity: Quantity) -> bool {
    bench.readings.quantity(part, quantity, bench.phase).next().is_some()
}

/// A hole less what is in it.
fn less(hole: Value, inside: &[Value]) -> Value {
    let sum = |side: fn(&Value) -> Length| inside.iter().map(side).fold(Length::default(), std::ops::Add::add);
    Value {
        low: hole.low - sum(|value| value.high),
        high: hole.high - sum(|value| value.low),
        uncertainty: Length::root_sum_square(inside.iter().map(|value| value.uncertainty).chain([hole.uncertainty])),
        step: inside.iter().map(|value| value.step).chain([hole.step]).max().unwrap_or_default(),
        low_at: hole.low_at,
        high_at: hole.high_at,
    }
}
