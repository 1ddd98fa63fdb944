//! What the customer told, and what was found of it.

use crate::assess::Assessment;
use crate::cause::{ComplaintAnswer, MadeBy};
use crate::document::grouping::called;
use crate::document::page::ToldAndFound;
use crate::words::{capitalised, counted};

/// Complaints that are told apart before the rest is left to the report.
const MOST: usize = 4;
/// What may make one complaint.
const MOST_MAKERS: usize = 2;

/// Each complaint with its answer.
pub(super) fn told(assessment: &Assessment) -> Vec<ToldAndFound> {
    assessment.causes.answers.iter().take(MOST).map(|answer| row(answer, assessment)).collect()
}

fn row(answer: &ComplaintAnswer, assessment: &Assessment) -> ToldAndFound {
    let made_by: Vec<String> =
        answer.made_by.iter().take(MOST_MAKERS).map(|maker| sentence(maker, assessment)).collect();
    let found = if made_by.is_empty() { &answer.after } else { &made_by.join(" ") };
    ToldAndFound { told: answer.told.clone(), answer: capitalised(&answer.words), found: found.clone() }
}

/// "Worn or failed rod bearing: crankpin 2 and 2 more parts."
fn sentence(maker: &MadeBy, assessment: &Assessment) -> String {
    let named = |part| {
        let view = assessment.part(part).map(|view| called(&[view], assessment));
        let outside = || assessment.outside.iter().find(|view| view.part == part).map(|view| view.label.to_lowercase());
        view.or_else(outside)
    };
    let what = capitalised(&maker.words);
    match maker.parts.split_first() {
        None => format!("{what}."),
        Some((first, rest)) => {
            let more = if rest.is_empty() {
                String::new()
            } else {
                format!(" and {}", counted(rest.len(), "more part", "more parts"))
            };
            format!("{what}: {}{more}.", named(*first).unwrap_or_default())
        }
    }
}
