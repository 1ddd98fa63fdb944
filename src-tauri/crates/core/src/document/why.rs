//! Why it happened, for the customer: each likely cause in plain words with what speaks for and against it.

use super::condition_report::heading;
use super::{Block, Extent};
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
pub(super) fn why(assessment: &Assessment, extent: Extent, blocks: &mut Vec<Block>) {
    if assessment.parts.is_empty() {
        return;
    }
    blocks.push(heading("Why it happened"));
    if !assessment.causes.enough_seen {
        blocks.push(Block::Paragraph(assessment.causes.summary.clone()));
        return;
    }
    for view in told(assessment) {
        blocks.push(Block::Heading {
            level: 2,
            text: format!("{}: {}, {}", capitalised(&view.name), view.likelihood, view.percent),
        });
        blocks.push(Block::Paragraph(view.plainly.clone()));
        let side = |evidence: &[Evidence], how: &str| -> Vec<String> {
            evidence.iter().take(lines(extent)).map(|evidence| format!("{how}: {}.", evidence.words)).collect()
        };
        let mut points = side(&view.evidence_for, "For it");
        points.extend(side(&view.evidence_against, "Against it"));
        points.extend(view.put_right.iter().map(|right| format!("To be put right before assembly: {}", right.words)));
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
