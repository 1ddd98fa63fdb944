//! The condition report for the customer: what was found, why it happened, what is proposed, what was not looked at.

use serde::{Deserialize, Serialize};

use super::costs::{approval, costs};
use super::grouping::{grouped, named};
use super::size_sheet::work_words;
use super::{Block, CAUTIONS, Paper, Picture};
use crate::assess::{Assessment, PartView, Seen};
use crate::cause::Evidence;
use crate::decide::Outcome;
use crate::engine::Engine;
use crate::figure::Figure;
use crate::job::{Answer, HistoryFact, Job, TextField};
use crate::measure::{Phase, Verdict};
use crate::sizing::Action;
use crate::wear::Zone;
use crate::words::capitalised;

/// Who hands the report over.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Shop {
    /// The shop's name; may be empty.
    pub name: String,
    /// Its address, on one or several lines; may be empty.
    pub address: String,
}

/// Causes below this probability are not told to the customer.
const TOLD_FROM: f64 = 0.25;
/// Lines of evidence given for a cause.
const EVIDENCE_LINES: usize = 5;

/// How much of it.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Extent {
    /// What a customer needs to decide.
    Short,
    /// All of it, with every finding and picture.
    #[default]
    Full,
}

/// Puts the report together. `date` is the local date on which it is handed over, as year, month, day.
pub fn condition_report(job: &Job, assessment: &Assessment, date: (i32, u8, u8), shop: &Shop, extent: Extent) -> Paper {
    let mut blocks = Vec::new();
    engine_facts(job, shop, &assessment.engine, &mut blocks);
    summary(assessment, &mut blocks);
    causes(assessment, &mut blocks);
    plan(job, assessment, &mut blocks);
    proposals(assessment, &mut blocks);
    costs(assessment, &mut blocks);
    approval(assessment, &mut blocks);
    if extent == Extent::Full {
        sizes(assessment, &mut blocks);
        findings(assessment, &mut blocks);
        marks(assessment, &mut blocks);
    }
    not_looked_at(assessment, &mut blocks);
    cautions(assessment, &mut blocks);
    Paper { title: "Condition report".into(), subtitle: subtitle(job, assessment), date, blocks }
}

/// The line below the title: the machine and the engine.
pub(super) fn subtitle(job: &Job, assessment: &Assessment) -> String {
    let machine = job.texts.get(&TextField::Machine).map_or("", |text| text.trim());
    let engine = assessment.engine.as_deref().unwrap_or("");
    let parts: Vec<&str> = [machine, engine].into_iter().filter(|part| !part.is_empty()).collect();
    parts.join(" · ")
}

/// What was measured, as far as the customer must know it: what is done with each group and why, and what is outside
/// its limits.
fn sizes(assessment: &Assessment, blocks: &mut Vec<Block>) {
    let measured = assessment.sizing.groups.iter().filter(|plan| plan.action != Action::Open);
    let groups: Vec<String> = measured
        .map(|plan| format!("{}: {}. {}", capitalised(plan.group.label()), work_words(plan), plan.because))
        .collect();
    let outside: Vec<Vec<String>> = assessment
        .parts
        .iter()
        .flat_map(|view| {
            let wrong = |figure: &&Figure| figure.phase == Phase::Found && figure.verdict == Some(Verdict::Outside);
            view.figures.iter().filter(wrong).map(|figure| {
                vec![view.label.clone(), figure.name.clone(), figure.shown.clone(), figure.limits.clone()]
            })
        })
        .collect();
    if groups.is_empty() && outside.is_empty() {
        return;
    }
    blocks.push(heading("What was measured"));
    blocks.push(Block::Points(groups));
    if !outside.is_empty() {
        blocks.push(Block::Table {
            summary: "Every measurement outside its limits.".into(),
            head: ["Part", "What", "Measured", "Limits"].map(str::to_owned).to_vec(),
            widths: vec![5, 5, 5, 5],
            rows: outside,
        });
    }
}

fn heading(text: &str) -> Block {
    Block::Heading { level: 1, text: text.into() }
}

/// Customer, machine, what is known of the engine, and who examined it.
pub(super) fn engine_facts(job: &Job, shop: &Shop, engine: &Option<String>, blocks: &mut Vec<Block>) {
    let mut facts: Vec<(String, String)> = TextField::ALL
        .iter()
        .filter_map(|field| Some((field.label().to_owned(), job.texts.get(field)?.trim().to_owned())))
        .collect();
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

fn summary(assessment: &Assessment, blocks: &mut Vec<Block>) {
    let progress = assessment.progress;
    if progress.parts == 0 {
        blocks.push(Block::Lead(
            "The engine’s arrangement has not been entered yet, so nothing can be said about its parts.".into(),
        ));
        return;
    }
    let seen = match (progress.looked, progress.worn) {
        (0, _) => format!("None of the engine’s {} parts has been looked at yet.", progress.parts),
        (looked, 0) => {
            format!("{looked} of the engine’s {} parts have been looked at; none shows damage.", progress.parts)
        }
        (looked, worn) => {
            format!("{looked} of the engine’s {} parts have been looked at; {worn} show damage.", progress.parts)
        }
    };
    blocks.push(Block::Lead(format!("{} {seen}", assessment.causes.summary)));
    let count = |outcome: Outcome| assessment.parts.iter().filter(|view| view.decision.outcome == outcome).count();
    let points: Vec<String> = [
        (Outcome::Replace, "to be replaced"),
        (Outcome::Machine, "to be machined"),
        (Outcome::Polish, "to be polished"),
        (Outcome::RebuildHere, "to be rebuilt in the shop"),
        (Outcome::Clean, "to be cleaned and put back"),
        (Outcome::PutBack, "to be put back as they are"),
        (Outcome::CantSay, "still to be looked at or measured before anything can be said"),
    ]
    .into_iter()
    .filter_map(|(outcome, words)| match count(outcome) {
        0 => None,
        1 => Some(format!("1 part {}", words.replace("they are", "it is"))),
        n => Some(format!("{n} parts {words}")),
    })
    .collect();
    blocks.push(Block::Points(points));
}

fn plan(job: &Job, assessment: &Assessment, blocks: &mut Vec<Block>) {
    let Some(Ok(engine)) = job.arrangement.clone().map(Engine::new) else { return };
    let progress = assessment.progress;
    blocks.push(heading("The engine"));
    blocks.push(Block::Plan {
        plan: engine.plan(),
        ink: assessment.parts.iter().map(|view| (view.part, view.seen, view.worst)).collect(),
        alt: format!(
            "Plan of the engine, {}. Of {} parts, {} are drawn as worn, {} as clean, {} as not looked at.",
            engine.arrangement().summary(),
            progress.parts,
            progress.worn,
            progress.looked - progress.worn,
            progress.parts - progress.looked
        ),
    });
}

fn causes(assessment: &Assessment, blocks: &mut Vec<Block>) {
    if assessment.parts.is_empty() {
        return;
    }
    blocks.push(heading("Why it happened"));
    blocks.push(Block::Paragraph(assessment.causes.summary.clone()));
    if !assessment.causes.enough_seen {
        return;
    }
    for view in assessment.causes.causes.iter().filter(|view| view.probability >= TOLD_FROM) {
        blocks.push(Block::Heading {
            level: 2,
            text: format!("{}: {}, {}", capitalised(&view.name), view.likelihood, view.percent),
        });
        blocks.push(Block::Paragraph(view.plainly.clone()));
        let told = |evidence: &[Evidence], how: &str| -> Vec<String> {
            evidence.iter().take(EVIDENCE_LINES).map(|evidence| format!("{how}: {}", evidence.words)).collect()
        };
        let mut points = told(&view.evidence_for, "Speaks for it");
        points.extend(told(&view.evidence_against, "Speaks against it"));
        points.extend(view.check.iter().map(|check| format!("Check before assembly: {check}")));
        points.extend(view.put_right.iter().map(|right| format!("Put right before assembly: {right}")));
        blocks.push(Block::Points(points));
    }
    if !assessment.causes.unexplained.is_empty() {
        blocks.push(Block::Paragraph("Seen, and explained by none of the causes known here:".into()));
        let misfits = assessment.causes.unexplained.iter().map(|misfit| capitalised(&misfit.words));
        blocks.push(Block::Points(misfits.collect()));
    }
    blocks.push(Block::Paragraph(
        "More than one cause can hold at once. The likelihoods come from a model of how engines wear and from what was seen; they are a guide to where to look, not a proof.".into(),
    ));
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

fn findings(assessment: &Assessment, blocks: &mut Vec<Block>) {
    let shown: Vec<&PartView> = assessment
        .parts
        .iter()
        .filter(|view| view.seen == Seen::Worn || !view.photos.is_empty() || !view.note.is_empty())
        .collect();
    if !shown.is_empty() {
        blocks.push(heading("What was found"));
    }
    for view in shown {
        let mut lines: Vec<String> = view.findings.iter().map(finding_line).collect();
        match view.seen {
            Seen::Clean if view.findings.is_empty() => lines.push("Looked at and clean.".into()),
            Seen::NotLooked => lines.push("Photographed, not yet judged.".into()),
            _ => {}
        }
        let seen = if view.findings.is_empty() {
            lines.join(" ")
        } else {
            view.findings.iter().map(|finding| finding.name.clone()).collect::<Vec<_>>().join(", ")
        };
        let several = view.photos.len() > 1;
        blocks.push(Block::Findings {
            part: view.label.clone(),
            seen: view.seen,
            worst: view.worst,
            lines,
            note: view.note.clone(),
            outcome: view.decision.outcome.words().into(),
            pictures: view
                .photos
                .iter()
                .zip(1..)
                .map(|(photo, nth)| {
                    let which = if several { format!(", photo {nth} of {}", view.photos.len()) } else { String::new() };
                    Picture { photo: photo.clone(), alt: format!("{}{which}: {seen}", view.label) }
                })
                .collect(),
        });
    }
    let clean: Vec<&PartView> = assessment
        .parts
        .iter()
        .filter(|view| view.seen == Seen::Clean && view.photos.is_empty() && view.note.is_empty())
        .collect();
    if !clean.is_empty() {
        blocks.push(heading("Looked at and without damage"));
        blocks.push(Block::Points(by_kind(&clean, &assessment.parts)));
    }
}

fn finding_line(finding: &crate::assess::Finding) -> String {
    let zones: Vec<&str> = finding.zones.iter().copied().map(Zone::label).collect();
    let place = if zones.is_empty() { String::new() } else { format!(" Where: {}.", zones.join("; ")) };
    format!("{}, grade {} of 4. {}{place}", capitalised(&finding.name), finding.grade.number(), finding.sentence)
}

fn by_kind(views: &[&PartView], all: &[PartView]) -> Vec<String> {
    grouped(views, |view| view.kind).iter().map(|(_, group)| capitalised(&named(group, all))).collect()
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
    blocks.push(Block::Points(by_kind(&open, &assessment.parts)));
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
    use crate::wear::{Grade, Tag};

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
