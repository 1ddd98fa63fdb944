//! The closing sheet: what was fitted, in which sizes, with which clearances, and what is still open.

use super::condition_report::{engine_facts, subtitle};
use super::{Block, Paper, Shop};
use crate::assess::Assessment;
use crate::job::{Job, ListKind};
use crate::measure::{Conformity, Phase};
use crate::words::capitalised;

/// Puts the closing sheet together. `date` is the local date, as year, month, day.
pub fn closing_sheet(job: &Job, assessment: &Assessment, date: (i32, u8, u8), shop: &Shop) -> Paper {
    let mut blocks = Vec::new();
    engine_facts(job, shop, &assessment.engine, &mut blocks);
    let open: Vec<String> = assessment.still_open.iter().map(|open| open.words.clone()).collect();
    blocks.push(Block::Lead(match open.len() {
        0 => "Nothing is open.".into(),
        1 => "One thing is still open.".into(),
        n => format!("{n} things are still open."),
    }));
    sizes(assessment, &mut blocks);
    fitted(assessment, &mut blocks);
    parts_used(assessment, &mut blocks);
    if !open.is_empty() {
        blocks.push(heading("Still open"));
        blocks.push(Block::Points(open));
    }
    blocks.push(Block::Caution(
        "Run in and retighten as the engine’s own manual says. Check oil pressure before load is put on.".into(),
    ));
    Paper { title: "Closing sheet".into(), subtitle: subtitle(job, assessment), date, blocks }
}

fn heading(text: &str) -> Block {
    Block::Heading { level: 1, text: text.into() }
}

fn sizes(assessment: &Assessment, blocks: &mut Vec<Block>) {
    let groups = assessment.sizing.groups.iter().filter(|plan| plan.size.is_some());
    let facts: Vec<(String, String)> = groups
        .map(|plan| (capitalised(plan.group.label()), format!("{}, {}", plan.size_shown, plan.finished_shown)))
        .collect();
    if !facts.is_empty() {
        blocks.push(heading("Sizes"));
        blocks.push(Block::Facts(facts));
    }
}

fn fitted(assessment: &Assessment, blocks: &mut Vec<Block>) {
    let rows: Vec<Vec<String>> = assessment
        .parts
        .iter()
        .flat_map(|view| {
            let late = view.figures.iter().filter(|figure| figure.phase != Phase::Found);
            late.map(|figure| {
                vec![
                    view.label.clone(),
                    format!("{}, {}", figure.name, figure.phase.label()),
                    figure.shown.clone(),
                    figure.limits.clone(),
                    figure.verdict.map_or("", Conformity::words).to_owned(),
                ]
            })
        })
        .collect();
    if rows.is_empty() {
        return;
    }
    blocks.push(heading("Measured after machining and fitting"));
    blocks.push(Block::Table {
        summary: "Every size and clearance measured after machining and fitting, with its limits.".into(),
        head: ["Part", "What", "Measured", "Limits", "So"].map(str::to_owned).to_vec(),
        widths: vec![5, 5, 5, 5, 3],
        rows,
    });
}

/// What was ordered and came, with the notes: part numbers, suppliers.
fn parts_used(assessment: &Assessment, blocks: &mut Vec<Block>) {
    let ordered = assessment.lists.iter().filter(|list| list.kind == ListKind::Order).flat_map(|list| &list.items);
    let rows: Vec<Vec<String>> = ordered
        .filter_map(|item| {
            let tick = item.tick.as_ref()?;
            let quantity = format!("{} of {}", tick.done, item.quantity);
            Some(vec![
                quantity,
                item.what.clone(),
                item.detail.clone(),
                tick.part_number.clone(),
                tick.date.clone(),
                tick.note.clone(),
            ])
        })
        .collect();
    if rows.is_empty() {
        return;
    }
    blocks.push(heading("Parts"));
    blocks.push(Block::Table {
        summary: "The parts that came, with size, part number, date and note.".into(),
        head: ["Came", "What", "Size", "Part number", "When", "Note"].map(str::to_owned).to_vec(),
        widths: vec![2, 5, 4, 4, 3, 5],
        rows,
    });
}
