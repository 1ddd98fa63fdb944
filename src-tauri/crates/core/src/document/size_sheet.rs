//! The sheet of the rebuild's sizes: for the machine shop, for the order, and to keep with the engine.

use super::condition_report::{engine_facts, subtitle};
use super::{Block, Paper, Shop};
use crate::assess::Assessment;
use crate::engine::Part;
use crate::figure::Figure;
use crate::job::Job;
use crate::measure::{Conformity, Phase, in_unit};
use crate::sizing::{Action, GroupPlan};
use crate::view::OrderState;
use crate::words::capitalised;
use crate::work::Outcome;

/// Puts the sheet together. `date` is the local date, as year, month, day.
pub fn size_sheet(job: &Job, assessment: &Assessment, date: (i32, u8, u8), shop: &Shop) -> Paper {
    let mut blocks = Vec::new();
    engine_facts(job, shop, &assessment.engine, &mut blocks);
    if assessment.parts.iter().all(|view| view.readings.is_empty()) {
        blocks.push(Block::Lead("Nothing has been measured yet.".into()));
    } else {
        groups(assessment, &mut blocks);
        machining(assessment, &mut blocks);
        orders(assessment, &mut blocks);
        clearances(assessment, &mut blocks);
        read_back(assessment, &mut blocks);
        for phase in Phase::ALL {
            measured(assessment, phase, &mut blocks);
        }
    }
    grounds(job, assessment, &mut blocks);
    Paper { title: "Sheet of sizes".into(), subtitle: subtitle(job, assessment), date, blocks }
}

fn heading(text: &str) -> Block {
    Block::Heading { level: 1, text: text.into() }
}

fn texts<const N: usize>(cells: [&str; N]) -> Vec<String> {
    cells.map(str::to_owned).to_vec()
}

fn row<const N: usize>(cells: [&str; N]) -> Vec<String> {
    cells.map(unbroken).to_vec()
}

/// For paper: a number stays on one line with its unit.
pub(super) fn unbroken(cell: &str) -> String {
    [" mm", " in"].iter().fold(cell.to_owned(), |cell, unit| join_unit(&cell, unit))
}

fn join_unit(cell: &str, unit: &str) -> String {
    let mut joined = String::with_capacity(cell.len());
    let mut rest = cell;
    while let Some((before, after)) = rest.split_once(unit) {
        let after_number = before.ends_with(|c: char| c.is_ascii_digit());
        let ends_word = !after.starts_with(char::is_alphanumeric);
        joined.push_str(before);
        joined.push_str(&if after_number && ends_word { unit.replace(' ', "\u{a0}") } else { unit.to_owned() });
        rest = after;
    }
    joined + rest
}

fn groups(assessment: &Assessment, blocks: &mut Vec<Block>) {
    blocks.push(heading("What is done"));
    let line = |plan: &GroupPlan| {
        let state = if plan.settled { "" } else { "Not settled: readings are missing. " };
        row([
            &capitalised(plan.group.label()),
            &plan.found_shown,
            &plan.words(),
            &plan.finished_shown,
            &format!("{state}{}", plan.because),
        ])
    };
    blocks.push(Block::Table {
        summary: "The journals and bores by groups: the size found, the work, the finished size and why.".into(),
        head: texts(["Group", "Found", "Work", "Finished size", "Why"]),
        widths: vec![3, 3, 4, 4, 8],
        rows: assessment.sizing.groups.iter().map(line).collect(),
    });
    let notices: Vec<String> = assessment.sizing.groups.iter().flat_map(|plan| plan.notices.clone()).collect();
    if !notices.is_empty() {
        blocks.push(Block::Points(notices));
    }
    let missing: Vec<String> = assessment
        .sizing
        .groups
        .iter()
        .filter(|plan| plan.action != Action::Open)
        .flat_map(|plan| plan.missing.iter().map(|missing| missing.words.clone()))
        .collect();
    if !missing.is_empty() {
        blocks.push(Block::Paragraph("Still missing:".into()));
        blocks.push(Block::Points(missing));
    }
}

fn machining(assessment: &Assessment, blocks: &mut Vec<Block>) {
    if let Some(table) = machining_table(assessment) {
        blocks.push(heading("For the machine shop"));
        blocks.push(table);
    }
}

/// Each part to be machined with its sizes before and wanted; none if nothing is machined.
pub(super) fn machining_table(assessment: &Assessment) -> Option<Block> {
    // A group may be planned to be ground or bored although its shaft or block is renewed.
    let machined: Vec<Part> = assessment
        .parts
        .iter()
        .filter(|view| view.decision.outcome == Outcome::Machine)
        .map(|view| view.part)
        .collect();
    let is_machined = |part| machined.contains(&part);
    let rows: Vec<Vec<String>> = assessment
        .sizing
        .groups
        .iter()
        .flat_map(|plan| plan.machined().map(move |part| (plan, part)))
        .filter(|(_, part)| is_machined(part.part))
        .map(|(plan, part)| {
            let found = if part.found_shown.is_empty() { "not measured" } else { &part.found_shown };
            let wanted = if plan.finished_shown.is_empty() { "not known yet" } else { &plan.finished_shown };
            row([&part.label, found, wanted, &part.take_off_shown, &part.faults.join(" ")])
        })
        .collect();
    (!rows.is_empty()).then(|| Block::Table {
        summary: "Each part to be machined: its size as found, the size wanted, what comes off, and what is wrong."
            .into(),
        head: texts(["Part", "Found", "Wanted", "Comes off", "What is wrong"]),
        widths: vec![4, 4, 4, 3, 8],
        rows,
    })
}

fn orders(assessment: &Assessment, blocks: &mut Vec<Block>) {
    if assessment.sizing.orders.is_empty() {
        return;
    }
    blocks.push(heading("To order"));
    let entry = |line: &crate::view::OrderLine| {
        let state = if line.state == OrderState::Free { "free to order" } else { "held" };
        let waits = match line.waits_for.as_slice() {
            [] => String::new(),
            [one] => one.clone(),
            [first, rest @ ..] => format!("{first} And {} more.", rest.len()),
        };
        row([&line.quantity.to_string(), &capitalised(&line.what), &line.size_shown, state, &waits])
    };
    blocks.push(Block::Table {
        summary: "What to order in which size, and whether it may be ordered yet.".into(),
        head: texts(["Quantity", "What", "Size", "State", "Waits for"]),
        widths: vec![2, 5, 4, 3, 8],
        rows: assessment.sizing.orders.iter().map(entry).collect(),
    });
}

fn clearances(assessment: &Assessment, blocks: &mut Vec<Block>) {
    if assessment.sizing.clearances.is_empty() {
        return;
    }
    blocks.push(heading("Clearances to expect"));
    let entry = |line: &crate::sizing::Predicted| {
        let verdict = line.verdict.map_or("", |verdict| match verdict {
            Conformity::Within => "right in any case",
            Conformity::TooClose => "measure the new parts",
            Conformity::Outside => "wrong in any case",
        });
        row([&line.label, &line.worst_case_shown, &line.likely_shown, &line.limits, verdict, &line.because])
    };
    blocks.push(Block::Table {
        summary: "The running clearance to expect at each bearing and piston, against its limits.".into(),
        head: texts(["At", "At worst", "Most likely", "Limits", "So", "From"]),
        widths: vec![3, 4, 4, 4, 4, 6],
        rows: assessment.sizing.clearances.iter().map(entry).collect(),
    });
}

fn read_back(assessment: &Assessment, blocks: &mut Vec<Block>) {
    for back in &assessment.sizing.read_back {
        if back.parts.iter().all(|line| line.shown.is_empty()) {
            continue;
        }
        blocks.push(heading(&format!("Back from the machine shop: {}", back.group.label())));
        blocks.push(Block::Paragraph(format!(
            "Asked for: {}. {}",
            back.asked,
            if back.confirmed { "Every part is right." } else { "Not confirmed." }
        )));
        blocks.push(Block::Table {
            summary: "Each part as it came back from the machine shop.".into(),
            head: texts(["Part", "Measured", "So", "What is wrong or missing"]),
            widths: vec![4, 4, 3, 9],
            rows: back
                .parts
                .iter()
                .map(|line| {
                    let verdict = line.verdict.map_or("not measured", Conformity::words);
                    row([&line.label, &line.shown, verdict, &line.problem])
                })
                .collect(),
        });
    }
}

fn measured(assessment: &Assessment, phase: Phase, blocks: &mut Vec<Block>) {
    let rows: Vec<Vec<String>> = assessment
        .parts
        .iter()
        .flat_map(|view| {
            let of_phase = view.figures.iter().filter(move |figure| figure.phase == phase);
            of_phase.map(|figure| {
                let verdict = figure.verdict.map_or("", Conformity::words);
                let limits =
                    if figure.general { format!("{} (general rule)", figure.limits) } else { figure.limits.clone() };
                row([&view.label, &figure.name, &figure.shown, &limits, verdict])
            })
        })
        .collect();
    if rows.is_empty() {
        return;
    }
    blocks.push(heading(&format!("Measured {}", phase.label())));
    blocks.push(Block::Table {
        summary: format!("All that was measured {}, with its limits.", phase.label()),
        head: texts(["Part", "What", "Measured", "Limits", "So"]),
        widths: vec![5, 5, 5, 5, 3],
        rows,
    });
}

fn grounds(job: &Job, assessment: &Assessment, blocks: &mut Vec<Block>) {
    blocks.push(heading("What this rests on"));
    let head = &job.sheet.head;
    let named = |name: &str, source: &str| match (name.trim(), source.trim()) {
        ("", "") => "no spec sheet is entered: only general rules were applied".to_owned(),
        (name, "") => name.to_owned(),
        ("", source) => source.to_owned(),
        (name, source) => format!("{name} ({source})"),
    };
    let mut facts = vec![("Spec sheet".to_owned(), named(&head.name, &head.source))];
    if let Some(clean_up) = &head.clean_up {
        facts.push(("Allowance for cleaning up".into(), format!("{clean_up} on the diameter")));
    }
    for instrument in job.instruments.values() {
        let checked =
            if instrument.checked.is_empty() { String::new() } else { format!(", checked {}", instrument.checked) };
        let trust = in_unit(instrument.uncertainty.length, head.unit);
        facts.push((instrument.name.clone(), format!("{}, ± {trust}{checked}", instrument.kind.name())));
    }
    blocks.push(Block::Facts(facts));
    if !assessment.sheet_doubts.is_empty() {
        blocks.push(Block::Paragraph("Hard to believe in the spec sheet:".into()));
        blocks.push(Block::Points(assessment.sheet_doubts.clone()));
    }
    blocks.push(Block::Caution(
        "The engine’s own manual governs. Sizes hold at 20 °C. Measure every new part before it is fitted.".into(),
    ));
}

/// The figures of all parts as a flat table with a head row, for a spreadsheet: lengths in millimetres.
pub fn size_table(assessment: &Assessment) -> Vec<Vec<String>> {
    let head = texts([
        "part",
        "name",
        "phase",
        "quantity",
        "place",
        "low_mm",
        "high_mm",
        "uncertainty_mm",
        "shown",
        "limits",
        "verdict",
        "source",
    ]);
    let row = |view: &crate::view::PartView, figure: &Figure| {
        texts([
            &view.part.to_string(),
            &view.label,
            figure.phase.label(),
            &figure.name,
            &figure.at,
            &figure.low.millimetres(),
            &figure.high.millimetres(),
            &figure.uncertainty.millimetres(),
            &figure.shown,
            &figure.limits,
            figure.verdict.map_or("", Conformity::words),
            &figure.source,
        ])
    };
    let rows = assessment.parts.iter().flat_map(|view| view.figures.iter().map(|figure| row(view, figure)));
    let expected = assessment.sizing.clearances.iter().map(|line| {
        texts([
            &line.part.to_string(),
            &line.label,
            "to expect",
            "clearance, at worst",
            "",
            &line.worst_case.0.millimetres(),
            &line.worst_case.1.millimetres(),
            "",
            &line.worst_case_shown,
            &line.limits,
            line.verdict.map_or("", Conformity::words),
            &line.source,
        ])
    });
    std::iter::once(head).chain(rows).chain(expected).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_stays_with_its_unit_and_words_are_left_alone() {
        assert_eq!(
            row(["2.9890 to 2.9900 in", "grind all to 0.25 mm undersize", "7 in-line", "look in the sheet"]),
            ["2.9890 to 2.9900\u{a0}in", "grind all to 0.25\u{a0}mm undersize", "7\u{a0}in-line", "look in the sheet",]
        );
    }
}
