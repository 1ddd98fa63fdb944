//! The condition report for the customer: what was found, why it happened, what is proposed, what was not looked at.

use super::cautions::cautions;
use super::chapter::chapter;
use super::costs::{approval, costs};
use super::cover::{cover, plan};
use super::desk::{Desk, Extent};
use super::evidence::evidence;
use super::found::{clean, findings, worst};
use super::grouping::{by_kind, grouped, named};
use super::head::{engine_facts, paper};
use super::measured::measured;
use super::outside::outside;
use super::paper::{Block, Paper};
use super::summary::summary;
use super::why::why;
use super::work_list::lists;
use crate::assess::Assessment;
use crate::caution::{GOVERNS, for_customer};
use crate::view::{PartView, Seen};
use crate::words::capitalised;
use crate::work::Outcome;

/// Puts the report together.
pub fn condition_report(desk: &Desk<'_>, extent: Extent) -> Paper {
    let Desk { job, assessment, .. } = desk;
    let mut blocks = vec![cover(desk), summary(desk)];
    blocks.extend(outside(assessment, extent));
    match extent {
        Extent::Short => blocks.extend(worst(assessment)),
        Extent::Full => {
            let plan = plan(desk).map(Block::Plan);
            blocks.extend(chapter("What was found", plan.into_iter().chain(findings(assessment))));
            blocks.extend(clean(assessment));
            blocks.extend(marks(assessment));
            blocks.extend(measured(assessment, job.sheet.head.unit));
        }
    }
    blocks.extend(why(assessment, extent));
    blocks.extend(proposals(assessment));
    blocks.extend(costs(assessment));
    if extent == Extent::Full {
        blocks.extend(lists(assessment));
        blocks.extend(evidence(assessment));
    }
    blocks.extend(not_looked_at(assessment));
    blocks.extend(chapter("The engine as it came in", engine_facts(desk)));
    let notices = assessment.notices.iter().cloned().map(Block::Caution);
    blocks.extend(chapter("Cautions", notices.chain(cautions(&for_customer()))));
    blocks.extend(approval(assessment));
    paper(desk, "Condition report", blocks)
}

fn proposals(assessment: &Assessment) -> Vec<Block> {
    let mut rows = Vec::new();
    for outcome in Outcome::ALL.into_iter().rev() {
        let views: Vec<&PartView> =
            assessment.parts.iter().filter(|view| view.decision.outcome == outcome && told_as_proposal(view)).collect();
        for ((_, because), group) in grouped(&views, |view| (view.kind, because(view))) {
            rows.push([capitalised(&named(&group, assessment)), capitalised(outcome.words()), because]);
        }
    }
    let table = (!rows.is_empty()).then(|| {
        Block::table("What is to be done with each part, and why.", [("Parts", 4), ("What to do", 2), ("Why", 6)], rows)
    });
    let governs = table.is_some().then(|| Block::Paragraph(GOVERNS.into()));
    chapter("What we propose", table.into_iter().chain(governs))
}

/// Parts that nobody has looked at are listed on their own, unless they are renewed anyway.
fn told_as_proposal(view: &PartView) -> bool {
    view.decision.looked_at || view.decision.outcome != Outcome::CantSay
}

fn because(view: &PartView) -> String {
    let rules = view.decision.because_by_rules();
    match &view.decision.overruled_because {
        Some(reason) => {
            format!("Decided by the mechanic: {reason} (By the rules: {}. {rules})", view.decision.by_rules.words())
        }
        None => rules.into(),
    }
}

fn marks(assessment: &Assessment) -> Vec<Block> {
    let warnings = &assessment.marks.warnings;
    chapter("Marks of caps and rods", (!warnings.is_empty()).then(|| Block::Points(warnings.clone())))
}

fn not_looked_at(assessment: &Assessment) -> Vec<Block> {
    let open: Vec<&PartView> =
        assessment.parts.iter().filter(|view| view.seen == Seen::NotLooked && view.is_looked_at_alone()).collect();
    if open.is_empty() {
        return vec![];
    }
    let kinds = by_kind(&open, assessment);
    let body = [
        Block::Paragraph("Nothing is known of these parts. Not looked at does not mean sound.".into()),
        Block::Points(kinds.iter().map(|kind| capitalised(kind)).collect()),
    ];
    chapter("What was not looked at", body)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::{Arrangement, Part};
    use crate::job::{Job, PartRecord, TagRecord, TextField};
    use crate::wear::{Grade, Tag, Zone};

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
        let paper = report(&[("main-shell.1.lower", Some(Tag::Scoring)), ("crankpin.2", None)]);
        let words = words(&paper);
        assert!(words.contains("Main 1, lower shell"));
        assert!(words.contains("Scoring, grade 2 of 4. A fingernail feels the lines. Where: front edge, crown."));
        assert!(words.contains("Looked at and without damage"));
    }

    #[test]
    fn what_was_not_looked_at_is_told_apart_from_what_is_clean() {
        let paper = report(&[("crankpin.1", None), ("crankpin.2", None)]);
        let open =
            paper.blocks.iter().skip_while(|block| **block != Block::heading("What was not looked at")).nth(2).unwrap();
        let Block::Points(points) = open else { panic!("{open:?}") };
        assert!(points.contains(&"All 3 main journals".to_owned()), "{points:?}");
        assert!(!points.iter().any(|point| point.to_lowercase().contains("crankpin")), "{points:?}");
    }

    /// A part has one state: what is worn evenly does not stand among what is as new.
    #[test]
    fn what_is_evenly_worn_is_told_apart_from_what_is_clean() {
        let paper = report(&[("bore.1", Some(Tag::LooksEven)), ("bore.2", None)]);
        let chapter: Vec<&Block> = paper
            .blocks
            .iter()
            .skip_while(|block| **block != Block::heading("Looked at and without damage"))
            .skip(1)
            .take(3)
            .collect();
        let [Block::Points(clean), Block::Paragraph(lead), Block::Points(worn)] = chapter[..] else {
            panic!("{chapter:?}")
        };
        assert_eq!((clean.len(), lead.as_str(), worn.len()), (1, "Evenly worn:", 1), "{clean:?} {worn:?}");
    }

    #[test]
    fn an_empty_job_still_makes_a_paper() {
        let paper = condition_report(&Desk::bare(&Job::default(), &assess(&Job::default())), Extent::Full);
        assert!(words(&paper).contains("has not been entered yet"));
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
