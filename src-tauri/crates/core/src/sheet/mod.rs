//! The spec sheet: what the engine's own manual says of its sizes, limits and series of undersizes and oversizes.
//!
//! No maker's data is built in. Whoever owns the manual enters its figures with their source; what the manual does not
//! give is filled by general rules that are marked "common practice" ([`Sheet::general`]).

mod besides;
mod check;
mod dispute;
mod doubt;
mod finish;
mod general;
mod grade;
mod limit;
mod line;
mod series;
mod size;
mod words;

pub use dispute::{Dispute, DisputeRow, View};
pub use finish::Finish;
pub use general::GeneralRule;
pub(crate) use grade::MAX_MARK;
pub use grade::ShellGrade;
pub use limit::{Limits, Proportions};
pub use line::{Datum, Line, LineKey, Per, Rate};
pub use series::SizeRow;
pub use size::{Journals, Oversize, Oversized, SizeGroup, Undersize};
pub use words::{LineWords, SeriesWords, SheetWords, SizeWords};

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use crate::measure::{Length, LengthUnit, Stated};

/// A spec sheet.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(example = example()))]
#[serde(deny_unknown_fields)]
pub struct Sheet {
    /// What it rests on: its title, source and rules of reading.
    pub head: SheetBasis,
    /// Sizes and limits.
    #[serde(default)]
    pub lines: Vec<Line>,
    /// What journals can be ground to.
    #[serde(default)]
    pub undersizes: Vec<Undersize>,
    /// What cylinders can be bored to, and tappet bores reamed to.
    #[serde(default)]
    pub oversizes: Vec<Oversize>,
    /// How standard shells are graded by the marks of housing and journal; empty where they are not.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Vec<ShellGrade>>"))]
    pub grades: Vec<ShellGrade>,
    /// What it asks of finished surfaces.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Vec<Finish>>"))]
    pub finishes: Vec<Finish>,
}

/// What a spec sheet rests on: the manual, the unit, the allowance, and how its limits are held.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct SheetBasis {
    /// What the shop calls it.
    pub name: String,
    /// The manual it was taken from.
    #[serde(default)]
    pub source: String,
    /// The unit in which results are shown, and in which a number typed without a unit is taken.
    #[serde(default)]
    pub unit: LengthUnit,
    /// How much on the diameter the grinder or borer needs beyond the wear to clean up; zero if not given.
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
    /// Where published manuals disagree and the shop follows the view that is not the usual one.
    #[serde(default, skip_serializing_if = "BTreeSet::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Vec<Dispute>>"))]
    pub otherwise: BTreeSet<Dispute>,
}

/// A sheet as it is written in JSON, for the published schema. The figures of journals and shells are those of
/// TM 5-4320-300-14 p. 6-103.
#[cfg(any(test, feature = "schema"))]
fn example() -> serde_json::Value {
    serde_json::json!({
        "head": { "name": "Pump engine", "source": "TM 5-4320-300-14", "unit": "inch", "clean_up": "0.001 in" },
        "lines": [
            { "of": { "kind": "main-journal", "quantity": "diameter" },
              "min": "2.999 in", "max": "3.000 in", "source": "p. 6-103" },
            { "of": { "kind": "main-shell", "quantity": "wall" },
              "min": "0.1245 in", "max": "0.1250 in", "limit": "0.1230 in", "source": "p. 6-103" },
            { "of": { "kind": "housing-bore", "quantity": "diameter" }, "min": "3.251 in", "max": "3.252 in", "source": "p. 6-45" },
            { "of": { "kind": "main-journal", "quantity": "out-of-round" },
              "rate": { "by": "0.0004 in", "per": "1 in", "of": "diameter" }, "source": "in proportion to the shaft" },
            { "of": { "kind": "rings", "quantity": "ring-gap", "station": "top-ring" }, "min": "0.012 in", "max": "0.022 in" },
            { "of": { "kind": "lobe", "quantity": "lift", "port": "intake" }, "limit": "0.3139 in = 7.973 mm" },
            { "of": { "kind": "lobe", "quantity": "height-loss" }, "limit": "0.25 mm", "fails_at_limit": true, "datum": "min" },
            { "of": { "kind": "oil-pump", "quantity": "other", "name": "gear end play" }, "max": "0.005 in" }
        ],
        "undersizes": [
            { "journals": "mains", "size": "0.002 in", "min": "2.997 in", "max": "2.998 in",
              "wall_min": "0.1255 in", "wall_max": "0.1260 in", "without_grinding": true, "source": "p. 6-103" },
            { "journals": "mains", "size": "0.010 in", "min": "2.989 in", "max": "2.990 in",
              "wall_min": "0.1295 in", "wall_max": "0.1300 in", "source": "p. 6-103" },
            { "journals": "mains", "size": "0.020 in" }
        ],
        "oversizes": [
            { "size": "0.020 in", "min": "4.0200 in", "max": "4.0210 in", "piston_min": "4.0165 in", "piston_max": "4.0175 in" }
        ],
        "grades": [{ "journals": "mains", "housing": "B", "journal": "2", "grade": "4", "source": "p. 6-44" }],
        "finishes": [{ "of": "crankpins", "surface": "16 microinch or finer", "source": "p. 6-103" }]
    })
}

impl Default for SheetBasis {
    fn default() -> Self {
        Self {
            name: String::new(),
            source: String::new(),
            unit: LengthUnit::default(),
            clean_up: None,
            guard_percent: full(),
            general_rules: yes(),
            otherwise: BTreeSet::new(),
        }
    }
}

impl Sheet {
    /// The same sheet, with each line about the part that has its quantity now.
    pub fn in_present_form(&self) -> Self {
        Self { lines: self.lines.iter().map(Line::in_present_form).collect(), ..self.clone() }
    }

    /// How much the grinder or borer needs beyond the wear, on the diameter.
    pub fn clean_up(&self) -> Length {
        self.head.clean_up.as_ref().map_or(Length::default(), Stated::length)
    }

    /// Whether the shop follows the view of a dispute that is not the usual one.
    pub fn follows_other(&self, dispute: Dispute) -> bool {
        self.head.otherwise.contains(&dispute)
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

    /// Enters an oversize in place of the one of the same size of the same, or as a further one; the series stays in order.
    pub fn state_oversize(&mut self, row: Oversize) {
        replace(&mut self.oversizes, row, |row| (row.of, row.size.length));
        self.oversizes.sort_by_key(|row| (row.of, row.size.length));
    }
}

fn replace<T, K: PartialEq>(all: &mut Vec<T>, new: T, key: impl Fn(&T) -> K) {
    match all.iter_mut().find(|old| key(old) == key(&new)) {
        Some(old) => *old = new,
        None => all.push(new),
    }
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_published_example_is_a_sheet() {
        let sheet: Sheet = serde_json::from_value(example()).unwrap();
        sheet.check(crate::words::Terms::default()).unwrap();
        let again: Sheet = serde_json::from_value(serde_json::to_value(&sheet).unwrap()).unwrap();
        assert_eq!(again, sheet);
    }
}
