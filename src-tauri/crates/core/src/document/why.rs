//! Why it happened, for the customer: each likely cause in plain words with what speaks for and against it.

use super::chapter::chapter;
use super::desk::Extent;
use super::paper::Block;
use crate::assess::Assessment;
use crate::cause::{CauseView, Evidence};
use crate::words::capitalised;

/// Lines of evidence on each side.
fn lines(extent: Extent) -> usize {
    if extent == Extent::Short { 2 } else { 4 }
}

/// The causes that are told, most likely first; none before enough has been seen.
pub(super) fn told(assessment: &Assessment) -> impl Iterator<Item = &CauseView> {
    assessment.causes.causes.iter().filter(|view| view.told)
}

/// The chapter; nothing before the engine's arrangement is known.
pub(super) fn why(assessment: &Assessment, extent: Extent) -> Vec<Block> {
    let causes = &assessment.causes;
    if assessment.parts.is_empty() {
        return vec![];
    }
    if !causes.enough_seen {
        return chapter("Why it happened", [Block::Paragraph(causes.summary.clone())]);
    }
    let mut body: Vec<Block> = told(assessment).flat_map(|view| cause(view, extent)).collect();
    if !causes.unexplained.is_empty() {
        body.push(Block::Paragraph("Seen, and explained by none of the causes known here:".into()));
        body.push(Block::Points(causes.unexplained.iter().map(|misfit| capitalised(&misfit.words)).collect()));
    }
    body.push(Block::Paragraph(
        "More than one cause can hold at once. The likelihoods come from a model of how engines wear and from what was seen; they are a guide to where to look, not a proof.".into(),
    ));
    chapter("Why it happened", body)
}

fn cause(view: &CauseView, extent: Extent) -> [Block; 3] {
    let side = |evidence: &[Evidence], how: &str| -> Vec<String> {
        evidence.iter().take(lines(extent)).map(|evidence| format!("{how}: {}.", evidence.words)).collect()
    };
    let mut points = side(&view.evidence_for, "For it");
    points.extend(side(&view.evidence_against, "Against it"));
    points.extend(view.put_right.iter().map(|right| format!("To be put right before assembly: {}", right.words)));
    [
        Block::subheading(format!("{}: {}, {}", capitalised(&view.name), view.likelihood, view.percent)),
        Block::Paragraph(view.plainly.clone()),
        Block::Points(points),
    ]
}
