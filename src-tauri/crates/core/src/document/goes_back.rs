//! What goes back: to a customer who refused the work, every piece that was taken off, what came with the engine, and the bill
//! for the strip-down alone.

use super::chapter::chapter;
use super::desk::Desk;
use super::head::{customers_paper, filled};
use super::page::{Image, Shown};
use super::paper::{Block, Paper};
use super::picture::Picture;
use super::strip_down_order::table;
use crate::engine::{Part, PartKind};
use crate::job::{Ancillary, Refusal, TextField};
use crate::money::GoesBack;
use crate::words::{capitalised, plural};

/// The paper; it says so where nothing was refused.
pub fn goes_back(desk: &Desk<'_>) -> Paper {
    let job = desk.job;
    let mut facts = filled(job, &[TextField::Customer, TextField::Machine, TextField::EngineNumber]);
    let refused = job.refusal.and_then(|refusal| refusal.made).map(|day| ("Refused on".to_owned(), day.in_words()));
    facts.extend(refused);
    let lead = job.refusal.map_or(NOTHING_REFUSED, lead);
    let mut blocks = vec![Block::Facts(facts), Block::Lead(lead.into())];
    blocks.extend(chapter("Taken off the engine", pieces(desk)));
    blocks.extend(chapter("Came with the engine", came_with(&job.ancillaries)));
    if job.refusal.is_some() {
        blocks.extend(chapter("Bill", [bill(desk)]));
        blocks.push(Block::Paragraph("I have received all that is listed here.".into()));
        blocks.push(Block::Signature { name: String::new(), strokes: vec![] });
    }
    customers_paper(desk, "What goes back", blocks)
}

const NOTHING_REFUSED: &str = "The customer has not refused the work.";

fn lead(refusal: Refusal) -> &'static str {
    match refusal.goes_back {
        GoesBack::InBoxes => "You refused the work. The engine goes back in boxes, as it was taken apart.",
        GoesBack::PutTogether => "You refused the work. The engine goes back put together.",
    }
}

/// Each kind of piece with its number; none before anything was taken off. What is in one piece with another is not a piece:
/// a journal, a lobe, a bore in the block.
fn pieces(desk: &Desk<'_>) -> Option<Block> {
    let arrangement = desk.job.arrangement.as_ref().filter(|_| desk.job.is_begun())?;
    let is_piece = |part: &Part| part.comes_with(arrangement).is_none() && part.kind != PartKind::TappetBore;
    let mut kinds: Vec<(PartKind, usize)> = Vec::new();
    for part in desk.assessment.parts.iter().map(|view| view.part).filter(is_piece) {
        match kinds.iter_mut().find(|(kind, _)| *kind == part.kind) {
            Some((_, count)) => *count += 1,
            None => kinds.push((part.kind, 1)),
        }
    }
    let row = |(kind, count): (PartKind, usize)| {
        let name = kind.renewed_as(arrangement).said(desk.job.terms);
        [capitalised(&if count > 1 { plural(&name) } else { name.into_owned() }), count.to_string()]
    };
    let summary = "Each kind of piece that was taken off the engine, and how many of it.";
    Some(Block::table(summary, [("Piece", 8), ("How many", 2)], kinds.into_iter().map(row)))
}

/// What came with the engine, whether it was given back, and what it looked like.
pub(super) fn came_with(all: &[Ancillary]) -> Vec<Block> {
    if all.is_empty() {
        return vec![];
    }
    let row = |own: &Ancillary| {
        let given = if own.given_back { "yes" } else { "not yet" };
        [own.what.trim().to_owned(), own.remark.trim().to_owned(), given.to_owned()]
    };
    let summary = "What came with the engine, in which state, and whether it was given back.";
    let table = Block::table(summary, [("What", 5), ("Remark", 6), ("Given back", 3)], all.iter().map(row));
    let shown: Vec<Shown> = all.iter().filter_map(shown).collect();
    let photos = (!shown.is_empty()).then_some(Block::Photos { shown, small: true });
    [table].into_iter().chain(photos).collect()
}

fn shown(own: &Ancillary) -> Option<Shown> {
    let alt = own.words();
    let picture = Picture { photo: own.photo.clone()?, alt, markups: vec![] };
    Some(Shown { image: Image::Photo(picture), sentence: format!("{}.", own.what.trim()) })
}

fn bill(desk: &Desk<'_>) -> Block {
    let lines = desk.job.refusal_bill().zip(desk.job.strip_down());
    match lines {
        Some((lines, ordered)) => {
            let order = &ordered.order;
            table("What the strip-down costs.", order.currency, &order.tax.words(), lines)
        }
        None => Block::Paragraph("No strip-down was agreed to: nothing is charged for it.".into()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::document::closing_sheet;
    use crate::engine::{Arrangement, Engine};
    use crate::job::Job;
    use crate::job::testing::{arrange, job_of, then};
    use serde_json::json;

    fn refused() -> Job {
        job_of(&[
            arrange(&Arrangement::inline(4)),
            json!({ "do": "add-ancillary", "item": { "what": "Starter", "remark": "Cracked flange" } }),
            json!({ "do": "tag", "part": "piston.1", "tag": "scuffing", "grade": 3 }),
            json!({ "do": "refuse", "goes_back": "in-boxes", "made": "2026-05-03" }),
        ])
    }

    fn text(job: &Job) -> String {
        format!("{:?}", goes_back(&Desk::bare(job, &assess(job))))
    }

    #[test]
    fn it_counts_every_piece_by_kind() {
        let job = refused();
        let assessment = assess(&job);
        let Some(Block::Table { rows, .. }) = pieces(&Desk::bare(&job, &assessment)) else { panic!("no pieces") };
        let count = |name: &str| rows.iter().find(|row| row[0] == name).map(|row| row[1].as_str());
        assert_eq!(count("Pistons"), Some("4"));
        assert_eq!(count("Crankshaft"), Some("1"));
        assert_eq!(count("Main bearing shells"), Some("10"));
        for in_one_piece in ["Crankpins", "Main journals", "Cylinder bores", "Lobes"] {
            assert_eq!(count(in_one_piece), None);
        }
        let all = Engine::new(Arrangement::inline(4)).unwrap().parts().len();
        let counted: usize = rows.iter().map(|row| row[1].parse::<usize>().unwrap()).sum();
        assert!(counted < all && counted > all / 3, "{counted} of {all}: {rows:?}");
    }

    #[test]
    fn what_was_photographed_is_shown() {
        let own = |photo| Ancillary {
            edit: crate::job::testing::edit(1),
            what: "Starter".into(),
            remark: String::new(),
            photo,
            given_back: false,
        };
        assert_eq!(came_with(&[]), []);
        assert!(matches!(came_with(&[own(None)])[..], [Block::Table { .. }]));
        let photo = "a".repeat(64).try_into().unwrap();
        let blocks = came_with(&[own(None), own(Some(photo))]);
        assert!(matches!(&blocks[..], [Block::Table { .. }, Block::Photos { shown, small: true }] if shown.len() == 1));
    }

    #[test]
    fn it_says_in_which_way_and_what_came_with_the_engine() {
        let mut job = refused();
        let said = text(&job);
        for words in ["3 May 2026", "goes back in boxes", "Cracked flange", "not yet", "nothing is charged for it"] {
            assert!(said.contains(words), "“{words}” is missing: {said}");
        }
        then(&mut job, 9, &json!({ "do": "refuse", "goes_back": "put-together" }));
        assert!(text(&job).contains("goes back put together"));
        let assessment = assess(&job);
        let closing = format!("{:?}", closing_sheet(&Desk::bare(&job, &assessment)));
        assert!(closing.contains("Came with the engine") && closing.contains("refused the work"), "{closing}");
    }

    #[test]
    fn nothing_was_taken_off_an_engine_that_nobody_opened() {
        let job = job_of(&[arrange(&Arrangement::inline(4)), json!({ "do": "refuse", "goes_back": "in-boxes" })]);
        let said = text(&job);
        assert!(!said.contains("Taken off") && !said.contains("Came with"), "{said}");
        assert!(text(&Job::default()).contains(NOTHING_REFUSED));
    }
}
