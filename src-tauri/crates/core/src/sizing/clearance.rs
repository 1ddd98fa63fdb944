//! The running clearance to expect at each position: worst case and root-sum-square, against the sheet.

use std::collections::BTreeSet;

use serde::Serialize;

use super::plan::{Action, GroupPlan, plan_of};
use super::words::rounded;
use crate::engine::{At, Half, Part, PartKind};
use crate::figure::Readings;
use crate::measure::{Bound, Bounds, Conformity, Length, Phase, Quantity};
use crate::sheet::{Limits, Proportions, SizeGroup, SizeRow};

/// A clearance to expect.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Predicted {
    /// The journal, rod or piston at which it runs.
    pub part: Part,
    /// Its name.
    pub label: String,
    /// The smallest and largest that can come together, in nanometres.
    pub worst_case: (Length, Length),
    /// The range within which it will almost surely lie, if every size varies by itself: root-sum-square, in nanometres.
    pub likely: (Length, Length),
    /// Both in words.
    pub worst_case_shown: String,
    /// The likely range in words.
    pub likely_shown: String,
    /// The limits in words; empty if there are none.
    pub limits: String,
    /// The worst case against the limits of a new clearance: *within* if every outcome is right, *outside* if none is,
    /// else *too close to call*: measure the new parts. None without limits.
    pub verdict: Option<Conformity>,
    /// Who sets the limits.
    pub source: String,
    /// Where each size comes from, in a sentence.
    pub because: String,
}

/// A clearance as ranges.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spread {
    /// The smallest and largest that can come together.
    pub worst_case: (Length, Length),
    /// The middle, give or take the root-sum-square of the half ranges; rounded outwards to a nanometre.
    pub likely: (Length, Length),
}

/// The clearance of a hole with things inside it: housing bore, two walls and a journal; bore and piston.
///
/// Worst case: the smallest hole less the largest insides, and the other way round. Root-sum-square: half ranges of
/// independent sizes add like the sides of a right angle (common practice in tolerance stacks).
pub fn running(hole: (Length, Length), inside: &[(Length, Length)]) -> Spread {
    let sum =
        |side: fn(&(Length, Length)) -> Length| inside.iter().map(side).fold(Length::default(), std::ops::Add::add);
    let low = hole.0 - sum(|range| range.1);
    let high = hole.1 - sum(|range| range.0);
    // In doubled nanometres nothing is lost until the end.
    let twice_middle = low + high;
    let widths = inside.iter().map(|range| range.1 - range.0).chain([hole.1 - hole.0]);
    let twice_half = Length::root_sum_square(widths);
    let floor = |length: Length| Length::from_nanometres(length.nanometres().div_euclid(2));
    let likely = (floor(twice_middle - twice_half), -floor(-(twice_middle + twice_half)));
    Spread { worst_case: (low, high), likely: (likely.0.max(low), likely.1.min(high)) }
}

/// A range of a size with the word for where it comes from.
type Known = ((Length, Length), &'static str);

/// The clearances of all bearings and pistons for which the sizes are known. Of what is replaced the old part’s reading
/// tells nothing.
pub(crate) fn clearances(readings: &Readings<'_>, plans: &[GroupPlan], replaced: &BTreeSet<Part>) -> Vec<Predicted> {
    // Bearing by bearing along the crankshaft, then the pistons.
    let of = |kind: PartKind| readings.engine.parts().iter().filter(move |part| part.kind == kind);
    [PartKind::MainJournal, PartKind::Rod, PartKind::Piston]
        .into_iter()
        .flat_map(of)
        .filter_map(|part| match part.kind {
            PartKind::MainJournal => bearing(readings, plan_of(plans, SizeGroup::Mains)?, *part, *part),
            PartKind::Rod => {
                let At::Cylinder(cylinder) = part.at else { return None };
                let pin = readings.engine.arrangement().crankpin_of(cylinder);
                let pin = Part { kind: PartKind::Crankpin, at: At::Crankpin(pin) };
                bearing(readings, plan_of(plans, SizeGroup::Crankpins)?, pin, *part)
            }
            PartKind::Piston => piston(readings, plan_of(plans, SizeGroup::Bores)?, *part, replaced.contains(part)),
            _ => None,
        })
        .collect()
}

fn bearing(readings: &Readings<'_>, plan: &GroupPlan, journal: Part, at: Part) -> Option<Predicted> {
    let row = row_of(readings, plan, journal)?;
    let (housing, bore) = match at.at {
        At::Main(n) => (Part { kind: PartKind::HousingBore, at: At::Main(n) }, Quantity::Diameter),
        _ => (at, Quantity::BigEndBore),
    };
    let shell = |half| Part {
        kind: plan.group.mate(),
        at: match at.at {
            At::Main(n) => At::MainHalf(n, half),
            At::Cylinder(n) => At::CylinderHalf(n, half),
            other => other,
        },
    };
    // The new shells, once they are measured; else the wall that the sheet gives their size.
    let wall = |half| {
        let new = readings.value(shell(half), Quantity::Wall, Phase::Fitted, None);
        new.map(|value| ((value.low, value.high), "measured")).or(row.mate.map(|mate| (mate, "by the sheet")))
    };
    let shaft = shaft(readings, plan, journal, row.diameter)?;
    let hole = || measured(readings, housing, bore, Phase::Machined).or_else(|| from_sheet(readings, housing, bore));
    let fitted = readings.value(journal, Quantity::BearingBore, Phase::Fitted, None);
    let (spread, because) = if let Some(value) = fitted {
        let because = format!("Fitted bearing measured, journal {}.", shaft.1);
        (running((value.low, value.high), &[shaft.0]), because)
    } else if let (Some(hole), Some(upper), Some(lower)) = (hole(), wall(Half::Upper), wall(Half::Lower)) {
        let because = format!("Housing {}, shells {}, journal {}.", hole.1, upper.1, shaft.1);
        (running(hole.0, &[upper.0, lower.0, shaft.0]), because)
    } else {
        // The sheet gives the bore of a standard bearing; that of an undersize is as much smaller.
        let ((min, max), _) = from_sheet(readings, journal, Quantity::BearingBore)?;
        let because = format!("Fitted bearing by the sheet, journal {}.", shaft.1);
        (running((min - row.size, max - row.size), &[shaft.0]), because)
    };
    Some(judged(readings, journal, at, spread, because, new_bounds))
}

fn piston(readings: &Readings<'_>, plan: &GroupPlan, piston: Part, is_replaced: bool) -> Option<Predicted> {
    let bore = Part { kind: PartKind::Bore, at: piston.at };
    let row = row_of(readings, plan, bore)?;
    let hole = shaft(readings, plan, bore, row.diameter)?;
    // A used piston that stays in its used bore is held against how far the two may wear.
    let is_used = !is_replaced && plan.machined().all(|own| own.part != bore);
    let new = readings.value(piston, Quantity::Diameter, Phase::Fitted, None);
    let stays = !is_replaced && plan.action != Action::Machine;
    let kept = stays.then(|| measured(readings, piston, Quantity::Diameter, Phase::Found));
    let skirt = new
        .map(|value| ((value.low, value.high), "measured"))
        .or(kept.flatten())
        .or(row.mate.map(|mate| (mate, "by the sheet")))?;
    let spread = running(hole.0, &[skirt.0]);
    let because = format!("Bore {}, piston {}.", hole.1, skirt.1);
    let bounds = if is_used && new.is_none() { |limits: &Limits| limits.bounds } else { new_bounds };
    Some(judged(readings, piston, piston, spread, because, bounds))
}

/// The size that a part of the group will have: that of its shells for slight wear, else that of the plan.
fn row_of(readings: &Readings<'_>, plan: &GroupPlan, part: Part) -> Option<SizeRow> {
    let sheet = &readings.job.sheet;
    let size = plan.size?;
    let mine = plan.parts.iter().find(|own| own.part == part)?;
    if plan.action == Action::UndersizeShells && mine.mate != plan.size {
        return sheet.series(plan.group).into_iter().find(|row| Some(row.size) == mine.mate);
    }
    sheet.row(plan.group, size)
}

/// A journal or bore as it will run: as machined once that is measured, as found if it stays, else the sheet's range.
fn shaft(readings: &Readings<'_>, plan: &GroupPlan, part: Part, planned: (Length, Length)) -> Option<Known> {
    if plan.machined().any(|own| own.part == part) {
        let machined = readings.value(part, Quantity::Diameter, Phase::Machined, None);
        return Some(machined.map_or((planned, "by the sheet"), |value| ((value.low, value.high), "measured")));
    }
    measured(readings, part, Quantity::Diameter, Phase::Machined)
}

fn measured(readings: &Readings<'_>, part: Part, quantity: Quantity, until: Phase) -> Option<Known> {
    let phase = readings.latest(part, quantity, until)?;
    let value = readings.value(part, quantity, phase, None)?;
    Some(((value.low, value.high), "measured"))
}

fn from_sheet(readings: &Readings<'_>, part: Part, quantity: Quantity) -> Option<Known> {
    let (min, max) = readings.job.sheet.new_range(part, quantity);
    Some(((min.or(max)?, max.or(min)?), "by the sheet"))
}

/// Against the limits of a new clearance; where the sheet gives but a wear limit, against that.
fn judged(
    readings: &Readings<'_>,
    limited: Part,
    at: Part,
    spread: Spread,
    because: String,
    bounds: fn(&Limits) -> Bounds,
) -> Predicted {
    let limits = readings.job.sheet.limits(limited, Quantity::Clearance, "", None, Proportions::default());
    let bounds = limits.as_ref().map(bounds).filter(|bounds| *bounds != Bounds::default());
    let (low, high) = spread.worst_case;
    let at_once = |length| Conformity::of(length, length, Length::default(), &bounds.unwrap_or_default());
    let verdict = bounds.map(|bounds| {
        let whole = Conformity::of(low, high, Length::default(), &bounds);
        let beyond = bounds.most.is_some_and(|most| low > most.at) || bounds.least.is_some_and(|least| high < least.at);
        match whole {
            Conformity::Within => Conformity::Within,
            _ if beyond && at_once(low) == Conformity::Outside => Conformity::Outside,
            _ => Conformity::TooClose,
        }
    });
    let label = match at.at {
        At::Main(n) => format!("Main {n}"),
        _ => readings.engine.label(at),
    };
    Predicted {
        part: at,
        label,
        worst_case: spread.worst_case,
        likely: spread.likely,
        worst_case_shown: rounded(spread.worst_case, readings),
        likely_shown: rounded(spread.likely, readings),
        limits: bounds.map_or_else(String::new, |bounds| crate::measure::limits_in_unit(&bounds, readings.unit())),
        verdict,
        source: limits.map_or_else(String::new, |limits| limits.source),
        because,
    }
}

fn new_bounds(limits: &Limits) -> Bounds {
    match limits.new {
        (None, None) => limits.bounds,
        (min, max) => Bounds { least: min.map(Bound::including), most: max.map(Bound::including) },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn tenths(low: i64, high: i64) -> (Length, Length) {
        (Length::from_nanometres(low * 1_270), Length::from_nanometres(high * 1_270))
    }

    #[track_caller]
    fn stack(hole: (i64, i64), wall: (i64, i64), journal: (i64, i64), worst: (i64, i64)) {
        let wall = tenths(wall.0, wall.1);
        let spread = running(tenths(hole.0, hole.1), &[wall, wall, tenths(journal.0, journal.1)]);
        assert_eq!(spread.worst_case, tenths(worst.0, worst.1));
    }

    // TM 5-4320-300-14 with TM 5-3895-346-14: bore 3.251 to 3.252, wall 0.1245 to 0.1250, journal 2.999 to 3.000, printed
    // clearance 0.0010 to 0.0040 in; the same for the 0.010 undersize. In half ten-thousandths.
    #[test]
    fn the_printed_clearance_comes_out() {
        stack((65_020, 65_040), (2_490, 2_500), (59_980, 60_000), (20, 80));
        stack((65_020, 65_040), (2_590, 2_600), (59_780, 59_800), (20, 80));
    }

    proptest! {
        #[test]
        fn what_is_likely_lies_within_what_is_possible(
            hole in 0i64..1000, width in 0i64..50, wall in 0i64..100, thicker in 0i64..20, shaft in 0i64..800, larger in 0i64..50,
        ) {
            let range = |low: i64, width: i64| (Length::from_nanometres(low), Length::from_nanometres(low + width));
            let wall = range(wall, thicker);
            let spread = running(range(hole, width), &[wall, wall, range(shaft, larger)]);
            prop_assert!(spread.worst_case.0 <= spread.likely.0 && spread.likely.1 <= spread.worst_case.1);
            prop_assert!(spread.likely.0 <= spread.likely.1);
        }
    }
}
