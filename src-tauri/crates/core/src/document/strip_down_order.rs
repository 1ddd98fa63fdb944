//! Before anything is opened: what opening costs, what is destroyed by it, and what becomes of the engine if the customer then
//! refuses the work. Half a page, to be signed.
//!
//! What it says follows 16 CCR 3353(c); that old parts are asked for with the consent, 16 CCR 3355.

use super::desk::Desk;
use super::head::{customers_paper, filled};
use super::paper::{Block, Paper};
use crate::job::{OrderedStripDown, TextField};
use crate::money::{Allowance, Currency, EstimateRules, Money, StripDownLine, StripDownOrder};

/// The order that was made; before that, as it would be made now.
pub fn strip_down_order(desk: &Desk<'_>) -> Paper {
    let ordered = desk.job.strip_down();
    let offered = desk.job.strip_down_to_order();
    let order = ordered.map_or(&offered, |ordered| &ordered.order);
    let mut blocks = vec![facts(desk, ordered, order), Block::Lead(LEAD.into()), prices(order)];
    blocks.push(Block::Points(points(order, desk.job.prices.estimate_rules)));
    blocks.extend(answered(ordered));
    customers_paper(desk, TITLE, blocks)
}

const TITLE: &str = "Before the engine is opened";
const LEAD: &str = "To say what is wrong, the engine has to be taken apart. Please agree to that first.";

/// Whose engine, what came with it, when it was ordered.
fn facts(desk: &Desk<'_>, ordered: Option<&OrderedStripDown>, order: &StripDownOrder) -> Block {
    let mut facts = filled(desk.job, &[TextField::Customer, TextField::Machine, TextField::EngineNumber]);
    let shop: Vec<String> = desk.shop.lines().collect();
    let made = ordered.and_then(|ordered| ordered.made).map(|day| day.in_words());
    let estimate = order.estimate.map(|gross| format!("{} with tax", order.currency.show(gross)));
    let further = [
        ("From", Some(shop.join(", ")).filter(|shop| !shop.is_empty())),
        ("Came with it", Some(order.received.join("; ")).filter(|all| !all.is_empty())),
        ("First estimate of the work", estimate),
        ("Made on", made),
    ];
    facts.extend(further.into_iter().filter_map(|(name, value)| Some((name.to_owned(), value?))));
    Block::Facts(facts)
}

fn prices(order: &StripDownOrder) -> Block {
    let summary = "What opening the engine costs, and what you pay in all if you refuse the work afterwards.";
    table(summary, order.currency, &order.tax.words(), order.lines())
}

/// Amounts with their tax, the currency once.
pub(super) fn table(summary: &str, currency: Currency, tax_rate: &str, lines: Vec<StripDownLine>) -> Block {
    let net = format!("Without tax, {}", currency.code());
    let tax = format!("Tax, {tax_rate}");
    let row = |line: StripDownLine| match line.sum {
        Some(sum) => {
            let [net, tax, gross] = [sum.net, sum.tax, sum.gross].map(|money| currency.figures(money));
            [line.what, net, tax, gross]
        }
        None => [line.what, NO_PRICE.into(), String::new(), String::new()],
    };
    Block::table(summary, [("What", 8), (&net, 4), (&tax, 3), ("With tax", 4)], lines.into_iter().map(row))
}

const NO_PRICE: &str = "no price yet";

/// What the customer has to know beside the prices.
fn points(order: &StripDownOrder, rules: EstimateRules) -> Vec<String> {
    let destroyed = match order.terms.destroyed.trim().trim_end_matches('.') {
        "" => "Gaskets and seals are destroyed by opening. Which, we tell you before we begin.".into(),
        destroyed => format!("Destroyed by opening: {destroyed}."),
    };
    let days = match order.terms.most_days {
        Some(1) => "If you refuse the work, you have the engine back one day later at the most.".into(),
        Some(days) => format!("If you refuse the work, you have the engine back within {days} days at the most."),
        None => "How long it takes to give it back is not agreed yet.".to_owned(),
    };
    let old_parts = match order.old_parts {
        Some(true) => "You want the old parts back. Exchanged ones can only be shown to you.",
        Some(false) => "You do not want the old parts back.",
        None => "Say with your answer whether you want the old parts back.",
    };
    let law = rules.allowance.map(|allowance| asked_first(allowance, order.currency)).unwrap_or_default();
    let remark = order.remark.trim().to_owned();
    let all = [destroyed, AS_IT_WAS.into(), days, FREE_TO_REFUSE.into(), old_parts.into(), law, remark];
    all.into_iter().filter(|point| !point.is_empty()).collect()
}

const AS_IT_WAS: &str = "Worn or damaged parts may not let it go back together as it was.";
const FREE_TO_REFUSE: &str = "Nothing more is done before you have seen what was found and agreed to a price.";

/// From which excess the customer is asked first.
fn asked_first(allowance: Allowance, currency: Currency) -> String {
    let beyond = match (allowance.least, allowance.share) {
        (least, 0) if least == Money::default() => return "If it costs more than agreed, we ask you first.".into(),
        (least, 0) => currency.show(least),
        (least, share) if least == Money::default() => per_cent(share),
        (least, share) => format!("{} or {}, whichever is more,", currency.show(least), per_cent(share)),
    };
    let most = allowance.most.map(|most| format!(" This is never above {}.", currency.show(most)));
    format!("If it costs {beyond} more than agreed, we ask you first.{}", most.unwrap_or_default())
}

/// Hundredths of a per cent in words: "10 %", "2.5 %".
fn per_cent(share: u16) -> String {
    crate::money::Tax { rate: u32::from(share), ..crate::money::Tax::default() }.words()
}

/// Who answered what, or the line on which to sign.
fn answered(ordered: Option<&OrderedStripDown>) -> Vec<Block> {
    match ordered.and_then(|ordered| ordered.answer.as_ref()) {
        Some(answer) => {
            let said = if answer.agreed { "The customer agreed to it." } else { "The customer refused it." };
            let signed = Block::Signature { name: answer.said_by().words(), strokes: answer.signature.clone() };
            vec![Block::Paragraph(said.into()), signed]
        }
        None => vec![
            Block::Paragraph("I agree that the engine is opened on these terms. I can still refuse the work.".into()),
            Block::Signature { name: String::new(), strokes: vec![] },
        ],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::document::Reader;
    use crate::job::Job;
    use crate::job::testing::{job_of, then};
    use serde_json::{Value, json};

    fn priced(rules: &Value) -> Job {
        job_of(&[
            json!({ "do": "fill", "field": "customer", "text": "A. Harrow" }),
            json!({ "do": "fill", "field": "machine", "text": "Dredger winch" }),
            json!({ "do": "add-ancillary", "item": { "what": "Starter" } }),
            json!({ "do": "use-prices", "prices": { "currency": "EUR", "tax": { "rate": 1900 }, "estimate_rules": rules,
                "strip_down": { "strip_down": 140_000, "in_boxes": 3_000, "destroyed": "head gasket.", "most_days": 14 } } }),
        ])
    }

    fn paper(job: &Job) -> Paper {
        strip_down_order(&Desk::bare(job, &assess(job)))
    }

    fn text(paper: &Paper) -> String {
        format!("{paper:?}").replace("\\u{a0}", " ").replace("\\u{202f}", " ")
    }

    #[track_caller]
    fn says(paper: &Paper, all: &[&str]) {
        let text = text(paper);
        for words in all {
            assert!(text.contains(words), "“{words}” is missing: {text}");
        }
    }

    #[test]
    fn it_tells_what_opening_costs_and_what_a_refusal_costs() {
        let paper = paper(&priced(
            &json!({ "old_parts": true, "allowance": { "least": 1_000, "share": 1_000, "most": 5_000 } }),
        ));
        assert_eq!(paper.reader, Reader::Customer("A. Harrow".into()));
        says(&paper, &["Dredger winch", "Starter", "Destroyed by opening: head gasket.", "within 14 days"]);
        // 16 CCR 3353(c) asks for each of them; what has no price says so.
        says(&paper, &["Taking it apart and looking at it", "Putting it back together, if you refuse", "no price yet"]);
        says(&paper, &["If you refuse, returned in boxes: in all", "may not let it go back together as it was"]);
        // What the law of a place asks is said where the shop entered it (the figures are those of Fla. Stat. 559.909).
        says(
            &paper,
            &[
                "whether you want the old parts back",
                "10.00 EUR or 10 %, whichever is more, more than agreed",
                "never above 50.00 EUR",
            ],
        );
    }

    #[test]
    fn amounts_stand_in_columns_that_name_the_currency_once() {
        let paper = paper(&priced(&json!({})));
        let table = paper.blocks.iter().find_map(|block| match block {
            Block::Table { head, rows, .. } => Some((head.clone(), rows.clone())),
            _ => None,
        });
        let (head, rows) = table.unwrap();
        assert_eq!(head, ["What", "Without tax, EUR", "Tax, 19 %", "With tax"]);
        assert_eq!(rows[0][1..], ["1\u{202f}400.00", "266.00", "1\u{202f}666.00"]);
        assert!(rows.iter().flatten().all(|cell| !cell.contains("EUR")));
        assert!(!text(&paper).contains("we ask you first"), "no law is built in");
    }

    #[test]
    fn what_was_made_stands_and_who_answered() {
        let mut job = priced(&json!({}));
        let order = json!({ "do": "order-strip-down", "order": job.strip_down_to_order(), "made": "2026-05-03" });
        let order = then(&mut job, 5, &order);
        says(&paper(&job), &["3 May 2026", "I agree that the engine is opened"]);
        let answer = json!({ "order": order, "agreed": true, "name": "A. Harrow", "way": "by telephone",
            "afar": { "number": "0100 200", "date": "2026-05-03", "time": "14:20" } });
        then(&mut job, 6, &json!({ "do": "answer-strip-down", "answer": answer }));
        then(&mut job, 7, &json!({ "do": "use-prices", "prices": { "currency": "USD" } }));
        says(&paper(&job), &["Without tax, EUR", "The customer agreed to it.", "by telephone, 0100 200"]);
        assert!(!text(&paper(&job)).contains("I agree that"));
    }

    /// Federal Plain Language Guidelines, United States: “Write short sentences”; here none has more than 20 words.
    #[test]
    fn its_sentences_are_short() {
        let rules = json!({ "old_parts": true, "allowance": { "least": 1_000, "share": 1_000, "most": 5_000 } });
        for job in [priced(&rules), priced(&json!({ "allowance": {} })), Job::default()] {
            for block in paper(&job).blocks {
                let texts = match block {
                    Block::Lead(text) | Block::Paragraph(text) => vec![text],
                    Block::Points(points) => points,
                    _ => vec![],
                };
                for sentence in texts.iter().flat_map(|text| text.split_inclusive(". ")) {
                    assert!(sentence.split_whitespace().count() <= 20, "{sentence}");
                }
            }
        }
    }
}
