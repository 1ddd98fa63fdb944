//! Where two ways serve, both are priced side by side.

use serde::{Deserialize, Serialize};

use super::{Money, PriceKey, PriceList, Work};
use crate::assess::PartView;
use crate::decide::Outcome;
use crate::engine::PartKind;

/// One way.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Way {
    /// In words: "new camshaft".
    pub words: String,
    /// What it costs without tax.
    pub net: Money,
}

/// Ways that serve the same end.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Ways {
    /// To what end.
    pub what: String,
    /// The ways, the recommended first.
    pub ways: Vec<Way>,
    /// Why the first is recommended.
    pub because: String,
}

/// The pairs of ways that the shop has priced both of. Nothing is said where a price is missing.
pub fn ways(parts: &[PartView], prices: &PriceList) -> Vec<Ways> {
    [camshaft(parts, prices), bores(parts, prices)].into_iter().flatten().collect()
}

fn each(prices: &PriceList, kind: PartKind, work: Work) -> Option<Money> {
    prices.price(PriceKey { kind, work }).map(|price| prices.each(price))
}

fn count(parts: &[PartView], kind: PartKind, outcome: Outcome) -> i64 {
    let these = parts.iter().filter(|view| view.kind == kind && view.decision.outcome == outcome);
    i64::try_from(these.count()).unwrap_or(i64::MAX)
}

/// A worn camshaft: new, or welded up and reground. Flat tappets are renewed either way.
fn camshaft(parts: &[PartView], prices: &PriceList) -> Option<Ways> {
    let worn = count(parts, PartKind::Camshaft, Outcome::Replace) + count(parts, PartKind::Camshaft, Outcome::Machine);
    if worn == 0 {
        return None;
    }
    let new = each(prices, PartKind::Camshaft, Work::Replace)?.times(worn);
    let welded = each(prices, PartKind::Camshaft, Work::WeldUp)?.times(worn);
    Some(cheaper(
        "The worn camshaft",
        Way { words: "a new camshaft".into(), net: new },
        Way { words: "weld up and regrind the old one".into(), net: welded },
        "A new one keeps its hardness and its warranty, so it is taken unless the old one is clearly cheaper.",
    ))
}

/// Worn bores: all bored to the next size with new pistons, or the worn ones sleeved.
fn bores(parts: &[PartView], prices: &PriceList) -> Option<Ways> {
    let all = count(parts, PartKind::Bore, Outcome::Machine);
    let faulty = parts.iter().filter(|view| view.kind == PartKind::Bore && (view.worst.is_some() || outside(view)));
    let faulty = i64::try_from(faulty.count()).ok().filter(|faulty| *faulty > 0)?;
    if all == 0 {
        return None;
    }
    let bored = each(prices, PartKind::Bore, Work::Machine)?.times(all)
        + each(prices, PartKind::Piston, Work::Replace)?.times(all);
    let sleeved = each(prices, PartKind::Bore, Work::Sleeve)?.times(faulty);
    Some(cheaper(
        "The worn bores",
        Way { words: "bore all to the next size, with new pistons".into(), net: bored },
        Way { words: format!("sleeve {faulty} and keep the pistons that are sound"), net: sleeved },
        "Boring all makes every cylinder alike, so it is taken unless sleeves are clearly cheaper.",
    ))
}

fn outside(view: &PartView) -> bool {
    view.figures.iter().any(|figure| figure.verdict == Some(crate::measure::Verdict::Outside))
}

/// The second way must save a fifth to be recommended (our judgement: it is the riskier one).
fn cheaper(what: &str, first: Way, second: Way, because: &str) -> Ways {
    let clearly = second.net.times(5) < first.net.times(4);
    let reason = if clearly { "It costs less by more than a fifth.".to_owned() } else { because.to_owned() };
    let ways = if clearly { vec![second, first] } else { vec![first, second] };
    Ways { what: what.into(), ways, because: reason }
}
