//! One list alone, to print, send or take along.

use super::cautions::cautioned;
use super::desk::Desk;
use super::head::{engine_only, paper};
use super::paper::{Block, Paper};
use crate::assess::Assessment;
use crate::job::{ListKind, Step, StepTaken, Tick};
use crate::list::{ListItem, WorkList};
use crate::words::counted;

/// The list as a paper. It goes to suppliers and machine shops: it names the engine, not the customer.
pub fn work_list(desk: &Desk<'_>, kind: ListKind) -> Paper {
    let mut blocks = vec![engine_only(desk)];
    let list = desk.assessment.list(kind);
    match list.filter(|list| says_something(list)) {
        None => {
            let note = list.map(|list| list.note.as_str()).filter(|note| !note.is_empty());
            blocks.push(Block::Lead(note.unwrap_or("There is nothing on this list.").into()));
        }
        Some(list) => {
            let (all, behind) = (list.items.len(), list.items.iter().filter(|item| item.is_right).count());
            blocks.push(Block::Lead(format!("{} of {} done.", list.done - behind, all - behind)));
            blocks.push(table(list));
        }
    }
    blocks.extend(list.into_iter().flat_map(cautioned_on));
    paper(desk, kind.title(), blocks)
}

/// What must be minded in the work on a list; nothing where it holds none.
fn cautioned_on(list: &WorkList) -> Vec<Block> {
    cautioned(list.items.iter().filter(|item| item.hands.is_some() && !item.is_right))
}

fn table(list: &WorkList) -> Block {
    let summary = format!("{}: what, how many, why, and what has been done.", list.title);
    let mut said: Vec<[String; 5]> = Vec::new();
    for row in rows(list) {
        let [_, what, size, why, done] = &row;
        // Several causes may ask for the same.
        let same =
            said.iter_mut().find(|[_, own, own_size, _, own_done]| [own, own_size, own_done] == [what, size, done]);
        match same {
            Some([.., own_why, _]) if list.kind == ListKind::PutRight => *own_why = format!("{own_why} {why}"),
            _ => said.push(row),
        }
    }
    // What nothing stands in takes no room: sentences have neither quantity nor size.
    let is_sized = said.iter().any(|[_, _, size, ..]| !size.is_empty());
    let is_shown = [list.kind != ListKind::PutRight, true, is_sized, true, true];
    let columns = || columns(list.kind).into_iter().zip(is_shown).filter(|(_, is_shown)| *is_shown);
    let shown = |row: [String; 5]| {
        row.into_iter().zip(is_shown).filter(|(_, is_shown)| *is_shown).map(|(cell, _)| cell).collect()
    };
    Block::Table {
        summary,
        head: columns().map(|((head, _), _)| head.to_owned()).collect(),
        widths: columns().map(|((_, width), _)| width).collect(),
        rows: said.into_iter().map(shown).collect(),
        to_fill: false,
    }
}

/// The list as rows with a head, for a spreadsheet.
pub fn work_list_table(assessment: &Assessment, kind: ListKind) -> Vec<Vec<String>> {
    let head = columns(kind).map(|(head, _)| head.to_owned()).to_vec();
    let rows = assessment.list(kind).into_iter().flat_map(rows);
    std::iter::once(head).chain(rows.map(Vec::from)).collect()
}

fn columns(kind: ListKind) -> [(&'static str, u8); 5] {
    // To the machine shop go sizes before and wanted, which take room.
    let (what, size) = if kind == ListKind::MachineShop { (5, 10) } else { (7, 6) };
    [("Quantity", 3), ("What", what), ("Size or work", size), ("Why", 9), ("Done", 4)]
}

fn says_something(list: &WorkList) -> bool {
    list.items.iter().any(|item| !item.is_right) || !list.not_wanted.is_empty()
}

/// The items, then what was done about others that are not wanted now.
fn rows(list: &WorkList) -> impl Iterator<Item = [String; 5]> {
    let left = list.not_wanted.iter().map(|left| {
        let done = done(&left.tick, left.asked.quantity, list.kind);
        [left.tick.at(Step::Sent).to_string(), left.words.clone(), String::new(), left.because.clone(), done]
    });
    // What came back and is right is behind: it stands on the closing sheet.
    let row = |item| row(item, list.kind);
    list.items.iter().filter(|item| !item.is_right).map(row).chain(left)
}

fn row(item: &ListItem, list: ListKind) -> [String; 5] {
    let held = match item.waits_for.as_slice() {
        [] => String::new(),
        [one] => format!(" Held: {one}"),
        [first, rest @ ..] => {
            format!(" Held: {first} And {}.", counted(rest.len(), "more reason", "more reasons"))
        }
    };
    let done = item.tick.as_ref().map_or_else(String::new, |tick| done(tick, item.quantity, list));
    [item.quantity.to_string(), item.what.clone(), item.detail.clone(), format!("{}{held}", item.because), done]
}

/// How far it is, when, under which number, with which note. An old entry did not tell of how many.
fn done(tick: &Tick, quantity: u32, list: ListKind) -> String {
    let number = if tick.part_number.is_empty() { String::new() } else { format!("no. {}", tick.part_number) };
    let of = |done: u32| if quantity == 0 { done.to_string() } else { format!("{done} of {quantity}") };
    let step = |taken: &StepTaken| {
        let date = if taken.date.is_empty() { String::new() } else { format!(", {}", taken.date) };
        format!("{} {}{date}", taken.step.words(list).to_lowercase(), of(taken.done))
    };
    let far = if tick.steps.is_empty() { of(tick.done) } else { String::new() };
    let tested = tick.result.as_ref().map(|result| {
        let passed = if result.failed.is_empty() { "passed" } else { "failed" };
        format!("{passed}: {}", result.told())
    });
    let steps = tick.steps.iter().filter(|taken| taken.done > 0).map(step);
    let parts: Vec<String> =
        [far].into_iter().chain(steps).chain(tested).chain([tick.date.clone(), number, tick.note.clone()]).collect();
    parts.into_iter().filter(|part| !part.trim().is_empty()).collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::super::desk::Shop;
    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::TextField;
    use crate::job::testing::arranged;

    #[test]
    fn a_list_names_the_engine_and_not_the_customer() {
        let mut job = arranged(Arrangement::inline(4));
        job.texts.insert(TextField::Customer, "A. Customer".into());
        job.texts.insert(TextField::Contact, "a@customer.example".into());
        job.texts.insert(TextField::EngineNumber, "40117".into());
        let shop = Shop { name: "The shop".into(), ..Shop::default() };
        let paper = work_list(&Desk { shop: &shop, ..Desk::bare(&job, &assess(&job)) }, ListKind::Order);
        let text = format!("{paper:?}");
        assert!(text.contains("40117") && text.contains("The shop"), "{text}");
        assert!(!text.contains("Customer") && !text.contains("customer.example"), "{text}");
    }
}
