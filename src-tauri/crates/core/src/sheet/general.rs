//! General rules for what a manual does not give: common practice, each replaceable by a line of the sheet.

use std::collections::BTreeSet;

use serde::Serialize;

use super::limit::Proportions;
use super::{Limits, Sheet};
use crate::engine::{Engine, Part, PartKind};
use crate::measure::{Bound, Bounds, Length, Quantity, limits_in_unit};

const COMMON_PRACTICE: &str = "common practice";
const FROM_MEMORY: &str = "common practice, from memory";

/// Ten-thousandths of an inch, in which the trade gives its rules.
const fn tenths(tenths_of_thou: i64) -> Length {
    Length::from_nanometres(tenths_of_thou * 2_540)
}

const fn inches(hundredths: i64) -> Length {
    Length::from_nanometres(hundredths * 254_000)
}

/// A general rule that stands because the sheet is silent, for a reader of the sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct GeneralRule {
    /// The kind of part.
    pub kind: PartKind,
    /// The quantity.
    pub quantity: Quantity,
    /// The limits in words: "at most 0.0005 in".
    pub limits: String,
    /// "common practice", with what is known of where it comes from.
    pub source: String,
}

impl Sheet {
    /// The general rules that stand in for what the sheet does not give, in strip-down order. A rule that goes by the
    /// length of a journal is given for the sheet's length: a journal that was measured may differ.
    pub fn standing_in(&self, engine: &Engine) -> Vec<GeneralRule> {
        if !self.head.general_rules {
            return Vec::new();
        }
        let mut seen = BTreeSet::new();
        let firsts = engine.parts().iter().copied().filter(|part| seen.insert(part.kind));
        firsts
            .flat_map(|part| part.kind.quantities().iter().filter_map(move |has| self.rule(part, has.quantity)))
            .collect()
    }

    fn rule(&self, part: Part, quantity: Quantity) -> Option<GeneralRule> {
        if self.line(part, quantity, "", None).is_some() {
            return None;
        }
        let Limits { bounds, source, .. } = self.general(part, quantity, Proportions::default())?;
        Some(GeneralRule { kind: part.kind, quantity, limits: limits_in_unit(&bounds, self.head.unit), source })
    }

    /// Whether it says how far the diameter of a part may wear.
    fn limits_diameter(&self, part: Part) -> bool {
        self.line(part, Quantity::Diameter, "", None).is_some_and(|line| line.limit.is_some() || line.rate.is_some())
    }

    /// The general rule for a quantity of a part, if there is one.
    pub fn general(&self, part: Part, quantity: Quantity, proportions: Proportions) -> Option<Limits> {
        use PartKind::{Block, Bore, Crankpin, Crankshaft, HousingBore, Lobe, MainJournal, Rings};
        use Quantity::*;
        match (part.kind, quantity) {
            (MainJournal | Crankpin, OutOfRound) => at_most(tenths(5)),
            (MainJournal | Crankpin, Taper | Barrel) => at_most(self.taper_for_length(part, proportions)),
            // 0.00075 to 0.0010 in for each inch of shaft.
            (MainJournal | Crankpin, Clearance) => {
                let diameter = self.nominal(part)?;
                range(diameter.times(75, 100_000), diameter.times(1, 1_000), COMMON_PRACTICE)
            }
            (HousingBore, OutOfRound) => at_most(tenths(10)),
            (Block, LineAdjacent) => at_most(tenths(10)),
            (Block, LineOverall) => at_most(tenths(20)),
            (Block, FlatnessAlong) => at_most(tenths(40)),
            (Block, FlatnessAcross) => at_most(tenths(20)),
            (Crankshaft, EndFloat) => self.end_float(),
            // How far a bore may wear the sheet has said where it limits the diameter.
            (Bore, Wear) if self.limits_diameter(part) => None,
            (Bore, Wear | Taper) => at_most(tenths(50)),
            (Lobe, LiftLoss) => at_most(tenths(50)),
            // 0.003 to 0.004 in for each inch of bore.
            (Rings, RingGap) => {
                let bore = self.nominal(Part { kind: Bore, at: part.at })?;
                range(bore.times(3, 1_000), bore.times(4, 1_000), FROM_MEMORY)
            }
            _ => None,
        }
    }

    /// A longer journal may taper more.
    fn taper_for_length(&self, part: Part, proportions: Proportions) -> Length {
        let stated = self.new_range(part, Quantity::Length);
        match proportions.length.or(stated.1).or(stated.0) {
            Some(length) if length <= inches(100) => tenths(2),
            Some(length) if length < inches(200) => tenths(4),
            _ => tenths(5),
        }
    }

    /// By the diameter of the main journals.
    fn end_float(&self) -> Option<Limits> {
        let journal = Part { kind: PartKind::MainJournal, at: crate::engine::At::Main(1) };
        let diameter = self.nominal(journal)?;
        let (min, max) = match diameter {
            d if d < inches(200) => return None,
            d if d <= inches(275) => (tenths(30), tenths(70)),
            d if d <= inches(350) => (tenths(50), tenths(90)),
            _ => (tenths(70), tenths(110)),
        };
        range(min, max, COMMON_PRACTICE)
    }
}

fn at_most(most: Length) -> Option<Limits> {
    let bounds = Bounds { least: None, most: Some(Bound::including(most)) };
    Some(Limits { bounds, new: (None, None), datum: None, source: COMMON_PRACTICE.into(), general: true })
}

fn range(min: Length, max: Length, source: &str) -> Option<Limits> {
    let bounds = Bounds { least: Some(Bound::including(min)), most: Some(Bound::including(max)) };
    Some(Limits { bounds, new: (Some(min), Some(max)), datum: None, source: source.into(), general: true })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sheet(main: (&str, &str)) -> Sheet {
        let line = serde_json::json!({
            "of": { "kind": "main-journal", "quantity": "diameter" }, "min": main.0, "max": main.1,
        });
        Sheet { lines: vec![serde_json::from_value(line).unwrap()], ..Sheet::default() }
    }

    #[track_caller]
    fn rule(main: (&str, &str), part: &str, quantity: Quantity, min: i64, max: i64) {
        let limits = sheet(main).general(part.parse().unwrap(), quantity, Proportions::default()).unwrap();
        let at = |bound: Option<Bound>| bound.map_or(0, |bound| bound.at.nanometres());
        assert_eq!((at(limits.bounds.least), at(limits.bounds.most)), (min, max));
        assert!(limits.source.starts_with("common practice") && limits.general);
    }

    // Printed trade tables, without a public source: common practice.
    #[test]
    fn clearance_and_end_float_grow_with_the_shaft() {
        rule(("1.999 in", "2.000 in"), "main-journal.1", Quantity::Clearance, 38_100, 50_800);
        rule(("2.999 in", "3.000 in"), "main-journal.1", Quantity::Clearance, 57_150, 76_200);
        rule(("2.249 in", "2.250 in"), "crankshaft", Quantity::EndFloat, 76_200, 177_800);
        rule(("2.999 in", "3.000 in"), "crankshaft", Quantity::EndFloat, 127_000, 228_600);
        rule(("3.999 in", "4.000 in"), "crankshaft", Quantity::EndFloat, 177_800, 279_400);
    }

    #[test]
    fn what_the_sheet_gives_no_rule_stands_in_for() {
        let engine = Engine::new(crate::engine::Arrangement::inline(4)).unwrap();
        let mut sheet = sheet(("2.999 in", "3.000 in"));
        let rules = |sheet: &Sheet| -> Vec<(PartKind, Quantity, String)> {
            sheet.standing_in(&engine).into_iter().map(|rule| (rule.kind, rule.quantity, rule.limits)).collect()
        };
        let out_of_round = (PartKind::MainJournal, Quantity::OutOfRound, "at most 0.0005 in".to_owned());
        assert!(rules(&sheet).contains(&out_of_round));
        let stated = serde_json::json!({"of": {"kind": "main-journal", "quantity": "out-of-round"}, "max": "0.001 in"});
        sheet.lines.push(serde_json::from_value(stated).unwrap());
        assert!(!rules(&sheet).contains(&out_of_round));
        sheet.head.general_rules = false;
        assert_eq!(rules(&sheet), []);
    }

    #[test]
    fn no_rule_is_made_up() {
        let sheet = Sheet::default();
        let rule = |part: &str, quantity| sheet.general(part.parse().unwrap(), quantity, Proportions::default());
        assert_eq!(rule("crankshaft", Quantity::EndFloat), None, "the shaft's size is not known");
        assert_eq!(rule("crankshaft", Quantity::Bend), None);
        assert_eq!(rule("tappet.1.intake.1", Quantity::Clearance), None);
    }
}
