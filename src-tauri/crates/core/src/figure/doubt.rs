//! A reading far from its neighbours: probably a slip of the eye or the finger.

use super::{Readings, Standing};
use crate::measure::{Length, Quantity};

/// Why a reading is hard to believe, as a question for the person; none if it isn't, or if they were asked before.
///
/// A thimble misread by one turn is 0.025 in or 0.5 mm off. Honest wear stays below: three thousandths of the size, but
/// no less than 0.003 in (our judgement).
pub fn doubt(readings: &Readings<'_>, standing: &Standing<'_>) -> Option<String> {
    if standing.reading.sure || !has_neighbours(standing.reading.quantity) {
        return None;
    }
    let usual = neighbours(readings, standing)?;
    let honest = usual.abs().times(3, 1_000).max(Length::from_nanometres(76_200));
    let off = (standing.length - usual).abs();
    if off <= honest {
        return None;
    }
    let unit = readings.unit();
    Some(format!(
        "Really {}? It is {} from its neighbours at {}.",
        standing.reading.value,
        off.show(standing.step, unit),
        usual.show(standing.step, unit)
    ))
}

/// Sizes that are alike at all places and positions.
fn has_neighbours(quantity: Quantity) -> bool {
    use Quantity::*;
    matches!(
        quantity,
        Diameter
            | Wall
            | Thickness
            | BigEndBore
            | SmallEndBore
            | PinBore
            | PinDiameter
            | LobeHeight
            | BaseCircle
            | Length
    )
}

/// The median of the other readings of this quantity on this part, else on its like.
fn neighbours(readings: &Readings<'_>, standing: &Standing<'_>) -> Option<Length> {
    let reading = standing.reading;
    let others = |part| {
        readings
            .quantity(part, reading.quantity, reading.phase)
            .filter(|other| other.edit != standing.edit)
            .map(|other| other.length)
    };
    let mut near: Vec<Length> = others(reading.part).collect();
    if near.is_empty() {
        let like =
            readings.engine.parts().iter().filter(|part| part.kind == reading.part.kind && **part != reading.part);
        // Intake and exhaust lobes differ.
        let same_port = |part: &&crate::engine::Part| match (part.at, reading.part.at) {
            (crate::engine::At::Valve(_, one, _), crate::engine::At::Valve(_, other, _)) => one == other,
            _ => true,
        };
        near = like.filter(same_port).flat_map(|part| others(*part)).collect();
    }
    near.sort_unstable();
    near.get(near.len().checked_sub(1)? / 2).copied()
}
