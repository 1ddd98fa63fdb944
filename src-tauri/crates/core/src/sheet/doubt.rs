//! What is hard to believe on a sheet: taken as entered, with a sentence. Probably misprints, but a manual may mean it.

use super::{Line, Sheet, SizeGroup, Stated};
use crate::engine::PartKind;
use crate::measure::{Length, Quantity, in_unit};
use crate::words::{Terms, capitalised};

impl Sheet {
    /// What is hard to believe, each in a sentence in the shop's words: probably misprints, kept as entered.
    pub fn doubts(&self, terms: Terms) -> Vec<String> {
        let mut doubts = Vec::new();
        self.doubt_neighbours(&mut doubts, terms);
        self.doubt_general(&mut doubts, terms);
        self.doubt_series(&mut doubts, terms);
        for line in &self.lines {
            if line.of.quantity == Quantity::Lift
                && line.max.as_ref().or(line.min.as_ref()).is_some_and(|stated| stated.length() > LARGEST_LIFT)
            {
                doubts.push(format!(
                    "{}: this looks like the height of the lobe, not its lift.",
                    capitalised(&line.of.label(terms))
                ));
            }
        }
        doubts
    }

    /// A limit of form ten times that of a like part in the same sheet.
    fn doubt_neighbours(&self, doubts: &mut Vec<String>, terms: Terms) {
        const FORM: [Quantity; 3] = [Quantity::OutOfRound, Quantity::Taper, Quantity::Barrel];
        const ALIKE: [PartKind; 3] = [PartKind::MainJournal, PartKind::Crankpin, PartKind::CamJournal];
        let of_form = |line: &&Line| FORM.contains(&line.of.quantity) && ALIKE.contains(&line.of.kind);
        for line in self.lines.iter().filter(of_form) {
            let Some(most) = largest(line) else { continue };
            let smaller = self.lines.iter().filter(of_form).find(|other| {
                other.of.quantity == line.of.quantity && largest(other).is_some_and(|other| many_times(most, other))
            });
            if let Some(other) = smaller {
                doubts.push(format!(
                    "{} may be {}, ten times that of the {}: one of them is probably misprinted.",
                    capitalised(&line.of.label(terms)),
                    largest_text(line),
                    other.of.kind.row().name.said(terms)
                ));
            }
        }
    }

    /// A limit of form ten times what is common practice.
    fn doubt_general(&self, doubts: &mut Vec<String>, terms: Terms) {
        for line in &self.lines {
            if !matches!(line.of.quantity, Quantity::OutOfRound | Quantity::Taper) {
                continue;
            }
            let (Some(most), Some(part)) = (largest(line), Some(super::series::example_of(line.of.kind))) else {
                continue;
            };
            let general = self.general(part, line.of.quantity, Default::default());
            let Some(usual) = general.and_then(|limits| limits.bounds.most) else { continue };
            if many_times(most, usual.at) {
                doubts.push(format!(
                    "{} may be {}, ten times what is common practice: check it against another manual.",
                    capitalised(&line.of.label(terms)),
                    largest_text(line)
                ));
            }
        }
    }

    /// Rows of a series that do not follow from standard.
    fn doubt_series(&self, doubts: &mut Vec<String>, terms: Terms) {
        for group in SizeGroup::ALL {
            let Some(standard) = self.standard(group) else { continue };
            for row in self.series(group) {
                let label = format!("Size {} of the {}", self.in_unit(row.size), group.label());
                let (part, mate) = (group.kind().row().short.said(terms), group.mate().row().short.said(terms));
                self.doubt_row(doubts, &label, &part, standard.diameter, row.diameter, group.step(row.size));
                if let (Some(new), Some(range)) = (standard.mate, row.mate) {
                    self.doubt_row(doubts, &label, &mate, new, range, group.mate_step(row.size));
                }
            }
        }
    }

    fn doubt_row(
        &self,
        doubts: &mut Vec<String>,
        label: &str,
        what: &str,
        standard: (Length, Length),
        row: (Length, Length),
        step: Length,
    ) {
        // A little off is usual (selective fits); beyond the width of the range itself it is not, nor is another width.
        let width = standard.1 - standard.0;
        let off = (row.0 - standard.0 - step).abs().max((row.1 - standard.1 - step).abs());
        let widened = ((row.1 - row.0) - width).abs();
        if off > width || widened > width.times(1, 10) {
            doubts.push(format!(
                "{label}: {what} {} to {}; from standard {} to {} would follow.",
                self.in_unit(row.0),
                self.in_unit(row.1),
                self.in_unit(standard.0 + step),
                self.in_unit(standard.1 + step)
            ));
        }
    }

    fn in_unit(&self, length: Length) -> String {
        in_unit(length, self.head.unit)
    }
}

/// Lifts of lobes stay well below; heights of lobes lie above (our judgement).
const LARGEST_LIFT: Length = Length::from_nanometres(20_000_000);

/// The most that a line allows.
fn largest(line: &Line) -> Option<Length> {
    line.limit.as_ref().or(line.max.as_ref()).map(Stated::length)
}

fn largest_text(line: &Line) -> String {
    line.limit.as_ref().or(line.max.as_ref()).map_or_else(String::new, Stated::to_string)
}

/// Ten times, give or take rounding.
fn many_times(large: Length, small: Length) -> bool {
    small > Length::default() && large >= small.times(9, 1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::{Value, json};

    /// A sheet of a main journal of 2.999 to 3.000 in and a bore of 4.000 to 4.001 in.
    fn sheet() -> Sheet {
        let line = |kind: &str, min: &str, max: &str| json!({ "of": { "kind": kind, "quantity": "diameter" }, "min": min, "max": max });
        serde_json::from_value(json!({
            "head": { "name": "" },
            "lines": [line("main-journal", "2.999 in", "3.000 in"), line("bore", "4.000 in", "4.001 in")],
        }))
        .unwrap()
    }

    /// A line about one quantity with its figures.
    fn line(kind: &str, quantity: &str, figures: Value) -> Line {
        let mut line = figures;
        let fields = line.as_object_mut().unwrap();
        let of = fields.entry("of").or_insert(json!({}));
        of["kind"] = kind.into();
        of["quantity"] = quantity.into();
        serde_json::from_value(line).unwrap()
    }

    #[track_caller]
    fn doubted(add: impl FnOnce(&mut Sheet), doubts: &[&str]) {
        let mut sheet = sheet();
        add(&mut sheet);
        assert_eq!(sheet.check(Terms::default()), Ok(()), "what is only doubted is taken");
        assert_eq!(sheet.doubts(Terms::default()), doubts);
    }

    fn lines(lines: &[(&str, &str, &str)]) -> impl FnOnce(&mut Sheet) {
        let lines: Vec<Line> =
            lines.iter().map(|(kind, quantity, limit)| line(kind, quantity, json!({ "limit": limit }))).collect();
        |sheet| sheet.lines.extend(lines)
    }

    // TM 5-3805-262-34: mains “0.005” beside rods 0.0005. TM 9-2815-225-34&P: taper “0.005”. TM 10-3930-653-14&P: “lobe lift”
    // 37.229 mm.
    #[test]
    fn what_is_hard_to_believe_is_doubted() {
        doubted(|_| (), &[]);
        doubted(
            lines(&[("main-journal", "out-of-round", "0.005 in"), ("crankpin", "out-of-round", "0.0005 in")]),
            &[
                "Main journal, out-of-round may be 0.005 in, ten times that of the crankpin: one of them is probably misprinted.",
                "Main journal, out-of-round may be 0.005 in, ten times what is common practice: check it against another manual.",
            ],
        );
        doubted(
            lines(&[("main-journal", "taper", "0.005 in")]),
            &[
                "Main journal, taper may be 0.005 in, ten times what is common practice: check it against another manual.",
            ],
        );
        doubted(lines(&[("main-journal", "taper", "0.002 in"), ("crankpin", "taper", "0.0005 in")]), &[]);
        doubted(
            |sheet| sheet.lines.push(line("lobe", "lift", json!({ "min": "37.229 mm", "max": "37.279 mm" }))),
            &["Cam lobe, lift: this looks like the height of the lobe, not its lift."],
        );
        doubted(|sheet| sheet.lines.push(line("lobe", "lift", json!({ "min": "0.3139 in" }))), &[]);
    }

    // TM 5-4320-300-14: 0.002 in undersize printed 2.996 to 2.998 in.
    #[test]
    fn a_size_that_does_not_follow_from_standard_is_doubted() {
        let row = |min: &str, max: &str| {
            let row = json!({ "journals": "mains", "size": "0.002 in", "min": min, "max": max });
            |sheet: &mut Sheet| sheet.undersizes.push(serde_json::from_value(row).unwrap())
        };
        doubted(row("2.997 in", "2.998 in"), &[]);
        doubted(row("2.9965 in", "2.9975 in"), &[]);
        doubted(
            row("2.996 in", "2.998 in"),
            &[
                "Size 0.0020 in of the main journals: journal 2.9960 in to 2.9980 in; from standard 2.9970 in to 2.9980 in would follow.",
            ],
        );
        doubted(
            row("2.987 in", "2.988 in"),
            &[
                "Size 0.0020 in of the main journals: journal 2.9870 in to 2.9880 in; from standard 2.9970 in to 2.9980 in would follow.",
            ],
        );
        let piston = json!({ "size": "0.010 in", "piston_min": "4.000 in", "piston_max": "4.001 in" });
        doubted(
            |sheet| {
                sheet.lines.push(line("piston", "diameter", json!({ "min": "3.996 in", "max": "3.997 in" })));
                sheet.oversizes.push(serde_json::from_value(piston).unwrap());
            },
            &[
                "Size 0.0100 in of the cylinder bores: piston 4.0000 in to 4.0010 in; from standard 4.0060 in to 4.0070 in would follow.",
            ],
        );
    }
}
