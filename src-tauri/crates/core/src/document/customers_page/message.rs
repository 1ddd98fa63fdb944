//! The page as a message: at most ten lines, to paste.

use crate::document::desk::Desk;
use crate::document::head::typed;
use crate::document::page::{Choice, CustomersPage, JobToDecide, ProposalHead, Section, Total};
use crate::job::TextField;

/// The lines.
pub fn message(desk: &Desk<'_>) -> Vec<String> {
    let page = super::page(desk);
    let machine = typed(desk.job, TextField::Machine);
    let head: Vec<String> = machine.into_iter().chain([desk.date.in_words()]).collect();
    let facts: Vec<String> =
        page.facts.iter().map(|(name, value)| format!("{name}: {}.", value.trim_end_matches('.'))).collect();
    let told: Vec<String> =
        page.told.iter().map(|row| format!("{}: {}. {}", row.told, row.answer.to_lowercase(), row.found)).collect();
    let proposal = &page.proposal;
    let lines = [
        page.shop.first().map_or_else(|| head.join(", "), |shop| format!("{shop}: {}", head.join(", "))),
        facts.join(" "),
        page.advice.clone(),
        [told, page.found.clone(), vec![how(&page)], page.besides.clone()].concat().join(" ").trim().to_owned(),
        jobs(&page),
        [page.total.as_ref().map(total).unwrap_or_default(), page.unpriced.clone()].concat(),
        page.choices.iter().map(Choice::words).collect::<Vec<_>>().join(" "),
        if page.not_examined.is_empty() { String::new() } else { format!("Not examined: {}", page.not_examined) },
        [section(&page, Section::SaidSince, &proposal.said_since), section(&page, Section::Since, &proposal.since)]
            .concat()
            .trim()
            .to_owned(),
        [answer(&page, desk.shop.called()), page.asked.join(" ")].join(" ").trim().to_owned(),
    ];
    lines.into_iter().filter(|line| !line.is_empty()).collect()
}

/// What stands in a section of the page, after its heading.
fn section(page: &CustomersPage, section: Section, sentences: &[String]) -> String {
    if sentences.is_empty() {
        return String::new();
    }
    format!("{}: {} ", page.heading(section), sentences.join(" "))
}

fn how(page: &CustomersPage) -> String {
    let links: Vec<String> = page.how.iter().map(|link| format!("{}: {}.", link.head, link.words)).collect();
    links.join(" ")
}

fn jobs(page: &CustomersPage) -> String {
    let currency = page.total.as_ref().map(|total| total.currency.as_str()).unwrap_or_default();
    let job = |job: &JobToDecide| {
        let JobToDecide { number, title, need, because, if_left, .. } = job;
        let price = if page.total.is_some() { format!(", {}", job.price_words(currency)) } else { String::new() };
        let said = job.answer.map_or_else(String::new, |answer| format!(" You said {}.", answer.words()));
        format!("{number} {title}: {}{price}. {because} If left: {if_left}{said}", need.words())
    };
    let jobs = page.jobs.iter().map(job).collect::<Vec<_>>().join(" ");
    let without_tax = if page.total.is_some() && !jobs.is_empty() { "Prices without tax. " } else { "" };
    format!("{without_tax}{jobs}")
}

fn total(total: &Total) -> String {
    let Total { gross, net, tax, tax_rate, left_out, beside, agreed, .. } = total;
    let agreed = agreed.as_ref().map_or_else(String::new, |own| {
        format!("{}: {} ({} without, tax {}). ", own.words(), own.gross, own.net, own.tax)
    });
    let all = if agreed.is_empty() { String::new() } else { format!("{agreed}{}: ", Total::ALL_JOBS) };
    let sum = format!("{all}{}: {gross} ({net} without, tax {tax_rate} {tax}).", total.sum_words());
    let told = [vec![sum, left_out.clone()], beside.clone()].concat();
    told.into_iter().filter(|sentence| !sentence.is_empty()).collect::<Vec<_>>().join(" ")
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
