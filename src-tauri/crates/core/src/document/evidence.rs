//! The evidence for the machine shop: a page for another person of the trade, useful alone and without the customer's
//! name. For each likely cause what speaks for and against it and how strongly, part by part; sizes before and wanted;
//! what to check and put right before assembly.

use super::desk::Desk;
use super::grouping::{by_kind, grouped};
use super::head::{engine_only, paper};
use super::paper::{Block, Paper};
use super::size_sheet::machining_table;
use super::why::told;
use crate::assess::Assessment;
use crate::cause::{CauseView, Evidence, Strength};
use crate::view::PartView;
use crate::words::{capitalised, counted, plural};

/// Findings told on each side, however weak.
const FEWEST: usize = 3;
/// Parts named beside a finding; more are only counted.
const PARTS_NAMED: usize = 8;

/// The page alone.
pub fn evidence_sheet(desk: &Desk<'_>) -> Paper {
    let mut told = body(desk.assessment);
    if told.is_empty() {
        told.push(Block::Lead("Not enough has been seen or measured yet.".into()));
    }
    paper(desk, TITLE, [engine_only(desk)].into_iter().chain(told).collect())
}

const TITLE: &str = "Evidence for the machine shop";

fn body(assessment: &Assessment) -> Vec<Block> {
    let sizes = machining_table(assessment).map(|table| [Block::subheading("Sizes before and wanted"), table]);
    told(assessment).flat_map(|view| cause(view, assessment)).chain(sizes.into_iter().flatten()).collect()
}

fn cause(view: &CauseView, assessment: &Assessment) -> Vec<Block> {
    let mut blocks =
        vec![Block::subheading(format!("{}: {}, {}", capitalised(&view.name), view.likelihood, view.percent))];
    let places: Vec<&str> = view.places.iter().filter(|place| place.named).map(|place| place.label.as_str()).collect();
    if !places.is_empty() {
        blocks.push(Block::Paragraph(format!("Where: {}.", places.join("; "))));
    }
    let row = |evidence: &Evidence, speaks: &str| {
        let only = if evidence.alone { "; no other cause explains it" } else { "" };
        [
            capitalised(&evidence.words),
            on(evidence, assessment),
            speaks.to_owned(),
            format!("{}{only}", evidence.strength.words()),
        ]
    };
    let (weighty_for, slight_for) = weighty(&view.evidence_for);
    let (weighty_against, slight_against) = weighty(&view.evidence_against);
    let sides = [(weighty_for, "for"), (weighty_against, "against")];
    let rows: Vec<[String; 4]> =
        sides.iter().flat_map(|(side, speaks)| side.iter().map(|evidence| row(evidence, speaks))).collect();
    if !rows.is_empty() {
        blocks.push(Block::table(
            format!("What speaks for and against {}, on which parts, and how strongly.", view.name),
            [("Seen or known", 7), ("On", 6), ("Speaks", 2), ("How strongly", 4)],
            rows,
        ));
    }
    if slight_for + slight_against > 0 {
        blocks.push(Block::Paragraph(format!(
            "Of the other findings {slight_for} speak slightly for it, {slight_against} against it."
        )));
    }
    let mut points: Vec<String> =
        view.check.iter().map(|check| format!("Check before assembly: {}", check.sentence())).collect();
    points.extend(view.put_right.iter().map(|right| format!("Put right before assembly: {}", right.sentence())));
    blocks.push(Block::Points(points));
    blocks
}

/// The findings that are told, and how many that speak only slightly are left out: those are told only where there is
/// little else. `evidence` is strongest first.
fn weighty(evidence: &[Evidence]) -> (&[Evidence], usize) {
    let strong = evidence.iter().take_while(|evidence| evidence.strength > Strength::Slight).count();
    let told = strong.max(evidence.len().min(FEWEST));
    evidence.split_at_checked(told).map_or((evidence, 0), |(told, slight)| (told, slight.len()))
}

fn on(evidence: &Evidence, assessment: &Assessment) -> String {
    let views: Vec<&PartView> = assessment.parts.iter().filter(|view| evidence.parts.contains(&view.part)).collect();
    let outside = assessment.outside.iter().filter(|view| evidence.parts.contains(&view.part));
    let outside: Vec<&str> = outside.map(|view| view.label.as_str()).collect();
    match views.len() {
        0 if !outside.is_empty() => outside.join("; "),
        0 => "the engine’s past".into(),
        1..=PARTS_NAMED => by_kind(&views, assessment).join("; "),
        _ => {
            let counts = grouped(&views, |view| view.kind);
            let counts = counts.iter().map(|(kind, group)| {
                let name = kind.row().name.said(assessment.terms);
                counted(group.len(), &name, &plural(&name))
            });
            counts.collect::<Vec<_>>().join(", ")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::arranged;
    use crate::job::{Job, PartRecord, TagRecord, TextField};
    use crate::wear::{Grade, Tag};

    fn job() -> Job {
        let worn = ["main-shell.1.lower", "main-shell.2.lower", "rod-shell.1.upper", "rod-shell.2.upper"];
        let tagged = TagRecord { grade: Grade::THREE, zones: [].into() };
        let record = |tag| PartRecord { tags: [(tag, tagged.clone())].into(), ..PartRecord::default() };
        let mut job = arranged(Arrangement::inline(4));
        job.parts = worn.iter().map(|part| (part.parse().unwrap(), record(Tag::EmbeddedDebris))).collect();
        job.parts.insert("rod-shell.3.upper".parse().unwrap(), PartRecord { clean: true, ..PartRecord::default() });
        job.texts.insert(TextField::Customer, "A. Customer".into());
        job.texts.insert(TextField::EngineNumber, "40117".into());
        job
    }

    #[test]
    fn what_was_found_outside_is_told_with_where() {
        let mut job = job();
        let torn = TagRecord { grade: Grade::THREE, zones: [].into() };
        let record = PartRecord { tags: [(Tag::Torn, torn)].into(), ..PartRecord::default() };
        job.parts.insert("air-cleaner".parse().unwrap(), record);
        let assessment = assess(&job);
        let dirt = assessment.causes.causes.iter().find(|cause| cause.id == "dirt-in-oil").unwrap();
        let found = dirt.evidence_for.iter().find(|evidence| evidence.words.contains("torn")).unwrap();
        assert_eq!(on(found, &assessment), "Air cleaner and duct");
    }

    #[test]
    fn the_page_names_engine_cause_parts_and_weight_but_not_the_customer() {
        let job = job();
        let paper = evidence_sheet(&Desk::bare(&job, &assess(&job)));
        let text = format!("{paper:?}");
        for words in ["40117", "Dirt", "for", "against", "strongly", "Main 2, lower shell", "Check before assembly"] {
            assert!(text.contains(words), "“{words}” is not in {text}");
        }
        assert!(!text.contains("Customer"), "{text}");
    }

    #[test]
    fn an_empty_job_says_that_there_is_nothing() {
        let paper = evidence_sheet(&Desk::bare(&Job::default(), &assess(&Job::default())));
        assert!(format!("{paper:?}").contains("Not enough has been seen"));
    }
}
