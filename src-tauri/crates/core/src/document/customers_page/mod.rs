//! The customer's page: what is wrong, why, what must be done, what it costs, what is left out, what to decide.
//!
//! One content for a sheet of paper, a picture, a web page and a message. Every word of the trade is explained where it
//! first stands.

mod advice;
mod choices;
mod how;
mod jobs;
mod message;
mod shown;
mod told;
mod total;

pub use message::message;
pub(super) use shown::worst_first;

use advice::Advice;

use super::desk::Desk;
use super::grouping::{by_kind, some_of};
use super::head::{customers_paper, filled};
use super::page::CustomersPage;
use super::paper::{Block, Paper};
use crate::assess::Assessment;
use crate::job::{Complaint, HistoryFact, TextField};
use crate::view::PartView;
use crate::words::{Explaining, counted};

/// Kinds of part that were not examined, named before the rest is counted.
const NOT_EXAMINED_NAMED: usize = 4;
/// Questions about the engine's past.
const QUESTIONS: usize = 2;

/// Where the old parts are the customer's by law.
const OLD_PARTS: &str =
    "Say with your answer whether you want the old parts back. Exchanged ones can only be shown to you.";

/// The page as a paper of its own.
pub fn customers_page(desk: &Desk<'_>) -> Paper {
    customers_paper(desk, TITLE, vec![Block::CustomersPage(Box::new(page(desk)))])
}

const TITLE: &str = "Your engine";

/// What stands on the page.
pub(super) fn page(desk: &Desk<'_>) -> CustomersPage {
    let Desk { job, assessment, shop, .. } = desk;
    let advice = Advice::of(assessment);
    // Before anybody has looked nothing has to be done, and of a sound engine nothing is left to decide.
    let is_to_decide = job.is_begun() && advice != Advice::Sound;
    let mut page = CustomersPage {
        shop: shop.lines().map(str::to_owned).collect(),
        facts: filled(job, &[TextField::Customer, TextField::EngineNumber, TextField::Use, TextField::Complaint]),
        advice: advice.sentence(assessment),
        told: told::told(assessment),
        found: found(assessment),
        shown: shown::shown(job, assessment),
        how: how::how(assessment),
        besides: how::besides(assessment),
        jobs: if is_to_decide { jobs::jobs(assessment) } else { vec![] },
        choices: choices::choices(assessment),
        total: total::total(job, assessment).filter(|_| is_to_decide),
        not_examined: not_examined(assessment),
        asked: if job.refusal.is_none() { asked(desk) } else { vec![] },
        proposal: jobs::proposal(desk),
    };
    explain(&mut page);
    page
}

/// Explains each word of the trade where a reader meets it first.
fn explain(page: &mut CustomersPage) {
    let mut explaining = Explaining::default();
    let mut said = |text: &mut String| *text = explaining.said(text);
    for row in &mut page.told {
        said(&mut row.found);
    }
    page.found.iter_mut().for_each(&mut said);
    for link in &mut page.how {
        said(&mut link.words);
    }
    page.besides.iter_mut().for_each(&mut said);
    for job in &mut page.jobs {
        said(&mut job.because);
        said(&mut job.if_left);
    }
    for choice in &mut page.choices {
        said(&mut choice.proposed);
        said(&mut choice.other);
    }
}

/// How much was looked at, and what came of it.
fn found(assessment: &Assessment) -> Vec<String> {
    let progress = assessment.progress;
    let measured = assessment.parts.iter().filter(|view| view.is_only_measured()).count();
    if progress.looked == 0 && measured == 0 {
        return vec![];
    }
    let damaged = match progress.worn {
        0 => "no damage was seen".to_owned(),
        worn => counted(worn, "is damaged or worn", "are damaged or worn"),
    };
    let mut told = match progress.looked {
        0 => vec![],
        looked => vec![format!("{looked} of {} parts have been examined: {damaged}.", progress.parts)],
    };
    if measured > 0 {
        told.push(format!("Measured, and not looked at: {}.", counted(measured, "part", "parts")));
    }
    let outside: Vec<&PartView> = assessment.parts.iter().filter(|view| view.is_measured_outside()).collect();
    if !outside.is_empty() {
        let named = some_of(&by_kind(&outside, assessment), NOT_EXAMINED_NAMED).to_lowercase();
        told.push(format!("Measured and outside the limits: {named}."));
    }
    told
}

/// An answer of its own, beside sound and worn.
fn not_examined(assessment: &Assessment) -> String {
    let open: Vec<&PartView> = assessment.parts.iter().filter(|view| view.is_unknown()).collect();
    if open.is_empty() {
        return String::new();
    }
    let named = some_of(&by_kind(&open, assessment), NOT_EXAMINED_NAMED).to_lowercase();
    let parts = counted(open.len(), "part", "parts");
    format!("{parts}: {named}. Not examined does not mean sound.")
}

/// What is asked besides an answer to the jobs.
fn asked(desk: &Desk<'_>) -> Vec<String> {
    let Desk { job, assessment, .. } = desk;
    let approval = &assessment.approval;
    if assessment.parts.is_empty() || approval.answer.is_some() {
        return vec![];
    }
    let mut asked: Vec<String> = Vec::new();
    if job.prices.estimate_rules.old_parts && assessment.progress.parts > 0 {
        asked.push(OLD_PARTS.into());
    }
    // What is a complaint is picked among them: it is not asked of somebody who told what was noticed.
    let was_told = |fact: HistoryFact| Complaint::of(fact).is_some() && !job.complaints.is_empty();
    let unasked = |fact: &HistoryFact| !job.history.contains_key(fact) && !was_told(*fact);
    let questions = HistoryFact::ALL.into_iter().filter(unasked).take(QUESTIONS);
    asked.extend(questions.map(|fact| fact.question().to_owned()));
    asked
}
