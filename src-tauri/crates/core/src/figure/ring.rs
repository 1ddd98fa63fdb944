//! The growth of a ring's gap in a worn bore.

use super::{Bench, Figure, Value};
use crate::engine::{Part, PartKind};
use crate::measure::{Length, Quantity};
use crate::sheet::Proportions;

/// How much a ring gap grows when its bore wears by so much on the diameter: π times (geometry; TM 5-3805-261-34
/// rounds it to three).
pub fn gap_growth(wear: Length) -> Length {
    wear.times(3_141_592_654, 1_000_000_000)
}

/// The growth of the gap in this cylinder's bore.
pub(super) fn growth(bench: Bench<'_>, rings: Part) -> Option<Figure> {
    let bore = Part { kind: PartKind::Bore, at: rings.at };
    let diameter = bench.readings.value(bore, Quantity::Diameter, bench.phase, None)?;
    let nominal = bench.readings.job.sheet.new_range(bore, Quantity::Diameter);
    let size = bench.sizes.groups.get(&crate::sheet::SizeGroup::Bores).copied().unwrap_or_default();
    let wear = diameter.high - nominal.1.or(nominal.0)? - size;
    if wear <= Length::default() {
        return None;
    }
    let uncertainty = gap_growth(diameter.uncertainty);
    let value = Value::single(gap_growth(wear), uncertainty, diameter.step, diameter.high_at);
    Some(bench.judge(rings, Quantity::GapGrowth, "", None, value, Proportions::default()))
}

#[cfg(test)]
mod tests {
    use super::*;

    // TM 5-3805-261-34: 0.003 in of gap for each 0.001 in of bore; exactly it is π.
    #[test]
    fn four_thousandths_of_wear_open_the_gap_by_twelve_and_a_half() {
        let growth = gap_growth(Length::from_nanometres(101_600));
        assert_eq!(growth.show(Length::from_nanometres(2_540), crate::measure::LengthUnit::Inch), "0.0126 in");
    }
}
