//! What it costs, what is not in it, and what it is compared with.

use super::jobs::quote;
use crate::assess::Assessment;
use crate::cost::{left_out, unpriced};
use crate::document::page::Total;
use crate::job::Job;
use crate::money::{Money, Quote};

/// None before the shop has entered a price.
pub(super) fn total(job: &Job, assessment: &Assessment) -> Option<Total> {
    let quote = quote(assessment);
    if quote.lines.iter().all(|line| line.net.is_none()) {
        return None;
    }
    Some(Total {
        currency: quote.currency.code().into(),
        net: quote.currency.figures(quote.net),
        tax: quote.currency.figures(quote.tax),
        tax_rate: quote.tax_rate.clone(),
        gross: quote.currency.figures(quote.gross),
        at_least: quote.without_price > 0,
        left_out: [unpriced(quote).into_iter().collect(), left_out(job, quote, &assessment.lists, &assessment.causes)]
            .concat()
            .join(" "),
        beside: beside(assessment, quote),
    })
}

/// Beside the first estimate; beside another engine where that is cheaper is what the page begins with.
fn beside(assessment: &Assessment, quote: &Quote) -> Vec<String> {
    let more: Money = assessment.differences.iter().map(|difference| difference.more).sum();
    let (amount, word) = match more.cmp(&Money::default()) {
        std::cmp::Ordering::Equal => return vec![],
        std::cmp::Ordering::Greater => (more, "more"),
        std::cmp::Ordering::Less => (Money::default() - more, "less"),
    };
    vec![format!("Without tax that is {} {word} than the first estimate.", quote.currency.show(amount))]
}
