//! The rebuild beside another engine: what each costs, and whether the rebuild costs more.

use serde::Serialize;

use crate::job::Job;
use crate::money::{Money, OtherEngine, PartState, PriceKey, Quote};
use crate::view::PartView;

/// Another engine beside the rebuild.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct EngineBeside {
    /// Which, in the shop's words.
    pub what: String,
    /// New or not.
    pub state: PartState,
    /// What it costs without tax.
    pub net: Money,
    /// The same with tax.
    pub gross: Money,
    /// What the rebuild costs more, with tax; below zero where it costs less.
    pub more: Money,
    /// The difference in a sentence.
    pub words: String,
}

/// What another engine would cost.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct OtherEngines {
    /// The engines, the cheapest first.
    pub engines: Vec<EngineBeside>,
    /// Where the rebuild costs more than one of them, that it does, in a sentence; else empty.
    pub verdict: String,
    /// Where the shop should enter what one costs, why, in a sentence; else empty. For no paper.
    pub ask: String,
}

/// Sets the rebuild beside the engines that were entered. A rebuild of which some lines lack a price costs at least what is
/// priced.
pub fn other_engines(job: &Job, parts: &[PartView], quote: &Quote) -> OtherEngines {
    let mut engines: Vec<EngineBeside> = job.other_engines.iter().map(|engine| beside(engine, job, quote)).collect();
    engines.sort_by_key(|engine| engine.gross);
    let verdict = engines.first().filter(|engine| engine.more > Money::default()).map(|engine| {
        let more = quote.currency.show(engine.more);
        format!("The rebuild costs {}{more} more than another engine: {}.", at_least(quote), engine.what)
    });
    OtherEngines { ask: ask(job, parts), verdict: verdict.unwrap_or_default(), engines }
}

fn beside(engine: &OtherEngine, job: &Job, quote: &Quote) -> EngineBeside {
    let gross = engine.net + job.prices.tax.on(&[engine.net]);
    let more = quote.gross - gross;
    let is_whole = quote.without_price == 0;
    let show = |money| quote.currency.show(money);
    let words = match more.cmp(&Money::default()) {
        _ if quote.lines.iter().all(|line| line.net.is_none()) => "The rebuild has no price yet.".into(),
        std::cmp::Ordering::Greater => format!("The rebuild costs {}{} more.", at_least(quote), show(more)),
        std::cmp::Ordering::Equal => format!("The rebuild costs {}as much.", at_least(quote)),
        std::cmp::Ordering::Less if is_whole => {
            format!("The rebuild costs {} less.", show(Money::default() - more))
        }
        std::cmp::Ordering::Less => {
            format!("The rebuild costs {} less, without the lines that have no price.", show(Money::default() - more))
        }
    };
    EngineBeside { what: engine.what.clone(), state: engine.state, net: engine.net, gross, more, words }
}

fn at_least(quote: &Quote) -> &'static str {
    if quote.without_price > 0 { "at least " } else { "" }
}

/// A crankshaft or a block may cost more than the engine is worth.
fn ask(job: &Job, parts: &[PartView]) -> String {
    let is_dear = |view: &&PartView| {
        let of = view.decision.work().map(|work| PriceKey { kind: view.kind, work });
        of.is_some_and(PriceKey::may_outweigh_engine)
    };
    match parts.iter().find(is_dear) {
        Some(view) if job.other_engines.is_empty() => {
            format!("{} to be renewed: find out what another engine costs, and enter it.", view.label)
        }
        _ => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::{Arrangement, PartKind};
    use crate::job::testing::job_of;
    use crate::money::{PriceList, QuoteLine, Tax};
    use crate::work::Work;
    use serde_json::{Value, json};

    /// A rebuild of these lines with 19 % of tax, beside two engines of 1 000.00 and 700.00: 1 190.00 and 833.00 with it.
    fn beside_rebuild(nets: &[Option<i64>]) -> OtherEngines {
        let currency = "EUR".to_owned().try_into().unwrap();
        let prices = PriceList { currency, tax: Tax { rate: 1_900, ..Tax::default() }, ..PriceList::default() };
        let line = |net: &Option<i64>| QuoteLine {
            of: PriceKey { kind: PartKind::Block, work: Work::Replace }.into(),
            what: "Block: replace".into(),
            parts: vec![],
            quantity: 1,
            each: net.map(Money::from_minor),
            net: net.map(Money::from_minor),
            because: String::new(),
            state: None,
        };
        let quote = Quote::of(nets.iter().map(line).collect(), &prices);
        let engine = |what: &str, state, net| OtherEngine { what: what.into(), state, net: Money::from_minor(net) };
        let engines =
            vec![engine("Short engine", PartState::New, 100_000), engine("From stock", PartState::Used, 70_000)];
        other_engines(&Job { prices, other_engines: engines, ..Job::default() }, &[], &quote)
    }

    /// What is said of each, the cheapest first, and of all. Own arithmetic.
    #[track_caller]
    fn check(nets: &[Option<i64>], cheaper: &str, dearer: &str, verdict: &str) {
        let came = beside_rebuild(nets);
        let told = came.engines.iter().map(|engine| engine.words.as_str()).chain([came.verdict.as_str()]);
        let told: Vec<String> = told.map(|text| text.replace(['\u{a0}', '\u{202f}'], " ")).collect();
        assert_eq!(told, [cheaper, dearer, verdict]);
    }

    #[test]
    fn each_engine_stands_beside_the_rebuild() {
        check(
            &[Some(90_000)],
            "The rebuild costs 238.00 EUR more.",
            "The rebuild costs 119.00 EUR less.",
            "The rebuild costs 238.00 EUR more than another engine: From stock.",
        );
        check(&[Some(70_000)], "The rebuild costs as much.", "The rebuild costs 357.00 EUR less.", "");
    }

    #[test]
    fn a_rebuild_without_all_prices_costs_at_least_so_much() {
        check(
            &[Some(90_000), None],
            "The rebuild costs at least 238.00 EUR more.",
            "The rebuild costs 119.00 EUR less, without the lines that have no price.",
            "The rebuild costs at least 238.00 EUR more than another engine: From stock.",
        );
        check(&[None], "The rebuild has no price yet.", "The rebuild has no price yet.", "");
    }

    #[test]
    fn a_lost_block_asks_for_another_engine_until_one_is_entered() {
        let ask = |changes: &[Value]| {
            let arranged = json!({ "do": "arrange", "arrangement": Arrangement::inline(4) });
            assess(&job_of(&[&[arranged], changes].concat())).other_engines.ask
        };
        let lost = json!({ "do": "tag", "part": "block", "tag": "cracks", "grade": 4 });
        let engine = json!({ "what": "Short engine", "state": "exchange", "net": 100_000 });
        let noted = json!({ "do": "note-other-engines", "engines": [engine] });
        assert_eq!(ask(&[]), "");
        let asks = "Cylinder block to be renewed: find out what another engine costs, and enter it.";
        assert_eq!(ask(std::slice::from_ref(&lost)), asks);
        assert_eq!(ask(&[lost, noted]), "");
    }
}
