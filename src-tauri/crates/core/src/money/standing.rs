//! Lines that stand on a bill whatever is found: strip-down, assembly, gaskets, oil, freight.

use serde::{Deserialize, Serialize};

use super::Money;
use crate::engine::{Arrangement, Cooling};

/// A line that stands on the bill whatever is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// Taking it apart and cleaning it to be looked at.
    StripDown,
    /// Putting it together.
    Assembly,
    /// All gaskets and seals.
    GasketSet,
    /// Oil, filter and coolant of the first run.
    Fluids,
    /// The run on the stand and the tests.
    TestRun,
    /// To and from the machine shop and the suppliers.
    Freight,
    /// What is too small to be counted.
    Sundries,
}

impl Standing {
    /// Every one, in the order of the work.
    pub const ALL: [Self; 7] =
        [Self::StripDown, Self::Assembly, Self::GasketSet, Self::Fluids, Self::TestRun, Self::Freight, Self::Sundries];

    /// In words, as it stands on a bill.
    pub fn words(self) -> &'static str {
        match self {
            Self::StripDown => "Strip-down and inspection",
            Self::Assembly => "Assembly",
            Self::GasketSet => "Gaskets and seals",
            Self::Fluids => "Oil, filter and coolant",
            Self::TestRun => "Test run",
            Self::Freight => "Freight",
            Self::Sundries => "Sundries",
        }
    }

    /// The same for an engine, once it is known how it is cooled.
    pub fn said(self, engine: Option<&Arrangement>) -> &'static str {
        match self {
            Self::Fluids if engine.is_some_and(|own| own.construction.cooling == Some(Cooling::Air)) => {
                "Oil and filter"
            }
            _ => self.words(),
        }
    }

    /// Whether it is goods that are ordered.
    pub fn is_goods(self) -> bool {
        matches!(self, Self::GasketSet | Self::Fluids)
    }
}

/// When a standing line applies.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Applies {
    /// To every job.
    #[default]
    Always,
    /// Where something goes to the machine shop.
    WithMachining,
}

impl Applies {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Always, Self::WithMachining];

    /// In words, lower case.
    pub fn words(self) -> &'static str {
        match self {
            Self::Always => "to every job",
            Self::WithMachining => "where something goes to the machine shop",
        }
    }
}

/// What a standing line costs: an amount, time, a share of the rest of the bill, or several of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct StandingPrice {
    /// Which line.
    pub of: Standing,
    /// An amount without tax.
    #[serde(default)]
    pub amount: Money,
    /// The shop's own time in minutes.
    #[serde(default)]
    pub minutes: u32,
    /// A share of all other lines, in hundredths of a per cent: 250 is 2.5 %.
    #[serde(default)]
    pub share: u16,
    /// When it applies.
    #[serde(default)]
    pub applies: Applies,
}

impl StandingPrice {
    /// What it costs at so much an hour, beside other lines of so much, without tax; time and share are rounded once.
    pub fn cost(&self, hour: Money, others: Money) -> Money {
        let time = hour.share(i64::from(self.minutes), 60);
        self.amount + time + others.share(i64::from(self.share), 10_000)
    }

    /// Refuses a price that can't be.
    ///
    /// # Errors
    /// A sentence.
    pub fn check(&self) -> Result<(), String> {
        const MOST_MINUTES: u32 = 1_000 * 60;
        let name = self.of.words();
        if !self.amount.is_price() {
            return Err(format!("{name}: an amount must be zero or more, and no more than any rebuild costs."));
        }
        if self.minutes > MOST_MINUTES {
            return Err(format!("{name}: {} minutes: at most 1 000 hours.", self.minutes));
        }
        if self.share > 10_000 {
            return Err(format!("{name}: a share above 100 per cent can’t be right."));
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_amount_time_and_a_share_add_up() {
        let line = StandingPrice {
            of: Standing::Sundries,
            amount: Money::from_minor(500),
            minutes: 90,
            share: 250,
            applies: Applies::Always,
        };
        // 5.00 + 1.5 h at 60.00 + 2.5 % of 1 000.10, which is 25.0025: own arithmetic.
        assert_eq!(
            line.cost(Money::from_minor(6_000), Money::from_minor(100_010)),
            Money::from_minor(500 + 9_000 + 2_500)
        );
    }
}
