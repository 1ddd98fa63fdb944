//! The page as a message to paste: at most ten lines. What happens if a job is left, the photos, the other causes and
//! findings stand on the page that it goes with.

use crate::document::desk::Desk;
use crate::document::head::typed;
use crate::document::page::{Choice, CustomersPage, JobToDecide, ProposalHead, Section, Total};
use crate::job::{Link, TextField};
use crate::money::Need;
use crate::words::{Explaining, capitalised};

/// Links of the chain that are told: how it got in, and what it was.
const LINKS: usize = 2;
/// Sentences of what was found.
const FOUND: usize = 4;
/// Which, the page says.
const NOT_EXAMINED: &str = "Some parts were not examined: that does not mean sound.";

/// The lines.
pub fn message(desk: &Desk<'_>) -> Vec<String> {
    let page = super::as_it_stands(desk);
    let proposal = &page.proposal;
    // Where no part shows damage, it is the readings that ask for work.
    let told_of_it = if desk.assessment.progress.worn == 0 { FOUND } else { 1 };
    let found = page.found.iter().take(told_of_it).cloned();
    let told = page.told.iter().map(|row| format!("{}: {}.", row.told, row.answer.to_lowercase()));
    let links = page.how.iter().take(LINKS).map(|Link { head, words }| format!("{head}: {words}."));
    let choices = page.choices.iter().map(choice);
    let not_examined = match desk.assessment.progress.looked {
        _ if page.not_examined.is_empty() => None,
        0 => Some(format!("Not examined: {}", page.not_examined)),
        _ => Some(NOT_EXAMINED.to_owned()),
    };
    let since = [(Section::SaidSince, &proposal.said_since), (Section::Since, &proposal.since)];
    let since = since.into_iter().filter(|(_, all)| !all.is_empty());
    let since = since.map(|(section, all)| format!("{}: {}", page.heading(section), all.join(" ")));
    let before = [
        vec![head(&page, desk)],
        [page.advice.clone()].into_iter().chain(found).collect(),
        told.collect(),
        if page.how.is_empty() { page.besides.clone() } else { links.collect() },
    ];
    let jobs: Vec<String> = Need::ALL.into_iter().rev().map(|need| jobs(&page, need)).collect();
    let after = [
        page.total.as_ref().map(total).into_iter().chain([page.unpriced.clone()]).collect(),
        choices.chain(not_examined).collect(),
        since.chain([answer(&page, desk.shop.called())]).chain(page.asked.iter().cloned()).collect(),
    ];
    let mut explaining = Explaining::default();
    let mut explained = |lines: Vec<String>| lines.iter().map(|line| explaining.said(line)).collect::<Vec<String>>();
    // The titles of the jobs stay as they stand on the proposal.
    let lines = [explained(before.map(join).into()), jobs, explained(after.map(join).into())];
    lines.concat().into_iter().filter(|line| !line.is_empty()).collect()
}

fn join(mut sentences: Vec<String>) -> String {
    sentences.retain(|sentence| !sentence.is_empty());
    sentences.join(" ")
}

/// Who writes, of which engine, and when.
fn head(page: &CustomersPage, desk: &Desk<'_>) -> String {
    let machine = typed(desk.job, TextField::Machine);
    let number = typed(desk.job, TextField::EngineNumber).map(|number| format!("engine {number}"));
    let of = machine.into_iter().chain(number).chain([desk.date.in_words()]).collect::<Vec<_>>().join(", ");
    page.shop.first().map_or_else(|| of.clone(), |shop| format!("{shop}: {of}"))
}

/// Those that are needed as much.
fn jobs(page: &CustomersPage, need: Need) -> String {
    let total = page.total.as_ref();
    let job = |job: &JobToDecide| {
        let price = if total.is_some() { format!(" {}", job.price_figures()) } else { String::new() };
        let said = job.answer.map_or_else(String::new, |answer| format!(" (you said {})", answer.words()));
        format!("{} {}{price}{said}", job.number, job.title)
    };
    let jobs: Vec<String> = page.jobs.iter().filter(|job| job.need == need).map(job).collect();
    if jobs.is_empty() {
        return String::new();
    }
    let prices = total.map_or_else(String::new, |total| format!(", {} without tax", total.currency));
    format!("{}{prices}: {}.", capitalised(need.words()), jobs.join("; "))
}

fn total(total: &Total) -> String {
    let Total { gross, net, tax, tax_rate, left_out, beside, agreed, .. } = total;
    let all = agreed.as_ref().map_or_else(String::new, |own| {
        format!("{}: {} ({} without, tax {}). {}: ", own.words(), own.gross, own.net, own.tax, Total::ALL_JOBS)
    });
    let sum = format!("{all}{}: {gross} ({net} without, tax {tax_rate} {tax}).", total.sum_words());
    join([vec![sum, left_out.clone()], beside.clone()].concat())
}

/// The two ways, and what the other costs; what speaks for which the page tells.
fn choice(choice: &Choice) -> String {
    let Choice { what, proposed, other, saving, .. } = choice;
    let saving = if saving.is_empty() { String::new() } else { format!(", {saving}") };
    format!("{what}: {proposed}, or {other}{saving}.")
}

/// What was answered, or how to answer.
fn answer(page: &CustomersPage, called: Option<String>) -> String {
    let proposal = &page.proposal;
    if !proposal.answered.is_empty() {
        return format!("{}: {}.", page.heading(Section::Answer), proposal.answered);
    }
    if page.jobs.is_empty() || !proposal.is_open() {
        return String::new();
    }
    let until = proposal.valid_until.map_or_else(String::new, |day| format!(" by {}", day.in_words()));
    let called = called.map_or_else(String::new, |called| format!(" Our {called}."));
    let number = proposal.number;
    format!("Proposal {number}: please answer{until}. {}{called}", ProposalHead::HOW_TO_ANSWER)
}
