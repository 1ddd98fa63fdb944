//! What it costs, what is not in it, and what it is compared with.

use super::jobs::quote;
use crate::assess::Assessment;
use crate::document::page::Total;
use crate::money::{Money, Quote};
use crate::words::counted;

/// Lines without a price that are named before the rest is counted.
const NAMED: usize = 2;

/// None before the shop has entered a price.
pub(super) fn total(assessment: &Assessment) -> Option<Total> {
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
        left_out: left_out(quote),
        beside: beside(assessment, quote),
    })
}

fn left_out(quote: &Quote) -> String {
    let open: Vec<&str> = quote.lines.iter().filter(|line| line.net.is_none()).map(|line| line.what.as_str()).collect();
    match open.split_at_checked(NAMED) {
        _ if open.is_empty() => String::new(),
        Some((named, rest)) if !rest.is_empty() => {
            format!(
                "Not priced yet and not in the sum: {}. And {}.",
                named.join("; "),
                counted(rest.len(), "more line", "more lines")
            )
        }
        _ => format!("Not priced yet and not in the sum: {}.", open.join("; ")),
    }
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
