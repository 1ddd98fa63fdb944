//! Why it happened, for the customer: each likely cause in plain words with what speaks for and against it.

use super::chapter::chapter;
use super::paper::Block;
use crate::assess::Assessment;
use crate::cause::{CauseView, ComplaintAnswer, Evidence, Verdict};
use crate::words::capitalised;

/// Lines of evidence on each side.
const LINES: usize = 2;
/// Causes that are told at length, and as many in a line each; the others are only named.
const MOST: usize = 3;

/// The causes that are told, most likely first; none before enough has been seen.
pub(super) fn told(assessment: &Assessment) -> impl Iterator<Item = &CauseView> {
    assessment.causes.causes.iter().filter(|view| view.told)
}

/// The chapter; nothing before the engine's arrangement is known.
pub(super) fn why(assessment: &Assessment) -> Vec<Block> {
    let causes = &assessment.causes;
    if assessment.parts.is_empty() {
        return vec![];
    }
    let answered = answers(&causes.answers);
    if !causes.enough_seen {
        // That it is sound is what the first page begins with.
        let summary = (causes.verdict != Verdict::Sound).then(|| Block::Paragraph(causes.summary.clone()));
        return chapter("Why it happened", summary.into_iter().chain(answered));
    }
    let mut body: Vec<Block> = answered;
    let open: Vec<String> =
        causes.to_close.iter().map(|way| format!("{} ({})", way.todo, way.found.join("; "))).collect();
    if !open.is_empty() {
        body.extend([Block::subheading("The way in, to be put right"), Block::Points(open)]);
    }
    body.extend(told(assessment).filter(|view| view.named).take(MOST).flat_map(cause));
    let open: Vec<String> = told(assessment).filter(|view| !view.named).take(MOST).map(possible).collect();
    body.extend((!open.is_empty()).then_some(Block::Points(open)));
    let others = |named: bool| told(assessment).filter(move |view| view.named == named).skip(MOST);
    let others: Vec<String> = others(true).chain(others(false)).map(brief).collect();
    body.extend((!others.is_empty()).then(|| Block::Paragraph(format!("Besides: {}.", others.join("; ")))));
    if !causes.unexplained.is_empty() {
        let misfits: Vec<&str> = causes.unexplained.iter().map(|misfit| misfit.words.as_str()).collect();
        body.push(Block::Paragraph(format!("Explained by none of the causes known here: {}.", misfits.join("; "))));
    }
    body.push(Block::Paragraph(
        "More than one cause can hold at once. The likelihoods come from a model of how engines wear and from what was seen; they are a guide to where to look, not a proof.".into(),
    ));
    chapter("Why it happened", body)
}

/// What the customer noticed, each answered; nothing where nothing was told.
fn answers(all: &[ComplaintAnswer]) -> Vec<Block> {
    if all.is_empty() {
        return vec![];
    }
    let told = |answer: &ComplaintAnswer| format!("{}: {}. {}", answer.told, answer.words, answer.because());
    vec![Block::subheading("What the customer noticed"), Block::Points(all.iter().map(told).collect())]
}

/// How it came about, in one sentence from the way in to what was noticed; nothing where no way in is known.
fn came_about(view: &CauseView) -> Vec<String> {
    let chain = &view.chain;
    if chain.ways.is_empty() {
        let asked = chain.ask.iter().map(|question| format!("To be asked: {question}"));
        let looked =
            (!chain.look_labels.is_empty()).then(|| format!("To be looked at: {}.", chain.look_labels.join("; ")));
        let open: Vec<String> = looked.into_iter().chain(asked).collect();
        let told = (!open.is_empty()).then(|| format!("How it got in is not known yet. {}", open.join(" ")));
        return told.into_iter().collect();
    }
    let links: Vec<String> = [chain.ways.join("; "), chain.cause.clone()]
        .into_iter()
        .chain(chain.damage.first().cloned())
        // One did not make the other: the damage made both.
        .chain((!chain.complaints.is_empty()).then(|| chain.complaints.join(" and ").to_lowercase()))
        .collect();
    vec![format!("How it came about: {}.", links.join(" → "))]
}

/// A cause beyond those that are told at length.
fn brief(view: &CauseView) -> String {
    format!("{}, {}, {}", view.name, view.likelihood, view.percent)
}

/// A cause that is not named, in a line.
fn possible(view: &CauseView) -> String {
    format!("{}, {}: {}", capitalised(&view.likelihood), view.percent, view.plainly)
}

fn cause(view: &CauseView) -> [Block; 3] {
    let side = |evidence: &[Evidence], how: &str| -> Vec<String> {
        evidence.iter().take(LINES).map(|evidence| format!("{how}: {}.", evidence.words)).collect()
    };
    let mut points = came_about(view);
    points.extend(side(&view.evidence_for, "For it"));
    points.extend(side(&view.evidence_against, "Against it"));
    points.extend(view.put_right.iter().map(|right| format!("To be put right before assembly: {}", right.sentence())));
    [
        Block::subheading(format!("{}: {}, {}", capitalised(&view.name), view.likelihood, view.percent)),
        Block::Paragraph(view.plainly.clone()),
        Block::Points(points),
    ]
}
