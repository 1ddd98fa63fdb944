//! The customer's page as plain text.

use wearbook_core::document::{Choice, CustomersPage, JobToDecide};

use crate::clean::line;

/// Its sections, each under its heading; what is empty is left out.
pub(crate) fn page_text(page: &CustomersPage) -> String {
    let facts = page.facts.iter().map(|(name, value)| format!("{name}: {value}"));
    let head: Vec<String> = page.shop.iter().cloned().chain(facts).collect();
    let told = page.told.iter().map(|row| format!("{}: {}. {}", row.told, row.answer, row.found));
    let how = page.how.iter().map(|link| format!("{}: {}.", link.head, link.words));
    let shown = page.shown.iter().map(|shown| format!("{} (In the report.)", shown.caption()));
    let currency = page.total.as_ref().map(|total| total.currency.clone()).unwrap_or_default();
    let sections = [
        section("", head),
        section("", [page.advice.clone()]),
        section("What you told us, what we found", told.chain(page.found.clone())),
        section("How it happened", how.chain(page.besides.clone())),
        section("In pictures", shown),
        section(&decide(page), page.jobs.iter().map(|own| job(own, &currency))),
        section("What it costs", costs(page)),
        section("Another way", page.choices.iter().map(choice)),
        section("Not examined", [page.not_examined.clone()]),
        section("What we ask you", page.asked.clone()),
        section("Not yet agreed", page.proposal.since.clone()),
        section("Answered", [page.proposal.answered.clone()]),
    ];
    let sections: Vec<String> = sections.into_iter().flatten().collect();
    sections.join("\n\n")
}

fn section(heading: &str, body: impl IntoIterator<Item = String>) -> Option<String> {
    let body: Vec<String> = body.into_iter().map(|text| line(&text)).filter(|text| !text.is_empty()).collect();
    let heading = (!heading.is_empty()).then(|| heading.to_uppercase());
    (!body.is_empty()).then(|| heading.into_iter().chain(body).collect::<Vec<_>>().join("\n"))
}

fn decide(page: &CustomersPage) -> String {
    match page.proposal.number {
        0 => "What has to be done".into(),
        number => format!("Proposal {number}: what to decide"),
    }
}

fn job(job: &JobToDecide, currency: &str) -> String {
    let least = if job.at_least { "at least " } else { "" };
    let price = if job.price.is_empty() { "no price yet".into() } else { format!("{least}{} {currency}", job.price) };
    let answer = job.answer.map_or_else(String::new, |answer| format!(" Answer: {}.", answer.words()));
    let JobToDecide { number, title, because, if_left, need, .. } = job;
    format!("{number} {title} ({}): {price}. {because} If left: {if_left}{answer}", need.words())
}

fn costs(page: &CustomersPage) -> Vec<String> {
    let Some(total) = &page.total else { return vec![] };
    let least = if total.at_least { "at least " } else { "" };
    let sum =
        format!("{least}{} {} with tax ({} without, tax {}).", total.gross, total.currency, total.net, total.tax_rate);
    [vec![sum, total.left_out.clone()], total.beside.clone()].concat()
}

fn choice(choice: &Choice) -> String {
    let saving = if choice.saving.is_empty() { String::new() } else { format!(", {}", choice.saving) };
    let Choice { what, proposed, other, drawback, advice, .. } = choice;
    format!("{what}. Proposed: {proposed}. Instead: {other}{saving}. {drawback} {advice}")
}
