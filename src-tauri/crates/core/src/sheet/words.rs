//! The sheet in words, as its reader sees it: every line with what it is about, and every series of sizes.

use serde::Serialize;

use super::{Line, LineKey, Oversized, Per, Rate, Sheet, SizeGroup};
use crate::engine::{PartKind, Port};
use crate::measure::{Quantity, Sense, Stated};
use crate::words::Terms;

/// The sheet in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct SheetWords {
    /// The lines, in the order of the sheet.
    pub lines: Vec<LineWords>,
    /// The series of each group, and that of the bores of tappets.
    pub series: Vec<SeriesWords>,
}

/// A line in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct LineWords {
    /// What it is about, besides the kind of part: "ring gap, top ring".
    pub aspect: String,
    /// The range of a new part: "2.999 to 3.000 in"; may be empty.
    pub new: String,
    /// How far it may wear: "at most 0.0015 in"; may be empty.
    pub worn: String,
}

/// A series of sizes in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct SeriesWords {
    /// The group; none of the bores of tappets.
    pub group: Option<SizeGroup>,
    /// Standard, as far as the sheet gives it; both are empty if it does not.
    pub standard: SizeWords,
    /// The sizes beyond it, in the order of the sheet.
    pub sizes: Vec<SizeWords>,
}

/// A size of a series in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct SizeWords {
    /// The diameter of the journal or bore.
    pub own: String,
    /// The wall of the shell or the diameter of the piston.
    pub mate: String,
}

/// What the sheet leaves out of a series.
const WORKED_OUT: &str = "worked out from standard";

impl Sheet {
    /// All of it in the shop's words.
    pub fn in_words(&self, terms: Terms) -> SheetWords {
        let of_groups = SizeGroup::ALL.into_iter().map(|group| self.series_in_words(group));
        let of_tappets = self.oversizes_in_words(None, Oversized::Tappets);
        SheetWords {
            lines: self.lines.iter().map(|line| line.in_words(terms)).collect(),
            series: of_groups.chain([of_tappets]).collect(),
        }
    }

    fn series_in_words(&self, group: SizeGroup) -> SeriesWords {
        if group == SizeGroup::Bores {
            return self.oversizes_in_words(Some(group), Oversized::Cylinders);
        }
        let undersizes = self.undersizes.iter().filter(|row| row.journals.group() == group);
        let own = (group.kind(), Quantity::Diameter);
        SeriesWords {
            group: Some(group),
            standard: self.standard_in_words(own, (group.mate(), group.mate_quantity())),
            sizes: undersizes.map(|row| size(&row.min, &row.max, &row.wall_min, &row.wall_max)).collect(),
        }
    }

    fn oversizes_in_words(&self, group: Option<SizeGroup>, of: Oversized) -> SeriesWords {
        let rows = self.oversizes_of(of).map(|row| size(&row.min, &row.max, &row.piston_min, &row.piston_max));
        SeriesWords {
            group,
            standard: self.standard_in_words((of.kind(), Quantity::Diameter), (of.mate(), Quantity::Diameter)),
            sizes: rows.collect(),
        }
    }

    fn standard_in_words(&self, own: (PartKind, Quantity), mate: (PartKind, Quantity)) -> SizeWords {
        let stated = |(kind, quantity)| {
            let line = self.lines.iter().find(|line| line.of.kind == kind && line.of.quantity == quantity);
            line.map_or_else(String::new, |line| Stated::range(line.min.as_ref(), line.max.as_ref()))
        };
        SizeWords { own: stated(own), mate: stated(mate) }
    }
}

fn size(min: &Option<Stated>, max: &Option<Stated>, mate_min: &Option<Stated>, mate_max: &Option<Stated>) -> SizeWords {
    let range = |least: &Option<Stated>, most: &Option<Stated>| {
        let words = Stated::range(least.as_ref(), most.as_ref());
        if words.is_empty() { WORKED_OUT.to_owned() } else { words }
    };
    SizeWords { own: range(min, max), mate: range(mate_min, mate_max) }
}

impl Line {
    /// All of it in the shop's words.
    pub fn in_words(&self, terms: Terms) -> LineWords {
        LineWords {
            aspect: self.of.aspect(terms),
            new: Stated::range(self.min.as_ref(), self.max.as_ref()),
            worn: self.worn_in_words(),
        }
    }

    fn worn_in_words(&self) -> String {
        let wears_smaller = self.of.kind.has(self.of.quantity).is_some_and(|has| has.sense == Sense::Least);
        let bound = match (wears_smaller || self.limit_is_least, self.fails_at_limit) {
            (true, true) => "more than",
            (true, false) => "at least",
            (false, true) => "less than",
            (false, false) => "at most",
        };
        match (&self.limit, &self.rate) {
            (Some(limit), _) => format!("{bound} {}", limit.entry()),
            (None, Some(rate)) => format!("{bound} {}", rate.in_words()),
            (None, None) => String::new(),
        }
    }
}

impl Rate {
    /// "0.0004 in for each 1 in of diameter".
    fn in_words(&self) -> String {
        let Self { by, per, of, beyond_range } = self;
        let share = match of {
            Per::Diameter => format!("{by} for each {per} of diameter"),
            Per::Length => format!("{by} for each {per} of length"),
            Per::Over => format!("{by} for each {per} of the length read over"),
            Per::Given(length) => format!("{by} for each {per} over {length}"),
        };
        if *beyond_range { format!("{share} beyond the new range") } else { share }
    }
}

impl LineKey {
    /// In the shop's words: "main journal, diameter".
    pub fn label(&self, terms: Terms) -> String {
        format!("{}, {}", self.kind.row().name.said(terms), self.aspect(terms))
    }

    /// The same without the kind of part: "ring gap, top ring".
    pub fn aspect(&self, terms: Terms) -> String {
        let own = self.name.trim();
        let named = self.quantity == Quantity::Other && !own.is_empty();
        let mut words = vec![if named { own.to_owned() } else { self.quantity.words(terms).into() }];
        words.extend(self.station.map(|station| station.label().to_owned()));
        words.extend(self.port.map(|port| if port == Port::Intake { "intake" } else { "exhaust" }.to_owned()));
        if !self.numbers.is_empty() {
            let numbers: Vec<String> = self.numbers.iter().map(u8::to_string).collect();
            words.push(format!("no. {}", numbers.join(", ")));
        }
        words.join(", ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(line: serde_json::Value, aspect: &str, new: &str, worn: &str) {
        let line: Line = serde_json::from_value(line).unwrap();
        let expected = LineWords { aspect: aspect.into(), new: new.into(), worn: worn.into() };
        assert_eq!(line.in_words(Terms::default()), expected);
    }

    #[test]
    fn a_line_in_words() {
        check(
            serde_json::json!({ "of": { "kind": "main-journal", "quantity": "diameter" }, "min": "2.9990 in = 76.175 mm",
                "max": "3.0000 in", "limit": "2.998 in", "fails_at_limit": true, "source": "p. 7" }),
            "diameter",
            "2.9990 to 3.0000 in",
            "more than 2.998 in",
        );
        check(
            serde_json::json!({ "of": { "kind": "rings", "quantity": "ring-gap", "station": "top-ring", "numbers": [2, 4] },
                "rate": { "by": "0.004 in", "per": "1 in", "of": "diameter" } }),
            "ring gap, top ring, no. 2, 4",
            "",
            "at most 0.004 in for each 1 in of diameter",
        );
        check(
            serde_json::json!({ "of": { "kind": "rod", "quantity": "bend" },
                "rate": { "by": "0.001 in", "per": "1 in", "of": { "given": "6 in" }, "beyond_range": true } }),
            "bend",
            "",
            "at most 0.001 in for each 1 in over 6 in beyond the new range",
        );
    }

    #[test]
    fn a_series_in_words_says_what_is_worked_out() {
        let sheet: Sheet = serde_json::from_value(serde_json::json!({
            "head": { "name": "Own", "source": "", "unit": "inch" },
            "lines": [{ "of": { "kind": "crankpin", "quantity": "diameter" }, "min": "2.2390 in", "max": "2.2400 in" }],
            "undersizes": [{ "journals": "crankpins", "size": "0.010 in", "min": "2.2290 in", "max": "2.2300 in" }],
        }))
        .unwrap();
        let words = sheet.in_words(Terms::default());
        let [mains, crankpins, bores, tappets] = words.series.as_slice() else { panic!("a series for each group") };
        assert_eq!(crankpins.standard, SizeWords { own: "2.2390 to 2.2400 in".into(), mate: String::new() });
        assert_eq!(crankpins.sizes, [SizeWords { own: "2.2290 to 2.2300 in".into(), mate: WORKED_OUT.into() }]);
        assert!([mains, bores, tappets].iter().all(|series| series.sizes.is_empty()));
    }
}
