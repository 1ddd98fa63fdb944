//! The condition report for the customer: what was found, why it happened, what is proposed, what was not looked at.

use serde::{Deserialize, Serialize};

use super::costs::{approval, costs};
use super::cover::{cover, plan, typed};
use super::evidence::evidence;
use super::found::{findings, worst};
use super::grouping::{by_kind, grouped, named};
use super::measured::measured;
use super::summary::summary;
use super::why::why;
use super::work_list::lists;
use super::{Block, CAUTIONS, Paper};
use crate::assess::Assessment;
use crate::job::{Answer, HistoryFact, Job, TextField};
use crate::view::{PartView, Seen};
use crate::words::capitalised;
use crate::work::Outcome;

/// Who hands the report over.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Shop {
    /// The shop's name; may be empty.
    pub name: String,
    /// Its address, on one or several lines; may be empty.
    pub address: String,
}

/// How much of it.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Extent {
    /// What a customer needs to decide, with the worst of the pictures.
    Short,
    /// All of it: every finding and picture, what was measured, the lists, the evidence.
    #[default]
    Full,
}

/// Puts the report together. `date` is the local date on which it is handed over, as year, month, day.
pub fn condition_report(job: &Job, assessment: &Assessment, date: (i32, u8, u8), shop: &Shop, extent: Extent) -> Paper {
    let mut blocks = vec![cover(job, assessment, shop), summary(job, assessment)];
    match extent {
        Extent::Short => worst(assessment, &mut blocks),
        Extent::Full => {
            blocks.push(heading("What was found"));
            blocks.extend(plan(job, assessment).map(Block::Plan));
            findings(assessment, &mut blocks);
            marks(assessment, &mut blocks);
            measured(assessment, job.sheet.head.unit, &mut blocks);
        }
    }
    why(assessment, extent, &mut blocks);
    proposals(assessment, &mut blocks);
    costs(assessment, &mut blocks);
    if extent == Extent::Full {
        lists(assessment, &mut blocks);
        evidence(assessment, &mut blocks);
    }
    not_looked_at(assessment, &mut blocks);
    blocks.push(heading("The engine as it came in"));
    engine_facts(job, shop, &assessment.engine, &mut blocks);
    cautions(assessment, &mut blocks);
    approval(assessment, &mut blocks);
    Paper { title: "Condition report".into(), subtitle: subtitle(job, assessment), date, blocks: without_bare(blocks) }
}

/// Drops headings that nothing stands under.
fn without_bare(blocks: Vec<Block>) -> Vec<Block> {
    let mut kept: Vec<Block> = Vec::with_capacity(blocks.len());
    for block in blocks {
        let level = |block: &Block| if let Block::Heading { level, .. } = block { Some(*level) } else { None };
        let ends = level(&block);
        while ends.is_some() && kept.last().and_then(level).is_some_and(|before| Some(before) >= ends) {
            kept.pop();
        }
        kept.push(block);
    }
    kept
}

/// The line below the title: the machine and the engine.
pub(super) fn subtitle(job: &Job, assessment: &Assessment) -> String {
    let machine = typed(job, TextField::Machine);
    let parts: Vec<String> = machine.into_iter().chain(assessment.engine.clone()).collect();
    parts.join(" · ")
}

pub(super) fn heading(text: &str) -> Block {
    Block::Heading { level: 1, text: text.into() }
}

/// Customer, machine, what is known of the engine, and who examined it.
pub(super) fn engine_facts(job: &Job, shop: &Shop, engine: &Option<String>, blocks: &mut Vec<Block>) {
    let mut facts: Vec<(String, String)> =
        TextField::ALL.iter().filter_map(|field| Some((field.label().to_owned(), typed(job, *field)?))).collect();
    facts.extend(engine.clone().map(|engine| ("Engine".to_owned(), engine)));
    let known = |answer: Answer| {
        let statements: Vec<&str> = HistoryFact::ALL
            .iter()
            .filter(|fact| job.history.get(fact) == Some(&answer))
            .map(|fact| fact.statement())
            .collect();
        statements.join("; ")
    };
    let past = known(Answer::Yes);
    if !past.is_empty() {
        facts.push(("Known of its past".into(), past));
    }
    let by: Vec<&str> =
        shop.name.lines().chain(shop.address.lines()).map(str::trim).filter(|line| !line.is_empty()).collect();
    if !by.is_empty() {
        facts.push(("Examined by".into(), by.join(", ")));
    }
    if !facts.is_empty() {
        blocks.push(Block::Facts(facts));
    }
}

fn proposals(assessment: &Assessment, blocks: &mut Vec<Block>) {
    let mut rows = Vec::new();
    for outcome in Outcome::ALL.into_iter().rev() {
        let views: Vec<&PartView> =
            assessment.parts.iter().filter(|view| view.decision.outcome == outcome && told_as_proposal(view)).collect();
        for ((_, because), group) in grouped(&views, |view| (view.kind, because(view))) {
            rows.push(vec![capitalised(&named(&group, &assessment.parts)), capitalised(outcome.words()), because]);
        }
    }
    if rows.is_empty() {
        return;
    }
    blocks.push(heading("What we propose"));
    blocks.push(Block::Table {
        summary: "What is to be done with each part, and why.".into(),
        head: vec!["Parts".into(), "What to do".into(), "Why".into()],
        widths: vec![4, 2, 6],
        rows,
    });
}

/// Parts that nobody has looked at are listed on their own, unless they are renewed anyway.
fn told_as_proposal(view: &PartView) -> bool {
    view.decision.looked_at || view.decision.outcome != Outcome::CantSay
}

fn because(view: &PartView) -> String {
    let rules = view.decision.reasons.first().map_or_else(String::new, |reason| reason.because.clone());
    match &view.decision.overruled_because {
        Some(reason) => {
            format!("Decided by the mechanic: {reason} (By the rules: {}. {rules})", view.decision.by_rules.words())
        }
        None => rules,
    }
}

fn marks(assessment: &Assessment, blocks: &mut Vec<Block>) {
    if assessment.marks.warnings.is_empty() {
        return;
    }
    blocks.push(heading("Marks of caps and rods"));
    blocks.push(Block::Points(assessment.marks.warnings.clone()));
}

fn not_looked_at(assessment: &Assessment, blocks: &mut Vec<Block>) {
    let open: Vec<&PartView> = assessment.parts.iter().filter(|view| view.seen == Seen::NotLooked).collect();
    if open.is_empty() {
        return;
    }
    blocks.push(heading("What was not looked at"));
    blocks.push(Block::Paragraph("Nothing is known of these parts. Not looked at does not mean sound.".into()));
    blocks.push(Block::Points(by_kind(&open, &assessment.parts).iter().map(|kind| capitalised(kind)).collect()));
}

fn cautions(assessment: &Assessment, blocks: &mut Vec<Block>) {
    blocks.push(heading("Cautions"));
    for notice in &assessment.notices {
        blocks.push(Block::Caution(notice.clone()));
    }
    let lines: Vec<String> = CAUTIONS.iter().map(|caution| format!("{}: {}", caution.about, caution.text)).collect();
    blocks.push(Block::Caution(lines.join("\n")));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::{Arrangement, Part};
    use crate::job::{PartRecord, TagRecord};
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
        condition_report(&job, &assess(&job), (2026, 3, 14), &Shop::default(), Extent::Full)
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
        let open = paper.blocks.iter().skip_while(|block| **block != heading("What was not looked at")).nth(2).unwrap();
        let Block::Points(points) = open else { panic!("{open:?}") };
        assert!(points.contains(&"All 3 main journals".to_owned()), "{points:?}");
        assert!(!points.iter().any(|point| point.to_lowercase().contains("crankpin")), "{points:?}");
    }

    #[test]
    fn an_empty_job_still_makes_a_paper() {
        let paper =
            condition_report(&Job::default(), &assess(&Job::default()), (2026, 3, 14), &Shop::default(), Extent::Full);
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
