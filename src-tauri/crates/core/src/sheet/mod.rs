//! The spec sheet: what the engine's own manual says of its sizes, limits and series of undersizes and oversizes.
//!
//! No maker's data is built in. Whoever owns the manual enters its figures with their source; what the manual does not
//! give is filled by general rules that are marked "common practice" ([`Sheet::general`]).

mod check;
mod general;
mod limit;
mod line;
mod series;
mod size;

pub use limit::{Limits, Proportions};
pub use line::{Datum, Line, LineKey, Per, Rate};
pub use series::SizeRow;
pub use size::{Journals, Oversize, SizeGroup, Undersize};

use serde::{Deserialize, Serialize};

use crate::measure::{Length, LengthUnit, Stated};

/// A spec sheet.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Sheet {
    /// Its title, source and rules of reading.
    pub head: SheetHead,
    /// Sizes and limits.
    #[serde(default)]
    pub lines: Vec<Line>,
    /// What journals can be ground to.
    #[serde(default)]
    pub undersizes: Vec<Undersize>,
    /// What cylinders can be bored to.
    #[serde(default)]
    pub oversizes: Vec<Oversize>,
}

/// The head of a spec sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct SheetHead {
    /// What the shop calls it.
    pub name: String,
    /// The manual it was taken from.
    #[serde(default)]
    pub source: String,
    /// The unit in which results are shown, and in which a number typed without a unit is taken.
    #[serde(default)]
    pub unit: LengthUnit,
    /// How much on the diameter the grinder or borer needs beyond the wear to clean up; nought if not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub clean_up: Option<Stated>,
    /// How much of an instrument's uncertainty keeps away from a limit, in per cent: 100 is the full expanded
    /// uncertainty (ISO 14253-1, from memory); 82 is about the one-sided 95 % of its later edition (from memory).
    #[serde(default = "full", skip_serializing_if = "is_full")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<u8>"))]
    pub guard_percent: u8,
    /// Whether general rules fill in what this sheet does not give.
    #[serde(default = "yes", skip_serializing_if = "is_yes")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<bool>"))]
    pub general_rules: bool,
}

impl Default for SheetHead {
    fn default() -> Self {
        Self {
            name: String::new(),
            source: String::new(),
            unit: LengthUnit::default(),
            clean_up: None,
            guard_percent: full(),
            general_rules: yes(),
        }
    }
}

impl Sheet {
    /// How much the grinder or borer needs beyond the wear, on the diameter.
    pub fn clean_up(&self) -> Length {
        self.head.clean_up.as_ref().map_or(Length::default(), Stated::length)
    }

    /// Enters a line in place of the one about the same, or as a further one.
    pub fn state(&mut self, line: Line) {
        replace(&mut self.lines, line, |line| line.of.clone());
    }

    /// Enters an undersize in place of the one of the same size, or as a further one; the series stays in order.
    pub fn state_undersize(&mut self, row: Undersize) {
        replace(&mut self.undersizes, row, |row| (row.journals, row.size.length));
        self.undersizes.sort_by_key(|row| (row.journals, row.size.length));
    }

    /// Enters an oversize in place of the one of the same size, or as a further one; the series stays in order.
    pub fn state_oversize(&mut self, row: Oversize) {
        replace(&mut self.oversizes, row, |row| row.size.length);
        self.oversizes.sort_by_key(|row| row.size.length);
    }
}

fn replace<T, K: PartialEq>(all: &mut Vec<T>, new: T, key: impl Fn(&T) -> K) {
    match all.iter_mut().find(|old| key(old) == key(&new)) {
        Some(old) => *old = new,
        None => all.push(new),
    }
}

/// A length of a sheet or plan for show: in ten-thousandths of an inch or thousandths of a millimetre, finer where it
/// would else be rounded.
pub fn in_unit(length: Length, unit: LengthUnit) -> String {
    let usual = match unit {
        LengthUnit::Inch | LengthUnit::Thou => Length::from_nanometres(2_540),
        LengthUnit::Millimetre | LengthUnit::Micrometre => Length::from_nanometres(1_000),
    };
    let finest = Length::from_nanometres(usual.nanometres() / 10);
    let fits = length.nanometres() % usual.nanometres() == 0;
    length.show(if fits { usual } else { finest }, unit)
}

fn full() -> u8 {
    100
}

fn is_full(percent: &u8) -> bool {
    *percent == full()
}

fn yes() -> bool {
    true
}

fn is_yes(value: &bool) -> bool {
    *value
}
