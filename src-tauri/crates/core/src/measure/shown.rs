//! Lengths, ranges and limits in words.

use super::{Bounds, Length, LengthUnit};

/// A length of a sheet or plan for show: in ten-thousandths of an inch or thousandths of a millimetre, finer where it
/// would else be rounded.
pub fn in_unit(length: Length, unit: LengthUnit) -> String {
    length.show(step_for(length, unit), unit)
}

/// From one length to another, rounded to a step, the unit said once: "2.2483 to 2.2490 in"; one value where both ends
/// read the same.
pub fn range(low: Length, high: Length, step: Length, unit: LengthUnit) -> String {
    joined(low.number(step, unit), high.number(step, unit), unit)
}

/// The same with each end as fine as [`in_unit`] shows it.
pub fn range_in_unit(low: Length, high: Length, unit: LengthUnit) -> String {
    let number = |length: Length| length.number(step_for(length, unit), unit);
    joined(number(low), number(high), unit)
}

/// Limits in words: "0.0010 to 0.0025 in", "at most 0.010 in", "more than 0.001 in".
pub fn limits_in_unit(bounds: &Bounds, unit: LengthUnit) -> String {
    match (bounds.least, bounds.most) {
        (Some(least), Some(most)) => {
            let number = |length: Length| length.number(step_for(length, unit), unit);
            format!("{} to {} {}", number(least.at), number(most.at), unit.name())
        }
        (Some(least), None) => {
            format!("{} {}", if least.passes { "at least" } else { "more than" }, in_unit(least.at, unit))
        }
        (None, Some(most)) => {
            format!("{} {}", if most.passes { "at most" } else { "less than" }, in_unit(most.at, unit))
        }
        (None, None) => String::new(),
    }
}

fn joined(low: String, high: String, unit: LengthUnit) -> String {
    if low == high { format!("{high} {}", unit.name()) } else { format!("{low} to {high} {}", unit.name()) }
}

/// The usual step of a unit, or a tenth of it where the length would else be rounded.
fn step_for(length: Length, unit: LengthUnit) -> Length {
    let usual = unit.usual_step();
    let fits = length.nanometres() % usual.nanometres() == 0;
    if fits { usual } else { Length::from_nanometres(usual.nanometres() / 10) }
}

impl LengthUnit {
    /// The step in which sizes are given: ten-thousandths of an inch, thousandths of a millimetre.
    pub fn usual_step(self) -> Length {
        match self {
            Self::Inch | Self::Thou => Length::from_nanometres(2_540),
            Self::Millimetre | Self::Micrometre => Length::from_nanometres(1_000),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Bound;

    #[test]
    fn the_unit_stands_once_and_nothing_is_rounded_that_is_finer() {
        let length = |text: &str| crate::measure::Entry::try_from(text.to_owned()).unwrap().length;
        let (low, high) = (length("2.2483 in"), length("2.24905 in"));
        assert_eq!(range_in_unit(low, high, LengthUnit::Inch), "2.2483 to 2.24905 in");
        assert_eq!(range_in_unit(low, low, LengthUnit::Inch), "2.2483 in");
        assert_eq!(range(low, high, LengthUnit::Inch.usual_step(), LengthUnit::Inch), "2.2483 to 2.2491 in");
        let bound = |at, passes| Some(Bound { at, passes });
        let limits = |least, most| limits_in_unit(&Bounds { least, most }, LengthUnit::Inch);
        assert_eq!(limits(bound(low, true), bound(high, true)), "2.2483 to 2.24905 in");
        assert_eq!(limits(bound(low, false), None), "more than 2.2483 in");
        assert_eq!(limits(None, bound(high, true)), "at most 2.24905 in");
    }
}
