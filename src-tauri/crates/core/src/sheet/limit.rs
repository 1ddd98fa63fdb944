//! Which limits a sheet sets for one quantity of one part.

use super::{Datum, Line, Per, Rate, Sheet};
use crate::engine::Part;
use crate::measure::{Bound, Bounds, Length, Quantity, Sense, Stated, Station};

/// The limits of one quantity and who sets them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Limits {
    /// What a used part must keep to.
    pub bounds: Bounds,
    /// The range of a new part, as far as the sheet gives it.
    pub new: (Option<Length>, Option<Length>),
    /// From which end of a new range wear counts, if the sheet says so.
    pub datum: Option<Datum>,
    /// The manual and page, or "common practice".
    pub source: String,
    /// Set by a general rule because the sheet gives nothing.
    pub general: bool,
}

/// What a limit in proportion may need to know of the part.
#[derive(Debug, Clone, Copy, Default)]
pub struct Proportions {
    /// The length of the journal as read.
    pub length: Option<Length>,
    /// The length over which a bend or twist was read.
    pub over: Option<Length>,
}

impl Sheet {
    /// The line that speaks most narrowly of a quantity of a part.
    pub fn line(&self, part: Part, quantity: Quantity, name: &str, station: Option<Station>) -> Option<&Line> {
        self.lines
            .iter()
            .filter(|line| {
                line.of.quantity == quantity
                    && line.of.name.trim().eq_ignore_ascii_case(name.trim())
                    && line.of.speaks_of(part, station)
            })
            .max_by_key(|line| line.of.narrowness())
    }

    /// The range of a new part, as far as the sheet gives it.
    pub fn new_range(&self, part: Part, quantity: Quantity) -> (Option<Length>, Option<Length>) {
        self.line(part, quantity, "", None).map_or((None, None), Line::range)
    }

    /// The limits of a quantity: from the sheet, else from a general rule, else none.
    pub fn limits(
        &self,
        part: Part,
        quantity: Quantity,
        name: &str,
        station: Option<Station>,
        proportions: Proportions,
    ) -> Option<Limits> {
        let Some(line) = self.line(part, quantity, name, station) else {
            return if self.head.general_rules { self.general(part, quantity, proportions) } else { None };
        };
        let usual = part.kind.has(quantity)?.sense;
        let sense = if line.limit_is_least { Sense::Least } else { usual };
        let (min, max) = line.range();
        let limit = line.limit.as_ref().map(Stated::length).or_else(|| {
            let share = line.rate.as_ref().and_then(|rate| self.share(part, rate, proportions))?;
            let beyond = line.rate.as_ref().is_some_and(|rate| rate.beyond_range);
            Some(match (beyond, sense) {
                (false, _) => share,
                (true, Sense::Least) => min? - share,
                (true, Sense::Most) => max? + share,
            })
        });
        let worn = |end: Option<Length>| match limit {
            Some(limit) => Some(Bound { at: limit, passes: !line.fails_at_limit }),
            None if self.limits_loss(part, quantity) => None,
            None => end.map(Bound::including),
        };
        let bounds = match sense {
            Sense::Least => Bounds { least: worn(min), most: max.map(Bound::including) },
            Sense::Most => Bounds { least: min.map(Bound::including), most: worn(max) },
        };
        Some(Limits { bounds, new: (min, max), datum: line.datum, source: self.source(line), general: false })
    }

    /// Whether the sheet limits how far a size may go from new (TM 10-3930-653-14&P: bore 87.20 to 87.25 mm, wear 0.2 mm).
    /// The range of the size is then that of a new part, not a limit of wear.
    fn limits_loss(&self, part: Part, quantity: Quantity) -> bool {
        let loss = match quantity {
            Quantity::Diameter => Quantity::Wear,
            Quantity::LobeHeight => Quantity::HeightLoss,
            Quantity::Lift => Quantity::LiftLoss,
            _ => return false,
        };
        self.line(part, loss, "", None).is_some()
    }

    /// So much of a rate as falls to this part; none if the size that it is taken of is not known.
    fn share(&self, part: Part, rate: &Rate, proportions: Proportions) -> Option<Length> {
        let base = match &rate.of {
            Per::Diameter => self.nominal(part)?,
            Per::Length => {
                let stated = self.new_range(part, Quantity::Length);
                proportions.length.or(stated.1).or(stated.0)?
            }
            Per::Over => proportions.over?,
            Per::Given(entry) => entry.length,
        };
        Some(rate.by.length.times(base.nanometres(), rate.per.length.nanometres()))
    }

    /// The nominal diameter: the end of the new range from which wear counts.
    pub fn nominal(&self, part: Part) -> Option<Length> {
        let (min, max) = self.new_range(part, Quantity::Diameter);
        match part.kind.has(Quantity::Diameter)?.sense {
            Sense::Least => max.or(min),
            Sense::Most => min.or(max),
        }
    }

    fn source(&self, line: &Line) -> String {
        match (self.head.source.trim(), line.source.trim()) {
            ("", "") => "the spec sheet".into(),
            (manual, "") => manual.into(),
            ("", page) => page.into(),
            (manual, page) => format!("{manual}, {page}"),
        }
    }
}

impl Line {
    /// The range of a new part.
    pub fn range(&self) -> (Option<Length>, Option<Length>) {
        (self.min.as_ref().map(Stated::length), self.max.as_ref().map(Stated::length))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::SheetBasis;

    fn sheet(lines: serde_json::Value) -> Sheet {
        Sheet { head: SheetBasis::default(), lines: serde_json::from_value(lines).unwrap(), ..Sheet::default() }
    }

    #[track_caller]
    fn most(sheet: &Sheet, part: &str, quantity: Quantity, proportions: Proportions) -> Option<i64> {
        let limits = sheet.limits(part.parse().unwrap(), quantity, "", None, proportions)?;
        limits.bounds.most.map(|bound| bound.at.nanometres())
    }

    // TM 10-3930-647-14&P: in proportion to the diameter. TM 5-3805-261-34 and others state plain limits.
    #[test]
    fn limits_in_proportion() {
        let sheet = sheet(serde_json::json!([
            { "of": { "kind": "main-journal", "quantity": "diameter" }, "min": "2.249 in", "max": "2.250 in" },
            { "of": { "kind": "main-journal", "quantity": "out-of-round" },
              "rate": { "by": "0.0004 in", "per": "1 in", "of": "diameter" } },
            { "of": { "kind": "main-journal", "quantity": "clearance" }, "min": "0.0010 in", "max": "0.0030 in",
              "rate": { "by": "0.0005 in", "per": "1 in", "of": "diameter", "beyond_range": true } },
            { "of": { "kind": "bore", "quantity": "taper" },
              "rate": { "by": "0.0005 in", "per": "1 in", "of": { "given": "4.375 in" } } },
            { "of": { "kind": "rod", "quantity": "twist" },
              "rate": { "by": "0.10 mm", "per": "100 mm", "of": "over" } },
        ]));
        let none = Proportions::default();
        assert_eq!(most(&sheet, "main-journal.1", Quantity::OutOfRound, none), Some(22_860), "0.0009 in");
        assert_eq!(most(&sheet, "main-journal.1", Quantity::Clearance, none), Some(104_775), "0.004125 in");
        assert_eq!(most(&sheet, "bore.1", Quantity::Taper, none), Some(55_563), "0.0021875 in, to the nanometre");
        let over = Proportions { over: Some(Length::from_nanometres(50_000_000)), ..none };
        assert_eq!(most(&sheet, "rod.1", Quantity::Twist, over), Some(50_000));
        assert_eq!(most(&sheet, "rod.1", Quantity::Twist, none), None, "the length was not read");
    }

    // TM 10-3930-653-14&P p. 4-18: bore 87.20 to 87.25 mm, wear limit 0.2 mm.
    #[test]
    fn a_limit_of_wear_takes_the_place_of_the_worn_end_of_the_new_range() {
        let bore = |with_wear: bool| {
            let mut lines = vec![serde_json::json!(
                { "of": { "kind": "bore", "quantity": "diameter" }, "min": "87.20 mm", "max": "87.25 mm" })];
            if with_wear {
                lines.push(serde_json::json!({ "of": { "kind": "bore", "quantity": "wear" }, "limit": "0.2 mm" }));
            }
            sheet(lines.into()).limits("bore.1".parse().unwrap(), Quantity::Diameter, "", None, Proportions::default())
        };
        let (plain, worn) = (bore(false).unwrap(), bore(true).unwrap());
        assert_eq!((plain.bounds.least, plain.new), (worn.bounds.least, worn.new));
        assert_eq!(plain.bounds.most.map(|bound| bound.at.nanometres()), Some(87_250_000));
        assert_eq!(worn.bounds.most, None, "the wear decides");
    }

    #[test]
    fn the_narrowest_line_decides() {
        let sheet = sheet(serde_json::json!([
            { "of": { "kind": "cam-journal", "quantity": "clearance" }, "limit": "0.1 mm" },
            { "of": { "kind": "cam-journal", "quantity": "clearance", "numbers": [2] }, "limit": "0.15 mm" },
        ]));
        let none = Proportions::default();
        assert_eq!(most(&sheet, "cam-journal.1.1", Quantity::Clearance, none), Some(100_000));
        assert_eq!(most(&sheet, "cam-journal.1.2", Quantity::Clearance, none), Some(150_000));
    }
}
