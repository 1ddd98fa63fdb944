//! Where there is more than one way: what the other saves, what speaks against it, what the shop advises.

use crate::assess::Assessment;
use crate::cost::{Way, Ways};
use crate::document::page::Choice;
use crate::money::{Currency, Money};

/// Choices on the page.
const MOST: usize = 2;

/// Each end with the way that is proposed and the best of the others that can be gone.
pub(super) fn choices(assessment: &Assessment) -> Vec<Choice> {
    let currency = assessment.quote.currency;
    assessment.ways.iter().filter_map(|ways| choice(ways, currency)).take(MOST).collect()
}

fn choice(ways: &Ways, currency: Currency) -> Option<Choice> {
    let proposed = ways.ways.iter().find(|way| way.work == ways.followed)?;
    let other = ways.ways.iter().find(|way| way.work != ways.followed && way.ruled_out.is_empty())?;
    let is_advised = ways.ways.first().is_some_and(|first| first.work == proposed.work);
    let advice = if is_advised { "We advise the first." } else { "We advise the second." };
    Some(Choice {
        what: ways.what.clone(),
        proposed: proposed.words.clone(),
        other: other.words.clone(),
        saving: saving(proposed, other, currency),
        drawback: ways.kind.drawback(other.work).into(),
        advice: advice.into(),
    })
}

/// "saves 473.66 EUR" or "costs 62.00 EUR more", without tax.
fn saving(proposed: &Way, other: &Way, currency: Currency) -> String {
    let Some((proposed, other)) = proposed.net.zip(other.net) else { return String::new() };
    let less = proposed - other;
    match less.cmp(&Money::default()) {
        std::cmp::Ordering::Greater => format!("saves {} without tax", currency.show(less)),
        std::cmp::Ordering::Equal => "costs the same".into(),
        std::cmp::Ordering::Less => format!("costs {} more without tax", currency.show(Money::default() - less)),
    }
}
