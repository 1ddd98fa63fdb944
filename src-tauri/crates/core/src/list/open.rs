//! What is still open at the end of a job.

use serde::Serialize;

use super::{ListKind, WorkList};
use crate::assess::{Approval, PartView};
use crate::engine::Part;
use crate::job::Consent;
use crate::measure::{Phase, Verdict};
use crate::sizing::Sizing;

/// One thing that is still open.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Open {
    /// The list on which it stands; none if it is on no list.
    pub list: Option<ListKind>,
    /// The part that is to be measured again; none if it is not about one part.
    pub part: Option<Part>,
    /// In a sentence.
    pub words: String,
}

/// Items that are not done, save those to which the customer said no; what came back wrong or unmeasured; figures outside
/// their limits after machining or fitting; and what the customer has not answered.
pub fn still_open(lists: &[WorkList], parts: &[PartView], sizing: &Sizing, approval: &Approval) -> Vec<Open> {
    let mut open: Vec<Open> = lists.iter().flat_map(undone).collect();
    let returned: Vec<Open> = sizing
        .read_back
        .iter()
        .flat_map(|back| &back.parts)
        .filter(|line| !line.problem.is_empty())
        .map(|line| about(line.part, line.problem.clone()))
        .collect();
    let late = parts.iter().flat_map(|view| view.figures.iter().map(move |figure| (view, figure)));
    let wrong = late.filter(|(view, figure)| {
        let is_wrong = figure.phase != Phase::Found && figure.verdict.is_some_and(|verdict| verdict != Verdict::Within);
        is_wrong && !returned.iter().any(|told| told.part == Some(view.part))
    });
    let wrong: Vec<Open> = wrong
        .map(|(view, figure)| about(view.part, format!("{}: {} {}", view.label, figure.name, figure.because)))
        .collect();
    open.extend(returned);
    open.extend(wrong);
    open.extend(unanswered(approval).map(|words| Open { list: None, part: None, words }));
    open
}

fn undone(list: &WorkList) -> impl Iterator<Item = Open> {
    let items = list.items.iter().filter(|item| !item.is_done() && item.consent != Some(Consent::No));
    items.map(|item| {
        let size = if item.detail.is_empty() || list.kind == ListKind::MachineShop { "" } else { &item.detail };
        let size = if size.is_empty() { String::new() } else { format!(", {size}") };
        Open { list: Some(list.kind), part: None, words: format!("{}: {}{size}", list.title, item.what) }
    })
}

fn about(part: Part, words: String) -> Open {
    Open { list: None, part: Some(part), words }
}

fn unanswered(approval: &Approval) -> impl Iterator<Item = String> {
    let version = approval.version;
    let waits =
        (version > 0 && approval.answer.is_none()).then(|| format!("Proposal {version} has not been answered."));
    let later =
        approval.answer.iter().flat_map(|answer| &answer.lines).filter(|line| line.answer == Consent::Later).count();
    let later = (later > 0).then(|| format!("The customer put off {later} of the lines of proposal {version}."));
    let since = approval.since.len();
    let since = (since > 0).then(|| format!("Since proposal {version} {since} lines have changed and are not agreed."));
    waits.into_iter().chain(later).chain(since)
}
