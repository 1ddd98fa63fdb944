//! The closing sheet: what was fitted, in which sizes, with which clearances, and what is still open.

use super::cautions::governs;
use super::chapter::chapter;
use super::desk::Desk;
use super::head::{customers_paper, engine_facts};
use super::paper::{Block, Paper};
use crate::assess::Assessment;
use crate::engine::Part;
use crate::figure::Figure;
use crate::job::{ListKind, Step};
use crate::measure::{Phase, Quantity};
use crate::sizing::ReadBack;
use crate::words::capitalised;

/// Puts the closing sheet together.
pub fn closing_sheet(desk: &Desk<'_>) -> Paper {
    let assessment = desk.assessment;
    let open: Vec<String> = assessment.still_open.iter().map(|open| open.words.clone()).collect();
    let lead = match open.len() {
        0 => "Nothing is open.".into(),
        1 => "One thing is still open.".into(),
        n => format!("{n} things are still open."),
    };
    let mut blocks: Vec<Block> = engine_facts(desk).into_iter().chain([Block::Lead(lead)]).collect();
    blocks.extend(chapter("Sizes", sizes(assessment)));
    blocks.extend(chapter("Machined: before, wanted, after", machined(assessment)));
    blocks.extend(chapter("Measured after machining and fitting", fitted(assessment)));
    blocks.extend(chapter("Parts", parts_used(assessment)));
    blocks.extend(chapter("Still open", (!open.is_empty()).then_some(Block::Points(open))));
    blocks.push(governs("Run in and retighten as the manual says. Check oil pressure before load is put on."));
    customers_paper(desk, "Closing sheet", blocks)
}

fn sizes(assessment: &Assessment) -> Option<Block> {
    let groups = assessment.sizing.groups.iter().filter(|plan| plan.size.is_some());
    let facts: Vec<(String, String)> = groups
        .map(|plan| (capitalised(plan.group.label()), format!("{}, {}", plan.size_shown, plan.finished_shown)))
        .collect();
    (!facts.is_empty()).then_some(Block::Facts(facts))
}

/// What came back, judged by the size that was asked for and not by the limit of wear.
fn machined(assessment: &Assessment) -> Option<Block> {
    let sizing = &assessment.sizing;
    let came = |back: &'_ ReadBack| back.parts.iter().any(|line| !line.shown.is_empty());
    let rows: Vec<[String; 5]> = sizing
        .read_back
        .iter()
        .filter(|back| came(back))
        .flat_map(|back| {
            back.parts.iter().map(|line| {
                let verdict = if line.problem.is_empty() { "right".into() } else { capitalised(&line.problem) };
                [line.label.clone(), line.found_shown.clone(), back.asked.clone(), line.shown.clone(), verdict]
            })
        })
        .collect();
    (!rows.is_empty()).then(|| {
        Block::table(
            "Each part that was machined: its size as found, the size asked for, and the size it came back with.",
            [("Part", 4), ("Before", 4), ("Wanted", 5), ("After", 4), ("Result", 4)],
            rows,
        )
    })
}

/// Whether it was read back beside the size that was asked for.
fn is_read_back(assessment: &Assessment, part: Part, figure: &Figure) -> bool {
    let of_size = figure.phase == Phase::Machined && figure.quantity == Quantity::Diameter;
    of_size && assessment.sizing.read_back.iter().flat_map(|back| &back.parts).any(|line| line.part == part)
}

fn fitted(assessment: &Assessment) -> Option<Block> {
    let rows: Vec<[String; 5]> = assessment
        .parts
        .iter()
        .flat_map(|view| {
            let late = view.figures.iter().filter(|figure| figure.phase != Phase::Found);
            let late = late.filter(|figure| !is_read_back(assessment, view.part, figure));
            late.map(|figure| {
                [
                    view.label.clone(),
                    format!("{}, {}", figure.name, figure.phase.label()),
                    figure.shown.clone(),
                    figure.limits.clone(),
                    figure.verdict_words().to_owned(),
                ]
            })
        })
        .collect();
    (!rows.is_empty()).then(|| {
        Block::table(
            "Every size and clearance measured after machining and fitting, with its limits.",
            [("Part", 5), ("What", 5), ("Measured", 5), ("Limits", 5), ("Result", 4)],
            rows,
        )
    })
}

/// What was ordered and came, with the notes: part numbers, suppliers.
fn parts_used(assessment: &Assessment) -> Option<Block> {
    let ordered = assessment.list(ListKind::Order).into_iter().flat_map(|list| &list.items);
    let rows: Vec<[String; 7]> = ordered
        .filter_map(|item| {
            let tick = item.tick.as_ref()?;
            let quantity = format!("{} of {}", tick.at(Step::Back), item.quantity);
            Some([
                quantity,
                item.what.clone(),
                item.detail.clone(),
                tick.part_number.clone(),
                tick.date_of(Step::Back).to_owned(),
                tick.note.clone(),
                capitalised(item.supply.map_or("", |supply| supply.old_words())),
            ])
        })
        .collect();
    (!rows.is_empty()).then(|| {
        Block::table(
            "The parts that came, with size, part number, date and note, and where the old ones went.",
            [("Came", 2), ("What", 5), ("Size", 4), ("Part number", 4), ("When", 3), ("Note", 4), ("Old part", 3)],
            rows,
        )
    })
}
