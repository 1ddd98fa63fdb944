//! The quote beside the first estimate: what changed, and why.

use serde::{Deserialize, Serialize};

use super::{Charge, Money, Quote, QuoteLine};

/// A line of the estimate that the customer was given before the engine was opened.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct EstimateLine {
    /// What it was for, in the shop's words.
    pub what: String,
    /// The lines of a quote that it stands for; none for a line that no quote has (freight, a round sum).
    #[serde(default)]
    pub of: Vec<Charge>,
    /// How much, without tax.
    pub net: Money,
}

/// A line in which quote and estimate differ.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Difference {
    /// What it is for.
    pub what: String,
    /// What was estimated; zero if it was not.
    pub estimated: Money,
    /// What it costs now; zero if it is not needed.
    pub now: Money,
    /// What it costs more; below zero if less.
    pub more: Money,
    /// Why, in a sentence.
    pub because: String,
}

/// Line by line what changed since the estimate, the greatest change first. Lines without a price are left out: what is
/// not known is no difference.
/// Without an estimate there is nothing to compare.
pub fn compare(estimate: &[EstimateLine], quote: &Quote) -> Vec<Difference> {
    if estimate.is_empty() {
        return vec![];
    }
    let stands_for = |key: &Charge| estimate.iter().any(|line| line.of.contains(key));
    let mut all: Vec<Difference> =
        estimate.iter().filter(|line| !line.of.is_empty()).map(|line| estimated(line, quote)).collect();
    let added = quote.lines.iter().filter(|line| !stands_for(&line.of));
    all.extend(added.filter_map(|line| Some((line, line.net?))).map(|(line, now)| Difference {
        what: line.what.clone(),
        estimated: Money::default(),
        now,
        more: now,
        because: format!("Added: {}", line.because),
    }));
    all.retain(|difference| difference.more != Money::default());
    all.sort_by_key(|difference| std::cmp::Reverse(difference.more.minor().abs()));
    all
}

fn estimated(line: &EstimateLine, quote: &Quote) -> Difference {
    let now: Vec<&QuoteLine> = quote.lines.iter().filter(|quoted| line.of.contains(&quoted.of)).collect();
    let sum: Money = now.iter().filter_map(|quoted| quoted.net).sum();
    let because = match now.first() {
        None => "It is not needed.".to_owned(),
        Some(_) if now.iter().any(|quoted| quoted.net.is_none()) => "It has no price yet.".to_owned(),
        Some(quoted) => quoted.because.clone(),
    };
    let unknown = now.iter().any(|quoted| quoted.net.is_none());
    let more = if unknown { Money::default() } else { sum - line.net };
    Difference { what: line.what.clone(), estimated: line.net, now: sum, more, because }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::PartKind;
    use crate::money::{PriceKey, PriceList};
    use crate::words::Terms;
    use crate::work::Work;

    fn key(kind: PartKind) -> Charge {
        Charge::Work(PriceKey { kind, work: Work::Replace })
    }

    fn line(kind: PartKind, net: Option<i64>, because: &str) -> QuoteLine {
        QuoteLine {
            of: key(kind),
            what: kind.row().name.said(Terms::default()).into(),
            parts: vec![],
            quantity: 1,
            each: net.map(Money::from_minor),
            net: net.map(Money::from_minor),
            because: because.into(),
            state: None,
        }
    }

    #[test]
    fn added_dearer_and_not_needed() {
        let quote = Quote::of(
            vec![
                line(PartKind::MainShell, Some(12_000), "Renewed."),
                line(PartKind::Piston, Some(40_000), "Scuffing on 2 and 5."),
                line(PartKind::OilPump, None, "Scored."),
            ],
            &PriceList::default(),
        );
        let estimate = |kind: PartKind, net| EstimateLine {
            what: kind.row().name.said(Terms::default()).into(),
            of: vec![key(kind)],
            net: Money::from_minor(net),
        };
        let estimate = [
            estimate(PartKind::MainShell, 10_000),
            estimate(PartKind::Camshaft, 30_000),
            estimate(PartKind::OilPump, 9_000),
        ];
        let told: Vec<(String, i64, String)> =
            compare(&estimate, &quote).into_iter().map(|d| (d.what, d.more.minor(), d.because)).collect();
        let expected = [
            ("piston", 40_000, "Added: Scuffing on 2 and 5."),
            ("camshaft", -30_000, "It is not needed."),
            ("main bearing shell", 2_000, "Renewed."),
        ];
        assert_eq!(told, expected.map(|(what, more, because)| (what.to_owned(), more, because.to_owned())));
    }
}
