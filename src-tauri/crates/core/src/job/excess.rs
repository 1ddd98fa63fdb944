//! Whether the work of now costs more than the customer agreed to, where the law of the place asks for their word first.

use serde::Serialize;

use super::known::Job;
use super::{Consent, CustomerAnswer, Proposed};
use crate::money::{Money, Quote, QuoteLine, Tax};

/// The work of now costs more than the customer agreed to, and more than may be added without asking.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Excess {
    /// What the customer agreed to, with tax.
    pub agreed: Money,
    /// What the work costs now, with tax; lines to which the customer said no or later are not in it.
    pub now: Money,
    /// What may be added without asking.
    pub allowed: Money,
    /// In sentences, with what to do.
    pub words: String,
}

impl Job {
    /// Whether the customer must be asked before the work goes on; none where they need not be, where the shop's rules ask
    /// for nothing, and before an answer.
    pub fn excess(&self, quote: &Quote) -> Option<Excess> {
        let rules = self.prices.estimate_rules;
        let (_, proposed @ Proposed { quote: shown, answer, .. }) = self.last_answered()?;
        let answer = answer.as_ref()?;
        let agreed = proposed.agreed(self.prices.tax).map(|agreed| agreed.net + agreed.tax)?;
        let (now, is_whole) = wanted(quote, shown, answer, self.prices.tax);
        if !rules.must_ask(agreed, now) {
            return None;
        }
        let allowed = rules.allowance.unwrap_or_default().on(agreed);
        let show = |money| quote.currency.show(money);
        let at_least = if is_whole { "" } else { "at least " };
        let may = match allowed == Money::default() {
            true => String::new(),
            false => format!(", and {} more may be added without asking", show(allowed)),
        };
        let words = format!(
            "The work now costs {at_least}{} with tax. The customer agreed to {}{may}: ask the customer before going on.",
            show(now),
            show(agreed)
        );
        Some(Excess { agreed, now, allowed, words })
    }
}

/// What the customer said yes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct AgreedTo {
    /// Without tax.
    pub(crate) net: Money,
    /// The tax on it.
    pub(crate) tax: Money,
}

impl Proposed {
    /// The lines of the jobs answered yes, with tax as it was shown; none before there was an answer. Where the rate of
    /// now does not give the tax that was shown, they have their share of it.
    pub(crate) fn agreed(&self, tax: Tax) -> Option<AgreedTo> {
        let shown = &self.quote;
        let answer = self.answer.as_ref()?;
        let nets = |yes: bool| -> Vec<Money> {
            let lines = shown.lines.iter().filter(|line| !yes || answer.to(shown, &line.of) == Some(Consent::Yes));
            lines.filter_map(|line| line.net).collect()
        };
        let (agreed, all) = (nets(true), nets(false));
        let net: Money = agreed.iter().copied().sum();
        let is_todays = tax.on(&all) == shown.tax;
        let tax = if is_todays { tax.on(&agreed) } else { shown.tax.share(net.minor(), shown.net.minor()) };
        Some(AgreedTo { net, tax })
    }
}

/// What the work costs now with tax, without the lines that the customer declined or put off; and whether all of it has a
/// price.
fn wanted(quote: &Quote, shown: &Quote, answer: &CustomerAnswer, tax: Tax) -> (Money, bool) {
    let is_wanted = |line: &&QuoteLine| matches!(answer.to(shown, &line.of), None | Some(Consent::Yes));
    let nets: Vec<Option<Money>> = quote.lines.iter().filter(is_wanted).map(|line| line.net).collect();
    let priced: Vec<Money> = nets.iter().flatten().copied().collect();
    (priced.iter().copied().sum::<Money>() + tax.on(&priced), priced.len() == nets.len())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::{Assessment, assess};
    use crate::engine::PartKind;
    use crate::job::testing::{arranged, then};
    use crate::money::{PriceKey, ProposedJob};
    use crate::work::Work;
    use serde_json::{Value, json};

    /// An engine with one line of 300.00 and one of 40.00 that the customer may decline; a find of 50.00 comes afterwards.
    fn worked(rules: &Value, tax: u32, plugs: &str, late: bool) -> Assessment {
        let mut job = arranged(crate::engine::Arrangement::inline(1));
        let price = |kind: &str, part: i64| json!({ "of": { "kind": kind, "work": "replace" }, "part": part });
        let prices = json!({
            "currency": "USD", "tax": { "rate": tax }, "estimate_rules": rules,
            "prices": [price("rings", 30_000), price("core-plugs", 4_000), price("oil-pump", 5_000)],
        });
        let n = std::cell::Cell::new(0);
        let does = |job: &mut Job, change: Value| {
            n.set(n.get() + 1);
            then(job, n.get(), &change)
        };
        does(&mut job, json!({ "do": "use-prices", "prices": prices }));
        let quote = assess(&job).quote;
        let plugs_of = PriceKey { kind: PartKind::CorePlugs, work: Work::Replace };
        let answer = |asked: &ProposedJob| {
            let is_of_plugs = asked.lines.iter().any(|line| *line == plugs_of);
            json!({ "of": asked.of, "answer": if is_of_plugs { plugs } else { "yes" } })
        };
        let jobs: Vec<Value> = quote.jobs.iter().map(answer).collect();
        let proposal = does(&mut job, json!({ "do": "propose", "quote": quote }));
        does(
            &mut job,
            json!({ "do": "answer-proposal", "answer": { "proposal": proposal, "jobs": jobs, "name": "A" } }),
        );
        if late {
            does(&mut job, json!({ "do": "tag", "part": "oil-pump", "tag": "scoring", "grade": 4 }));
        }
        assess(&job)
    }

    /// What was agreed to, what it costs now, what may be added: none where the customer need not be asked.
    #[track_caller]
    fn check(came: &Assessment, expected: Option<(i64, i64, i64)>) {
        let told = came.excess.as_ref().map(|own| (own.agreed.minor(), own.now.minor(), own.allowed.minor()));
        assert_eq!(told, expected);
        let is_open = came.still_open.iter().any(|open| open.words.contains("ask the customer before going on"));
        assert_eq!(is_open, expected.is_some(), "what must be asked is still open");
    }

    // Own arithmetic.
    #[test]
    fn a_late_find_is_asked_about_where_the_law_asks() {
        let any = json!({ "allowance": {} });
        check(&worked(&json!({}), 0, "yes", true), None);
        check(&worked(&any, 0, "yes", false), None);
        check(&worked(&any, 0, "yes", true), Some((34_000, 39_000, 0)));
        check(&worked(&json!({ "allowance": { "share": 2_000 } }), 0, "yes", true), None);
    }

    #[test]
    fn what_was_declined_is_in_neither_sum() {
        let any = json!({ "allowance": {} });
        check(&worked(&any, 825, "no", false), None);
        check(&worked(&any, 0, "later", true), Some((30_000, 35_000, 0)));
        // 300.00 and 8.25 %; with 50.00 more 350.00 and 28.875, which is 28.88.
        check(&worked(&any, 825, "no", true), Some((32_475, 37_888, 0)));
    }

    #[test]
    fn it_says_what_was_agreed_and_what_to_do() {
        let words = worked(&json!({ "allowance": { "least": 1_000 } }), 0, "yes", true).excess.unwrap().words;
        let plain = words.replace('\u{a0}', " ");
        assert!(
            plain.contains("390.00 USD with tax. The customer agreed to 340.00 USD, and 10.00 USD more"),
            "{plain}"
        );
        assert!(plain.contains("costs at least"), "shells have no price: {plain}");
    }
}
