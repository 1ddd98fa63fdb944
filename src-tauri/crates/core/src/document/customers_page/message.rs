//! The page as a message: at most ten lines, to paste.

use crate::document::desk::Desk;
use crate::document::head::typed;
use crate::document::page::{CustomersPage, JobToDecide, Total};
use crate::job::TextField;

/// The lines.
pub fn message(desk: &Desk<'_>) -> Vec<String> {
    let page = super::page(desk);
    let machine = typed(desk.job, TextField::Machine);
    let head: Vec<String> = machine.into_iter().chain([desk.date.in_words()]).collect();
    let told: Vec<String> =
        page.told.iter().map(|row| format!("{}: {}. {}", row.told, row.answer.to_lowercase(), row.found)).collect();
    let lines = [
        page.shop.first().map_or_else(|| head.join(", "), |shop| format!("{shop}: {}", head.join(", "))),
        page.advice.clone(),
        told.join(" "),
        [page.found.clone(), vec![how(&page)], page.besides.clone()].concat().join(" ").trim().to_owned(),
        jobs(&page),
        page.total.as_ref().map(total).unwrap_or_default(),
        if page.not_examined.is_empty() { String::new() } else { format!("Not examined: {}", page.not_examined) },
        answer(&page),
        page.asked.join(" "),
    ];
    lines.into_iter().filter(|line| !line.is_empty()).collect()
}

fn how(page: &CustomersPage) -> String {
    let links: Vec<String> = page.how.iter().map(|link| format!("{}: {}.", link.head, link.words)).collect();
    links.join(" ")
}

fn jobs(page: &CustomersPage) -> String {
    let currency = page.total.as_ref().map(|total| total.currency.as_str()).unwrap_or_default();
    let job = |job: &JobToDecide| {
        let currency = if job.price.is_empty() { "" } else { currency };
        let price = format!("{} {currency}", job.price_words());
        format!("{} {} ({}): {}", job.number, job.title, job.need.words(), price.trim_end())
    };
    page.jobs.iter().map(job).collect::<Vec<_>>().join("; ")
}

fn total(total: &Total) -> String {
    let least = if total.at_least { "at least " } else { "" };
    let Total { gross, net, currency, tax_rate, left_out, .. } = total;
    format!("Total {least}{gross} {currency} with tax ({net} without, tax {tax_rate}). {left_out}")
        .trim_end()
        .to_owned()
}

fn answer(page: &CustomersPage) -> String {
    let proposal = &page.proposal;
    if page.jobs.is_empty() || !proposal.is_open() {
        return String::new();
    }
    let until = proposal.valid_until.map_or_else(String::new, |day| format!(" by {}", day.in_words()));
    format!(
        "Please answer proposal {}{until}: the numbers with yes, no or later, your name and a telephone number.",
        proposal.number
    )
}
