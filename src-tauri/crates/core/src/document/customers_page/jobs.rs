//! The jobs that the customer decides on.

use crate::assess::Assessment;
use crate::document::desk::Desk;
use crate::document::page::{JobToDecide, ProposalHead};
use crate::money::{ProposedJob, Quote};

/// The quote that the page is about: what was proposed last, else what follows now.
pub(super) fn quote(assessment: &Assessment) -> &Quote {
    assessment.approval.shown.as_ref().unwrap_or(&assessment.quote)
}

/// Its jobs; none before anything has a price, for there is nothing to weigh.
pub(super) fn jobs(assessment: &Assessment) -> Vec<JobToDecide> {
    let quote = quote(assessment);
    let answer = assessment.approval.answer.as_ref();
    let said = |job: &ProposedJob| answer?.jobs.iter().find(|own| own.of == job.of).map(|own| own.answer);
    let is_priced = |job: &ProposedJob| quote.lines_of(job).any(|line| line.net.is_some());
    quote
        .jobs
        .iter()
        .map(|job| JobToDecide {
            number: job.number,
            title: job.title.clone(),
            because: job.because.clone(),
            if_left: job.if_left.clone(),
            need: job.need,
            price: if is_priced(job) { quote.currency.figures(job.net) } else { String::new() },
            at_least: job.without_price > 0,
            answer: said(job),
        })
        .collect()
}

/// How the proposal stands.
pub(super) fn proposal(desk: &Desk<'_>) -> ProposalHead {
    let Desk { job, assessment, .. } = desk;
    let approval = &assessment.approval;
    if let Some(refusal) = job.refusal {
        return ProposalHead { answered: refusal.words(), number: approval.version, ..ProposalHead::default() };
    }
    let Some(shown) = &approval.shown else { return ProposalHead::default() };
    let made = job.proposals.last().and_then(|last| last.made);
    let answer = approval.answer.as_ref();
    ProposalHead {
        number: approval.version,
        made,
        valid_until: made.zip(shown.valid_days).map(|(made, days)| made.after(days)),
        since: match answer {
            Some(_) => approval.exceeding().map(|since| format!("{}. {}", since.what, since.because)).collect(),
            None => vec![],
        },
        answered: answer.map(|answer| answer.said_by().words()).unwrap_or_default(),
        signature: answer.map(|answer| answer.signature.clone()).unwrap_or_default(),
    }
}
