//! The form that is usual after machining, where the engine's manual says nothing of it: told as usual, never as the manual's.

use crate::engine::{At, Part, PartKind};
use crate::job::Job;
use crate::measure::{Length, Quantity, Station};
use crate::sheet::Proportions;

/// Of a journal that is ground, as far as the sheet is silent: in a sentence, empty where nothing is usual or the shop
/// follows no general rules. Of a bored cylinder no general figure is published.
pub(super) fn usual_form(job: &Job, part: Part) -> String {
    let told: Vec<String> = match part.kind {
        PartKind::MainJournal | PartKind::Crankpin => {
            [(Quantity::OutOfRound, "out-of-round"), (Quantity::Taper, "taper")]
                .into_iter()
                .filter_map(|(quantity, name)| at_most(job, part, quantity, name))
                .collect()
        }
        PartKind::HousingBore => {
            let block = Part { kind: PartKind::Block, at: At::Engine };
            [
                at_most(job, part, Quantity::OutOfRound, "out-of-round (wider than high)"),
                at_most(job, block, Quantity::LineAdjacent, "out of line between neighbours"),
                at_most(job, block, Quantity::LineOverall, "over all of them"),
            ]
            .into_iter()
            .flatten()
            .collect()
        }
        _ => vec![],
    };
    if told.is_empty() {
        String::new()
    } else {
        format!("Usual, not the manual’s: {} (common practice).", told.join(", "))
    }
}

/// What is usual, unless the sheet gives the form of a new part or allows even a worn one less.
fn at_most(job: &Job, part: Part, quantity: Quantity, name: &str) -> Option<String> {
    let sheet = &job.sheet;
    if !sheet.head.general_rules || sheet.new_range(part, quantity).1.is_some() {
        return None;
    }
    let usual = sheet.general(part, quantity, Proportions::default())?.bounds.most?.at;
    let stated = sheet.limits(part, quantity, "", None::<Station>, Proportions::default());
    let worn: Option<Length> = stated.and_then(|limits| limits.bounds.most).map(|most| most.at);
    let is_tighter = worn.is_some_and(|worn| worn < usual);
    let unit = sheet.head.unit;
    // No finer than a micrometer reads.
    (!is_tighter).then(|| format!("{name} at most {}", usual.show(unit.usual_step(), unit)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::{Value, json};

    #[track_caller]
    fn check(sheet: Value, part: &str, told: &str) {
        let job = Job { sheet: serde_json::from_value(sheet).unwrap(), ..Job::default() };
        assert_eq!(usual_form(&job, part.parse().unwrap()), told);
    }

    fn line(quantity: &str, given: &str, value: &str) -> Value {
        let mut line = json!({ "of": { "kind": "main-journal", "quantity": quantity } });
        line[given] = value.into();
        line
    }

    #[test]
    fn what_the_manual_leaves_open_is_told_as_usual() {
        let silent =
            "Usual, not the manual’s: out-of-round at most 0.013 mm, taper at most 0.013 mm (common practice).";
        let head = json!({ "name": "", "unit": "millimetre" });
        check(json!({ "head": head }), "main-journal.2", silent);
        // A limit of wear is not the form of a fresh surface, but what allows even a worn one less goes before.
        let worn = [line("out-of-round", "limit", "0.02 mm"), line("taper", "limit", "0.01 mm")];
        let round = "Usual, not the manual’s: out-of-round at most 0.013 mm (common practice).";
        check(json!({ "head": head, "lines": worn }), "main-journal.2", round);
        let stated = [line("out-of-round", "max", "0.005 mm"), line("taper", "max", "0.005 mm")];
        check(json!({ "head": head, "lines": stated }), "main-journal.2", "");
        check(json!({ "head": { "name": "", "unit": "millimetre", "general_rules": false } }), "main-journal.2", "");
        // How far a cylinder may wear says nothing of a freshly bored one.
        check(json!({ "head": head }), "bore.2", "");
        check(
            json!({ "head": { "name": "", "unit": "inch" } }),
            "housing-bore.2",
            "Usual, not the manual’s: out-of-round (wider than high) at most 0.0010 in, out of line between neighbours at most \
             0.0010 in, over all of them at most 0.0020 in (common practice).",
        );
    }
}
