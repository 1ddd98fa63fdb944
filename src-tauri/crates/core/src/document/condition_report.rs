//! The condition report for the customer: the page on which they decide, what it rests on, and in full every finding.

use super::cautions::governed;
use super::chapter::chapter;
use super::costs::{answered_by_line, costs, held_by_jobs};
use super::customers_page::{page, worst_first};
use super::decided::decided;
use super::desk::{Desk, Extent};
use super::found::{clean, findings, photos};
use super::grouping::by_kind;
use super::head::{customers_paper, engine_facts};
use super::measured::{beyond, measured};
use super::outside::outside;
use super::paper::{Block, Paper};
use super::plan::plan;
use super::why::why;
use crate::assess::Assessment;
use crate::caution::{Caution, for_customer};
use crate::view::PartView;
use crate::words::capitalised;

/// Photos in the short report.
const PHOTOS: usize = 4;

/// Puts the report together: the short one, and in full its annexes behind it. Of an engine that nobody has looked at there
/// is the customer's page alone.
pub fn condition_report(desk: &Desk<'_>, extent: Extent) -> Paper {
    let job = desk.job;
    let mut blocks = vec![Block::CustomersPage(Box::new(page(desk)))];
    let is_photographed = job.parts.values().any(|record| !record.photos.is_empty() || !record.note.is_empty());
    if job.is_begun() || is_photographed {
        blocks.extend(short(desk, extent));
        if extent == Extent::Full {
            blocks.extend(annexes(desk));
        }
    }
    customers_paper(desk, "Condition report", blocks)
}

/// What the page rests on: four sheets with it.
fn short(desk: &Desk<'_>, extent: Extent) -> Vec<Block> {
    let Desk { job, assessment, .. } = desk;
    let contents = (extent == Extent::Full).then_some(Block::Contents);
    let worst = worst_first(job, assessment, PHOTOS);
    let mut blocks: Vec<Block> = contents.into_iter().collect();
    let worst = (!worst.is_empty()).then_some(Block::Photos { shown: worst, small: false });
    blocks.extend(chapter("The worst of what was found", worst));
    blocks.extend(outside(assessment));
    blocks.extend(why(assessment));
    blocks.extend(beyond(assessment));
    blocks.extend(answered_by_line(assessment));
    blocks.extend(not_looked_at(assessment));
    let notices = assessment.notices.iter().cloned().map(Block::Caution);
    blocks.extend(chapter("Cautions", notices.chain([governed(&minded(assessment))])));
    blocks
}

/// What a customer has to mind who has a damaged engine in parts; nothing of a sound one.
fn minded(assessment: &Assessment) -> Vec<&'static Caution> {
    if assessment.progress.worn > 0 { for_customer() } else { vec![] }
}

fn annexes(desk: &Desk<'_>) -> Vec<Block> {
    let Desk { job, assessment, .. } = desk;
    let plan = plan(desk).map(Block::Plan);
    let mut blocks = chapter("Part by part", plan.into_iter().chain(findings(assessment)));
    blocks.extend(clean(assessment));
    blocks.extend(photos(assessment));
    blocks.extend(marks(assessment));
    blocks.extend(measured(assessment, job.sheet.head.unit));
    blocks.extend(decided(desk));
    blocks.extend(held_by_jobs(assessment));
    blocks.extend(costs(assessment));
    blocks.extend(chapter("The engine as it came in", engine_facts(desk)));
    blocks
}

fn marks(assessment: &Assessment) -> Vec<Block> {
    let warnings = &assessment.marks.warnings;
    chapter("Marks of caps and rods", (!warnings.is_empty()).then(|| Block::Points(warnings.clone())))
}

fn not_looked_at(assessment: &Assessment) -> Vec<Block> {
    let kinds = |is: fn(&PartView) -> bool| -> String {
        let views: Vec<&PartView> = assessment.parts.iter().filter(|view| is(view)).collect();
        by_kind(&views, assessment).iter().map(|kind| capitalised(kind)).collect::<Vec<String>>().join("; ")
    };
    let unknown = kinds(PartView::is_unknown);
    let measured = kinds(PartView::is_only_measured);
    let told = [
        (!unknown.is_empty()).then(|| format!("{unknown}. Nothing is known of these parts: that does not mean sound.")),
        (!measured.is_empty()).then(|| format!("Measured, and not looked at: {measured}.")),
    ];
    chapter("What was not looked at", told.into_iter().flatten().map(Block::Paragraph))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::{Arrangement, Part};
    use crate::job::testing::{arrange, job_of};
    use crate::job::{Job, PartRecord, TagRecord, TextField};
    use crate::wear::{Grade, Tag, Zone};
    use serde_json::json;

    fn report(parts: &[(&str, Option<Tag>)]) -> Paper {
        let record = |tag: &Option<Tag>| PartRecord {
            clean: tag.is_none(),
            tags: tag
                .iter()
                .map(|tag| (*tag, TagRecord { grade: Grade::TWO, zones: [Zone::FrontCrown].into() }))
                .collect(),
            ..PartRecord::default()
        };
        let job = Job {
            texts: [(TextField::Customer, "Ada Quill".to_owned())].into(),
            arrangement: Some(Arrangement::inline(2)),
            parts: parts.iter().map(|(part, tag)| (part.parse::<Part>().unwrap(), record(tag))).collect(),
            ..Job::default()
        };
        condition_report(&Desk::bare(&job, &assess(&job)), Extent::Full)
    }

    fn words(paper: &Paper) -> String {
        serde_json::to_string(&paper.blocks).unwrap()
    }

    #[test]
    fn every_finding_is_told_with_grade_and_place() {
        let words = words(&report(&[("main-shell.1.lower", Some(Tag::Scoring)), ("crankpin.2", None)]));
        assert!(words.contains("Main 1, lower"), "{words}");
        assert!(words.contains("Scoring, grade 2. Where: front edge, crown."), "{words}");
        assert!(words.contains("Looked at and without damage"));
    }

    #[test]
    fn what_was_not_looked_at_is_told_apart_from_what_is_clean() {
        let paper = report(&[("crankpin.1", None), ("crankpin.2", None)]);
        let mut after = paper.blocks.iter().skip_while(|block| **block != Block::heading("What was not looked at"));
        let Some(Block::Paragraph(open)) = after.nth(1) else { panic!("{paper:?}") };
        assert!(open.contains("All 3 main journals"), "{open}");
        assert!(!open.to_lowercase().contains("crankpin"), "{open}");
    }

    /// A part that was measured is known, though nobody looked at it.
    #[test]
    fn what_was_measured_is_not_called_unknown() {
        let reading = json!({ "part": "main-journal.2", "quantity": "diameter", "value": "60.00 mm",
            "spot": { "station": "front", "direction": "a" } });
        let clean = json!({ "do": "clean", "part": "crankpin.1" });
        let job = job_of(&[arrange(&Arrangement::inline(2)), clean, json!({ "do": "measure", "reading": reading })]);
        let paper = condition_report(&Desk::bare(&job, &assess(&job)), Extent::Full);
        let mut after = paper.blocks.iter().skip_while(|block| **block != Block::heading("What was not looked at"));
        let (Some(Block::Paragraph(open)), Some(Block::Paragraph(measured))) = (after.nth(1), after.next()) else {
            panic!("{paper:?}")
        };
        assert!(!open.contains("Main 2, journal") && open.contains("Main 1, journal"), "{open}");
        assert_eq!(measured, "Measured, and not looked at: Main 2, journal.");
        let Some(Block::CustomersPage(page)) = paper.blocks.first() else { panic!("{paper:?}") };
        assert!(page.found.contains(&"Measured, and not looked at: 1 part.".to_owned()), "{:?}", page.found);
    }

    /// A part has one state: what is worn evenly does not stand among what is as new.
    #[test]
    fn what_is_evenly_worn_is_told_apart_from_what_is_clean() {
        let paper = report(&[("bore.1", Some(Tag::LooksEven)), ("bore.2", None)]);
        let told: Vec<&Block> = paper
            .blocks
            .iter()
            .skip_while(|block| **block != Block::heading("Looked at and without damage"))
            .skip(1)
            .take(2)
            .collect();
        let [Block::Paragraph(sound), Block::Paragraph(worn)] = told[..] else { panic!("{told:?}") };
        assert_eq!((sound.as_str(), worn.as_str()), ("Sound: Bore 2.", "Evenly worn: Bore 1."));
    }

    #[test]
    fn an_engine_that_nobody_looked_at_is_one_page() {
        for job in [Job::default(), Job { arrangement: Some(Arrangement::inline(4)), ..Job::default() }] {
            let paper = condition_report(&Desk::bare(&job, &assess(&job)), Extent::Full);
            assert!(matches!(paper.blocks[..], [Block::CustomersPage(_)]), "{paper:?}");
            assert!(words(&paper).contains("too early to say"));
        }
    }

    #[test]
    fn tables_have_cells_for_every_head() {
        for block in report(&[("main-shell.1.lower", Some(Tag::Scoring))]).blocks {
            if let Block::Table { head, widths, rows, .. } = block {
                assert_eq!(head.len(), widths.len());
                assert!(rows.iter().all(|row| row.len() == head.len()));
            }
        }
    }
}
