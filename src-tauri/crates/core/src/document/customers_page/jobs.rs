//! The jobs that the customer decides on.

use crate::assess::Assessment;
use crate::document::desk::Desk;
use crate::document::page::{JobToDecide, ProposalHead};
use crate::job::Approval;
use crate::money::{ProposedJob, Quote};
use crate::words::counted;

/// The quote that the page is about: what was proposed last, else what follows now.
pub(super) fn quote(assessment: &Assessment) -> &Quote {
    assessment.approval.shown.as_ref().unwrap_or(&assessment.quote)
}

/// What is said of the costs before anything has a price.
pub(super) fn unpriced(assessment: &Assessment) -> String {
    let quote = quote(assessment);
    let is_priced = quote.lines.iter().any(|line| line.net.is_some());
    if quote.lines.is_empty() || is_priced { String::new() } else { UNPRICED.into() }
}

const UNPRICED: &str = "What this costs is not known yet: we have to price it first. Nothing is done before you agree.";

/// Its jobs.
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

/// What was added since that is told before the rest is counted.
const ADDED: usize = 3;

/// What has to be done besides what was answered, each in a sentence.
fn not_agreed(approval: &Approval) -> Vec<String> {
    let told = approval.exceeding().take(ADDED).map(|since| format!("{}. {}", since.what, since.because));
    let more = approval.exceeding().count().saturating_sub(ADDED);
    let more = (more > 0).then(|| format!("And {}.", counted(more, "more line", "more lines")));
    told.chain(more).collect()
}

const MORE_FOLLOWS: &str = "More has to be done than is proposed here: please wait for the next proposal.";

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
            Some(_) => not_agreed(approval),
            None => vec![],
        },
        said_since: match answer {
            None if approval.exceeding().next().is_some() => vec![MORE_FOLLOWS.into()],
            _ => vec![],
        },
        answered: answer.map(|answer| answer.said_by().words()).unwrap_or_default(),
        signature: answer.map(|answer| answer.signature.clone()).unwrap_or_default(),
    }
}
