//! The customer's page: what is wrong, why, what must be done, what it costs, what is left out, what to decide.
//!
//! One content for a sheet of paper, a picture, a web page and a message. Every word of the trade is explained where it
//! first stands.

mod advice;
mod choices;
mod how;
mod jobs;
mod kept;
mod message;
mod shown;
mod told;
mod total;

pub use message::message;
pub(super) use shown::worst_first;

use advice::Advice;

use super::desk::{Desk, Shop};
use super::grouping::{by_kind, called, some_of};
use super::head::{customers_paper, filled};
use super::page::CustomersPage;
use super::paper::{Block, Paper};
use crate::assess::Assessment;
use crate::cause::Verdict;
use crate::date::Date;
use crate::job::{Complaint, HistoryFact, Job, ProposedPage, TextField};
use crate::view::{PartView, Seen};
use crate::wear::Grade;
use crate::words::{Explaining, counted, plural};

/// Measures outside their limits that are told before the rest is counted, and parts that are named of each.
const MEASURES_NAMED: usize = 3;
const PLACES_NAMED: usize = 6;
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

/// What the customer reads now beside the jobs, to be kept with a proposal.
pub fn page_to_propose(job: &Job, assessment: &Assessment) -> ProposedPage {
    let shop = Shop::default();
    kept::kept(as_of_now(&Desk { job, assessment, date: Date::EPOCH, shop: &shop }))
}

/// What stands on the page, each word of the trade explained.
pub(super) fn page(desk: &Desk<'_>) -> CustomersPage {
    let mut page = as_it_stands(desk);
    explain(&mut page);
    page
}

/// What was proposed last as it was proposed, else what follows now; nothing in it is explained.
fn as_it_stands(desk: &Desk<'_>) -> CustomersPage {
    let mut page = as_of_now(desk);
    if page.proposal.number > 0 {
        match desk.job.proposals.last().and_then(|last| last.page.as_ref()) {
            Some(kept) => {
                let since = kept::put_back(&mut page, kept);
                page.proposal.said_since.extend(since);
            }
            // Which of it was read then is not known.
            None => {
                page.proposal.said_since.push(format!("What stands here of the engine is of {}.", desk.date.in_words()))
            }
        }
    }
    page
}

/// The page as it follows from the job, beside the proposal as it stands; nothing in it is explained.
fn as_of_now(desk: &Desk<'_>) -> CustomersPage {
    let Desk { job, assessment, shop, .. } = desk;
    let advice = Advice::of(assessment);
    // Before anybody has looked nothing has to be done, and of a sound engine nothing is left to decide.
    let is_to_decide = job.is_begun() && (advice != Advice::Sound || assessment.approval.shown.is_some());
    CustomersPage {
        shop: shop.lines().collect(),
        facts: filled(job, &[TextField::Customer, TextField::EngineNumber, TextField::Use, TextField::Complaint]),
        advice: advice.sentence(assessment),
        told: told::told(assessment),
        found: found(assessment),
        shown: shown::shown(job, assessment),
        how: how::how(assessment),
        besides: besides(assessment),
        jobs: if is_to_decide { jobs::jobs(assessment) } else { vec![] },
        choices: choices::choices(assessment),
        total: total::total(job, assessment).filter(|_| is_to_decide),
        unpriced: if is_to_decide { jobs::unpriced(assessment) } else { String::new() },
        not_examined: not_examined(assessment),
        asked: if job.refusal.is_none() { asked(desk) } else { vec![] },
        proposal: jobs::proposal(desk),
    }
}

/// What is likely besides the chain; where there is none, that and why nothing is told of how it happened.
fn besides(assessment: &Assessment) -> Vec<String> {
    let causes = &assessment.causes;
    match causes.verdict {
        Verdict::Wreck | Verdict::OrdinaryWear => vec![causes.summary.clone()],
        _ => how::besides(assessment),
    }
}

/// Explains each word of the trade where a reader meets it first.
fn explain(page: &mut CustomersPage) {
    let mut explaining = Explaining::default();
    let mut said = |text: &mut String| *text = explaining.said(text);
    said(&mut page.advice);
    for row in &mut page.told {
        said(&mut row.found);
    }
    page.found.iter_mut().for_each(&mut said);
    for link in &mut page.how {
        said(&mut link.words);
    }
    page.besides.iter_mut().for_each(&mut said);
    for shown in &mut page.shown {
        said(&mut shown.sentence);
    }
    for job in &mut page.jobs {
        said(&mut job.because);
        said(&mut job.if_left);
    }
    for choice in &mut page.choices {
        said(&mut choice.proposed);
        said(&mut choice.other);
    }
    said(&mut page.not_examined);
    page.proposal.said_since.iter_mut().chain(&mut page.proposal.since).for_each(&mut said);
}

/// How much was looked at, and what came of it.
fn found(assessment: &Assessment) -> Vec<String> {
    let progress = assessment.progress;
    let measured = assessment.parts.iter().filter(|view| view.is_only_measured()).count();
    if progress.looked == 0 && measured == 0 {
        return vec![];
    }
    // What shows only light traces is told apart: the jobs count what is worse.
    let is_light = |view: &&PartView| view.seen == Seen::Worn && view.worst.is_none_or(|worst| worst <= Grade::ONE);
    let light = match assessment.parts.iter().filter(is_light).count() {
        0 => String::new(),
        all if all == progress.worn => ", lightly".into(),
        light => format!(", {light} of them lightly"),
    };
    let damaged = match progress.worn {
        0 => "no damage was seen".to_owned(),
        worn => format!("{}{light}", counted(worn, "is damaged or worn", "are damaged or worn")),
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
        let measures = measures(&outside, assessment);
        let named = measures.iter().take(MEASURES_NAMED);
        told.extend(named.map(|measure| format!("Measured outside its limits: {measure}.")));
        told.extend(match measures.len().saturating_sub(MEASURES_NAMED) {
            0 => None,
            more => Some(format!("And {} outside.", counted(more, "other measure is", "other measures are"))),
        });
    }
    told
}

/// What was measured outside its limits, and where: "taper of main journal 3".
fn measures(views: &[&PartView], assessment: &Assessment) -> Vec<String> {
    let mut all: Vec<(String, Vec<&PartView>)> = Vec::new();
    for view in views {
        for figure in view.figures.iter().filter(|figure| figure.is_found_outside()) {
            // At which of several stations it is so the sheet of sizes says.
            let name = match figure.station {
                None => figure.name.to_lowercase(),
                Some(_) => figure.quantity.words(assessment.terms).to_lowercase(),
            };
            match all.iter_mut().find(|(own, of)| *own == name && of.iter().all(|other| other.kind == view.kind)) {
                Some((_, of)) => of.extend((!of.iter().any(|other| other.part == view.part)).then_some(*view)),
                None => all.push((name, vec![view])),
            }
        }
    }
    let told = |(name, of): &(String, Vec<&PartView>)| match of.as_slice() {
        [first, ..] if of.len() > PLACES_NAMED => {
            format!("{name} of {} {}", of.len(), plural(&first.kind.row().name.said(assessment.terms)))
        }
        _ => format!("{name} of {}", called(of, assessment)),
    };
    all.iter().map(told).collect()
}

/// An answer of its own, beside sound and worn.
fn not_examined(assessment: &Assessment) -> String {
    let open: Vec<&PartView> = assessment.parts.iter().filter(|view| view.is_unknown()).collect();
    if open.is_empty() {
        return String::new();
    }
    if assessment.progress.looked == 0 {
        return "All of it.".into();
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
