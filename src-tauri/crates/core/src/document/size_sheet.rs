//! The sheet of the rebuild's sizes: for the machine shop, for the order, and to keep with the engine.

use super::cautions::governs;
use super::chapter::chapter;
use super::desk::Desk;
use super::head::{engine_facts, paper};
use super::paper::{Block, Paper};
use crate::assess::Assessment;
use crate::figure::Figure;
use crate::measure::{Conformity, Phase, in_unit};
use crate::sizing::{Action, GroupPlan, Missing, Predicted, ReadBackLine};
use crate::view::{OrderLine, PartView};
use crate::words::{capitalised, counted};
use crate::work::Outcome;

/// Puts the sheet together.
pub fn size_sheet(desk: &Desk<'_>) -> Paper {
    let assessment = desk.assessment;
    let mut blocks: Vec<Block> = engine_facts(desk).into_iter().collect();
    if assessment.parts.iter().all(|view| view.readings.is_empty()) {
        blocks.push(Block::Lead("Nothing has been measured yet.".into()));
    } else {
        blocks.extend(groups(assessment));
        blocks.extend(chapter("For the machine shop", machining_table(assessment)));
        blocks.extend(orders(assessment));
        blocks.extend(clearances(assessment));
        blocks.extend(read_back(assessment));
        blocks.extend(Phase::ALL.into_iter().flat_map(|phase| measured(assessment, phase)));
    }
    blocks.extend(grounds(desk));
    paper(desk, "Sheet of sizes", blocks)
}

fn texts<const N: usize>(cells: [&str; N]) -> [String; N] {
    cells.map(str::to_owned)
}

fn groups(assessment: &Assessment) -> Vec<Block> {
    let plans = || assessment.sizing.groups.iter();
    let line = |plan: &GroupPlan| {
        let state = if plan.settled { "" } else { "Not settled: readings are missing. " };
        [
            capitalised(plan.group.label()),
            plan.found_shown.clone(),
            plan.words.clone(),
            plan.finished_shown.clone(),
            format!("{state}{}", plan.because),
        ]
    };
    let mut body = vec![Block::table(
        "The journals and bores by groups: the size found, the work, the finished size and why.",
        [("Group", 3), ("Found", 3), ("Work", 4), ("Finished size", 4), ("Why", 8)],
        plans().map(line),
    )];
    let notices: Vec<String> = plans().flat_map(|plan| plan.notices.iter().cloned()).collect();
    if !notices.is_empty() {
        body.push(Block::Points(notices));
    }
    let missing: Vec<String> = plans()
        .filter(|plan| plan.action != Action::Open)
        .flat_map(|plan| plan.missing.iter().map(Missing::sentence))
        .collect();
    if !missing.is_empty() {
        body.extend([Block::Paragraph("Still missing:".into()), Block::Points(missing)]);
    }
    chapter("What is done", body)
}

/// Each part to be machined with its sizes before and wanted; none if nothing is machined.
pub(super) fn machining_table(assessment: &Assessment) -> Option<Block> {
    // A group may be planned to be ground or bored although its shaft or block is renewed.
    let is_machined =
        |part| assessment.parts.iter().any(|view| view.part == part && view.decision.outcome == Outcome::Machine);
    let rows: Vec<[String; 5]> = assessment
        .sizing
        .groups
        .iter()
        .flat_map(|plan| plan.machined().map(move |part| (plan, part)))
        .filter(|(_, part)| is_machined(part.part))
        .map(|(plan, part)| {
            let found = if part.found_shown.is_empty() { "not measured" } else { &part.found_shown };
            let wanted = if plan.finished_shown.is_empty() { "not known yet" } else { &plan.finished_shown };
            let faults: Vec<String> = part.faults.iter().map(|fault| capitalised(fault)).collect();
            texts([&part.label, found, wanted, &part.take_off_shown, &faults.join(" ")])
        })
        .collect();
    (!rows.is_empty()).then(|| {
        Block::table(
            "Each part to be machined: its size as found, the size wanted, what comes off, and what is wrong.",
            [("Part", 4), ("Found", 4), ("Wanted", 4), ("Comes off", 3), ("What is wrong", 8)],
            rows,
        )
    })
}

fn orders(assessment: &Assessment) -> Vec<Block> {
    let orders = &assessment.sizing.orders;
    let entry = |line: &OrderLine| {
        let waits = match line.waits_for.as_slice() {
            [] => String::new(),
            [one] => one.clone(),
            [first, rest @ ..] => format!("{first} And {}.", counted(rest.len(), "more reason", "more reasons")),
        };
        [
            line.quantity.to_string(),
            capitalised(&line.what),
            line.size_shown.clone(),
            line.state.words().to_owned(),
            waits,
        ]
    };
    let table = (!orders.is_empty()).then(|| {
        Block::table(
            "What to order in which size, and whether it may be ordered yet.",
            [("Quantity", 2), ("What", 5), ("Size", 4), ("State", 3), ("Waits for", 8)],
            orders.iter().map(entry),
        )
    });
    chapter("To order", table)
}

fn clearances(assessment: &Assessment) -> Vec<Block> {
    let clearances = &assessment.sizing.clearances;
    let entry = |line: &Predicted| {
        let verdict = line.verdict.map_or("", Conformity::of_what_comes);
        texts([&line.label, &line.worst_case_shown, &line.likely_shown, &line.limits, verdict, &line.because])
    };
    let table = (!clearances.is_empty()).then(|| {
        Block::table(
            "The running clearance to expect at each bearing and piston, against its limits.",
            [("At", 3), ("At worst", 4), ("Most likely", 4), ("Limits", 4), ("Result", 4), ("From", 6)],
            clearances.iter().map(entry),
        )
    });
    chapter("Clearances to expect", table)
}

fn read_back(assessment: &Assessment) -> impl Iterator<Item = Block> {
    let came = assessment.sizing.read_back.iter().filter(|back| back.parts.iter().any(|line| !line.shown.is_empty()));
    let row = |line: &ReadBackLine| {
        let verdict = line.verdict.map_or("not measured", Conformity::words);
        texts([&line.label, &line.shown, verdict, &capitalised(&line.problem)])
    };
    came.flat_map(move |back| {
        let so = if back.confirmed { "Every part is right." } else { "Not confirmed." };
        [
            Block::heading(format!("Back from the machine shop: {}", back.label)),
            Block::Paragraph(format!("Asked for: {}. {so}", back.asked)),
            Block::table(
                "Each part as it came back from the machine shop.",
                [("Part", 4), ("Measured", 4), ("Result", 4), ("What is wrong or missing", 9)],
                back.parts.iter().map(row),
            ),
        ]
    })
}

fn measured(assessment: &Assessment, phase: Phase) -> Vec<Block> {
    let row = |view: &PartView, figure: &Figure| {
        let general = if figure.general { " (general rule)" } else { "" };
        texts([
            &view.label,
            &figure.name,
            &figure.shown,
            &format!("{}{general}", figure.limits),
            figure.verdict_words(),
        ])
    };
    let of_phase = |view: &'_ PartView| -> Vec<[String; 5]> {
        view.figures.iter().filter(|figure| figure.phase == phase).map(|figure| row(view, figure)).collect()
    };
    let rows: Vec<[String; 5]> = assessment.parts.iter().flat_map(of_phase).collect();
    let table = (!rows.is_empty()).then(|| {
        Block::table(
            format!("All that was measured {}, with its limits.", phase.label()),
            [("Part", 5), ("What", 5), ("Measured", 5), ("Limits", 5), ("Result", 4)],
            rows,
        )
    });
    chapter(&format!("Measured {}", phase.label()), table)
}

fn grounds(desk: &Desk<'_>) -> Vec<Block> {
    let Desk { job, assessment, .. } = desk;
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
    let mut body = vec![Block::Facts(facts)];
    if !assessment.sheet_doubts.is_empty() {
        body.push(Block::Paragraph("Hard to believe in the spec sheet:".into()));
        body.push(Block::Points(assessment.sheet_doubts.clone()));
    }
    body.push(governs("Sizes hold at 20 °C. Measure every new part before it is fitted."));
    chapter("What this rests on", body)
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
    let row = |view: &PartView, figure: &Figure| {
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
            figure.verdict_words(),
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
    std::iter::once(head).chain(rows).chain(expected).map(Vec::from).collect()
}
