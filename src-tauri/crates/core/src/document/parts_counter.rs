//! The parts counter's page: what may be ordered now, in which size; apart from it what is held, and why.

use super::chapter::chapter;
use super::desk::Desk;
use super::head::{engine_only, paper};
use super::paper::{Block, Paper};
use crate::assess::Assessment;
use crate::engine::PartKind;
use crate::job::{Consent, ItemKey, Job, ListKind, Step};
use crate::list::ListItem;
use crate::measure::{Length, in_unit};
use crate::sheet::SizeGroup;
use crate::words::counted;

/// The page: it goes to a supplier, and names the engine, not the customer.
pub fn parts_counter(desk: &Desk<'_>) -> Paper {
    let Desk { job, assessment, .. } = desk;
    let came = |item: &&ListItem| item.tick.as_ref().is_some_and(|tick| tick.is_whole(item.quantity));
    let wanted: Vec<&ListItem> = items(assessment).filter(|item| !came(item)).collect();
    let (held, free): (Vec<&ListItem>, Vec<&ListItem>) = wanted.iter().partition(|item| !item.waits_for.is_empty());
    let mut blocks = vec![engine_only(desk)];
    if wanted.is_empty() {
        blocks.push(Block::Lead("Nothing is to be ordered.".into()));
        return paper(desk, TITLE, blocks);
    }
    blocks.push(Block::Blanks(["Order number", "Wanted by"].map(str::to_owned).into()));
    let free = (!free.is_empty()).then(|| {
        Block::table(
            "What may be ordered now: how many, what, the standard size, the size wanted, part number, how far it is.",
            [("Pieces", 2), ("What", 6), ("Standard", 5), ("Size wanted", 6), ("Part number", 5), ("State", 4)],
            free.iter().map(|item| row(job, item, state(item))),
        )
    });
    blocks.extend(chapter("OK to order", free));
    let held = (!held.is_empty()).then(|| {
        Block::table(
            "What must not be ordered yet: how many, what, the size as far as it is known, and what it waits for.",
            [("Pieces", 2), ("What", 6), ("Size so far", 5), ("Waits for", 12)],
            held.iter().map(|item| {
                let waits = match item.waits_for.as_slice() {
                    [first, rest @ ..] if !rest.is_empty() => {
                        format!("{first} And {}.", counted(rest.len(), "more reason", "more reasons"))
                    }
                    all => all.join(" "),
                };
                [item.quantity.to_string(), item.what.clone(), item.detail.clone(), waits]
            }),
        )
    });
    blocks.extend(chapter("Held: do not order", held));
    blocks.extend(chapter("Not yet answered by the customer", unanswered(assessment, &wanted).map(Block::Paragraph)));
    paper(desk, TITLE, blocks)
}

const TITLE: &str = "For the parts counter";

fn items(assessment: &Assessment) -> impl Iterator<Item = &ListItem> {
    assessment.list(ListKind::Order).into_iter().flat_map(|list| &list.items)
}

fn row(job: &Job, item: &ListItem, state: String) -> [String; 6] {
    let number = item.tick.as_ref().map(|tick| tick.part_number.clone()).unwrap_or_default();
    // What is no part of the engine, such as gaskets and oil, comes in no sizes.
    let is_sized = item.detail.is_empty() && matches!(item.asked.key, ItemKey::Order { .. });
    let wanted = if is_sized { "standard".into() } else { item.detail.clone() };
    [item.quantity.to_string(), item.what.clone(), standard(job, item), wanted, number, state]
}

/// The standard size of what the part runs on or in, as the manual gives it; empty where it comes in no sizes.
fn standard(job: &Job, item: &ListItem) -> String {
    let ItemKey::Order { kind, .. } = item.asked.key else { return String::new() };
    let unit = job.sheet.head.unit;
    let range = |(least, most): (Length, Length)| format!("{} to {}", in_unit(least, unit), in_unit(most, unit));
    let group = SizeGroup::ALL.into_iter().find(|group| group.mate() == kind || group.kind() == kind);
    let group = if kind == PartKind::Rings { Some(SizeGroup::Bores) } else { group };
    // What is ordered is not what the manual gives the size of: pistons go by their bore, shells by their journal.
    let of = match group {
        Some(group) if group.kind() == kind => "",
        Some(SizeGroup::Bores) => "bore ",
        _ => "journal ",
    };
    let row = group.and_then(|group| job.sheet.standard(group));
    row.map(|row| format!("{of}{}", range(row.diameter))).unwrap_or_default()
}

fn state(item: &ListItem) -> String {
    let Some(tick) = &item.tick else { return String::new() };
    let steps = [(Step::Sent, "ordered"), (Step::Back, "came")];
    let told = steps.into_iter().filter(|(step, _)| tick.at(*step) > 0);
    let told: Vec<String> = told.map(|(step, words)| format!("{words} {}", tick.at(step))).collect();
    told.join(", ")
}

/// What nobody has said yes to yet: it is held, and the counter should know why nothing comes.
fn unanswered(assessment: &Assessment, wanted: &[&ListItem]) -> Option<String> {
    let approval = &assessment.approval;
    let later = wanted.iter().filter(|item| item.consent == Some(Consent::Later));
    let names: Vec<&str> = match (&approval.shown, &approval.answer) {
        (Some(_), None) => return Some("The customer has not answered the proposal yet.".into()),
        _ => later.map(|item| item.what.as_str()).collect(),
    };
    (!names.is_empty()).then(|| format!("Put off by the customer: {}.", names.join("; ")))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use serde_json::json;

    #[test]
    fn what_is_held_stands_apart_from_what_may_be_ordered() {
        let changes = [
            arrange(&Arrangement::inline(4)),
            json!({ "do": "tag", "part": "lobe.1.intake.1", "tag": "worn-nose", "grade": 4 }),
            json!({ "do": "tag", "part": "rod-shell.2.upper", "tag": "copper-showing", "grade": 4 }),
        ];
        let job = job_of(&changes);
        let paper = parts_counter(&Desk::bare(&job, &assess(&job)));
        let tables: Vec<String> = paper
            .blocks
            .iter()
            .filter_map(|block| match block {
                Block::Table { rows, .. } => Some(format!("{rows:?}")),
                _ => None,
            })
            .collect();
        let [free, held] = &tables[..] else { panic!("{paper:?}") };
        assert!(free.contains("Camshaft") && !free.contains("Rod bearing"), "{free}");
        assert!(held.contains("Rod bearing shells") && !held.contains("\"Camshaft\""), "{held}");
    }
}
