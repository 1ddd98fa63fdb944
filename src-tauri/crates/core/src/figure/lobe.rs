//! Lift of the cam lobes and its spread over the camshaft.

use super::{Bench, Figure, Value};
use crate::engine::{At, Part, PartKind, Port};
use crate::measure::{Length, Quantity, Spot};
use crate::sheet::Proportions;

/// Lobe lift: height less base circle (TM 5-3805-248-23-2).
pub(super) fn lift(bench: Bench<'_>, part: Part) -> Option<Figure> {
    if bench.readings.quantity(part, Quantity::Lift, bench.phase).next().is_some() {
        return None;
    }
    let value = lift_value(bench, part)?;
    Some(bench.judge(part, Quantity::Lift, "", None, value, Proportions::default()))
}

/// The lift as read, or else from height and base circle.
pub(super) fn lift_value(bench: Bench<'_>, part: Part) -> Option<Value> {
    let read = |quantity| bench.readings.value(part, quantity, bench.phase, None);
    if let Some(value) = read(Quantity::Lift) {
        return Some(value);
    }
    let (height, base) = (read(Quantity::LobeHeight)?, read(Quantity::BaseCircle)?);
    let uncertainty = Length::root_sum_square([height.uncertainty, base.uncertainty]);
    Some(Value::single(height.low - base.high, uncertainty, height.step.max(base.step), Spot::default()))
}

/// The spread of lift over the lobes of one port of a camshaft; the worse port counts. Uneven lifts make uneven cylinders.
pub(super) fn spread(bench: Bench<'_>, camshaft: Part) -> Option<Figure> {
    let At::Camshaft(shaft) = camshaft.at else { return None };
    let engine = bench.readings.engine;
    let on_port = |port: Port| {
        let lifts: Vec<Value> = engine
            .parts()
            .iter()
            .filter(|part| match part.at {
                At::Valve(cylinder, p, _) => {
                    part.kind == PartKind::Lobe
                        && p == port
                        && engine.arrangement().camshaft_of(cylinder, port) == shaft
                }
                _ => false,
            })
            .filter_map(|part| lift_value(bench, *part))
            .collect();
        let low = lifts.iter().min_by_key(|lift| lift.low)?;
        let high = lifts.iter().max_by_key(|lift| lift.high)?;
        let uncertainty = Length::root_sum_square([low.uncertainty, high.uncertainty]);
        let step = low.step.max(high.step);
        (lifts.len() > 1).then(|| Value::single(high.high - low.low, uncertainty, step, Spot::default()))
    };
    let value = [Port::Intake, Port::Exhaust].into_iter().filter_map(on_port).max_by_key(|value| value.high)?;
    Some(bench.judge(camshaft, Quantity::LiftSpread, "", None, value, Proportions::default()))
}
