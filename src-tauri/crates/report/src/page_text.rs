//! The customer's page as plain text.

use wearbook_core::document::{Choice, CustomersPage, JobToDecide, Section, Total};

use crate::clean::line;

/// Its sections, each under its heading; what is empty is left out.
pub(crate) fn page_text(page: &CustomersPage) -> String {
    let facts = page.facts.iter().map(|(name, value)| format!("{name}: {value}"));
    let head: Vec<String> = page.shop.iter().cloned().chain(facts).collect();
    let parts = [part("", head), part("", vec![page.advice.clone()])];
    let sections = Section::ALL.map(|section| part(&page.heading(section), lines(page, section)));
    let parts: Vec<String> = parts.into_iter().chain(sections).flatten().collect();
    parts.join("\n\n")
}

fn part(heading: &str, body: Vec<String>) -> Option<String> {
    let body: Vec<String> = body.into_iter().map(|text| line(&text)).filter(|text| !text.is_empty()).collect();
    let heading = (!heading.is_empty()).then(|| heading.to_uppercase());
    (!body.is_empty()).then(|| heading.into_iter().chain(body).collect::<Vec<_>>().join("\n"))
}

fn lines(page: &CustomersPage, section: Section) -> Vec<String> {
    match section {
        Section::Found => {
            let told = page.told.iter().map(|row| format!("{}: {}. {}", row.told, row.answer, row.found));
            told.chain(page.found.clone()).collect()
        }
        Section::How => {
            let links = page.how.iter().map(|link| format!("{}: {}.", link.head, link.words));
            links.chain(page.besides.clone()).collect()
        }
        Section::Shown => page.shown.iter().map(|shown| format!("{} (In the report.)", shown.caption())).collect(),
        Section::Jobs if page.jobs.is_empty() => vec![],
        Section::Jobs => {
            let currency = page.total.as_ref().map(|total| total.currency.as_str()).unwrap_or_default();
            let jobs = page.jobs.iter().map(|own| job(own, currency));
            [page.proposal.dates()].into_iter().chain(jobs).collect()
        }
        Section::Costs => costs(page),
        Section::Choices => page.choices.iter().map(Choice::words).collect(),
        Section::NotExamined => vec![page.not_examined.clone()],
        Section::Asked => page.asked.clone(),
        Section::SaidSince => page.proposal.said_since.clone(),
        Section::Since => page.proposal.since.clone(),
        Section::Answer => vec![page.proposal.answered.clone()],
    }
}

fn job(job: &JobToDecide, currency: &str) -> String {
    let answer = job.answer.map_or_else(String::new, |answer| format!(" Answer: {}.", answer.words()));
    let JobToDecide { number, title, because, if_left, need, .. } = job;
    let price = if currency.is_empty() { String::new() } else { format!(": {}", job.price_words(currency)) };
    format!("{number} {title} ({}){price}. {because} If left: {if_left}{answer}", need.words())
}

fn costs(page: &CustomersPage) -> Vec<String> {
    let Some(total) = &page.total else { return vec![page.unpriced.clone()] };
    let agreed = total
        .agreed
        .iter()
        .map(|own| format!("{}: {} ({} without, tax {}).", own.words(), own.gross, own.net, own.tax));
    let Total { gross, net, tax, tax_rate, .. } = total;
    let all = if total.agreed.is_some() { format!("{}: ", Total::ALL_JOBS) } else { String::new() };
    let sum = format!("{all}{}: {gross} ({net} without, tax {tax_rate} {tax}).", total.sum_words());
    agreed.chain([sum, total.left_out.clone()]).chain(total.beside.clone()).collect()
}
