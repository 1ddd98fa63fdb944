//! Tax on a bill: a rate, rounded once for each line or once for all.

use serde::{Deserialize, Serialize};

use super::Money;

/// Where tax is rounded to the minor unit.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum TaxRounding {
    /// On the total.
    #[default]
    Total,
    /// On every line, then summed.
    Line,
}

/// The tax of a place.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Tax {
    /// The rate in hundredths of a per cent: 1900 is 19 %. At most 10 000.
    pub rate: u32,
    /// Where it is rounded.
    #[serde(default)]
    pub rounding: TaxRounding,
}

impl Tax {
    /// The tax on net amounts; halves are rounded away from zero.
    pub fn on(&self, lines: &[Money]) -> Money {
        let of = |net: Money| net.share(i64::from(self.rate), 10_000);
        match self.rounding {
            TaxRounding::Total => of(lines.iter().copied().sum()),
            TaxRounding::Line => lines.iter().map(|net| of(*net)).sum(),
        }
    }

    /// The rate in words: "19 %", "8.25 %".
    pub fn words(&self) -> String {
        let (whole, rest) = (self.rate / 100, self.rate % 100);
        match rest {
            0 => format!("{whole} %"),
            rest if rest % 10 == 0 => format!("{whole}.{} %", rest / 10),
            rest => format!("{whole}.{rest:02} %"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn tax(rate: u32, rounding: TaxRounding, lines: &[i64], expected: i64) {
        let lines: Vec<Money> = lines.iter().copied().map(Money::from_minor).collect();
        assert_eq!(Tax { rate, rounding }.on(&lines).minor(), expected);
    }

    // Own arithmetic; against Python's decimal module in tests/decimal.rs.
    #[test]
    fn by_line_and_by_total() {
        tax(1900, TaxRounding::Total, &[3, 3, 3], 2);
        tax(1900, TaxRounding::Line, &[3, 3, 3], 3);
        tax(825, TaxRounding::Total, &[10_000], 825);
        tax(0, TaxRounding::Line, &[10_000], 0);
        assert_eq!(Tax { rate: 825, rounding: TaxRounding::Line }.words(), "8.25 %");
        assert_eq!(Tax { rate: 1900, rounding: TaxRounding::Line }.words(), "19 %");
        assert_eq!(Tax { rate: 750, rounding: TaxRounding::Line }.words(), "7.5 %");
    }
}
