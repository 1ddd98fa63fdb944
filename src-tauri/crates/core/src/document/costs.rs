//! What it costs, how that differs from the first estimate, and what the customer has said.

use super::chapter::chapter;
use super::paper::Block;
use crate::assess::Assessment;
use crate::cost::Way;
use crate::job::{CustomerAnswer, Since};
use crate::money::{Difference, Money, Quote, QuoteLine};
use crate::words::capitalised;

/// The chapters about money; none before the shop has entered a price.
pub(super) fn costs(assessment: &Assessment) -> Vec<Block> {
    let quote = &assessment.quote;
    if quote.lines.iter().all(|line| line.each.is_none()) {
        return vec![];
    }
    let lines = if assessment.approval.shown.as_ref() == Some(quote) {
        Block::Paragraph("The lines stand in the proposal at the end.".into())
    } else {
        lines(quote)
    };
    let mut blocks = chapter("What it costs", [lines, totals(quote)]);
    blocks.extend(ways(assessment));
    blocks.extend(differences(assessment));
    blocks
}

/// Where more than one way serves: what each costs, and which is proposed.
fn ways(assessment: &Assessment) -> impl Iterator<Item = Block> {
    let currency = assessment.quote.currency;
    assessment.ways.iter().flat_map(move |ways| {
        let line = |way: &Way| {
            let net = way.net.map_or_else(|| NO_PRICE.into(), |net| currency.show(net));
            let words =
                if way.work == ways.followed { format!("{} (proposed here)", way.words) } else { way.words.clone() };
            format!("{}: {}", capitalised(&words), if way.ruled_out.is_empty() { &net } else { &way.ruled_out })
        };
        let mut points: Vec<String> = ways.ways.iter().map(line).collect();
        if let Some(first) = points.first_mut() {
            first.push_str(&format!(". Recommended: {}", ways.because));
        }
        if let Some(reason) = &ways.chosen_because {
            points.push(format!("Chosen: {}. {reason}", ways.kind.way_words(ways.followed)));
        }
        [Block::Paragraph(format!("{} can be put right in more than one way:", ways.what)), Block::Points(points)]
    })
}

const NO_PRICE: &str = "no price yet";
const LINES: &str = "What is proposed, why, and what it costs without tax.";
const WHAT: (&str, u8) = ("What", 6);
const WHY: (&str, u8) = ("Why", 10);
const NET: (&str, u8) = ("Without tax", 4);

fn cells(quote: &Quote, line: &QuoteLine) -> [String; 3] {
    let net = line.net.map_or_else(|| NO_PRICE.into(), |net| quote.currency.show(net));
    [line.what.clone(), line.because.clone(), net]
}

fn lines(quote: &Quote) -> Block {
    Block::table(LINES, [WHAT, WHY, NET], quote.lines.iter().map(|line| cells(quote, line)))
}

fn answered(quote: &Quote, answer: &CustomerAnswer) -> Block {
    let said = |line: &QuoteLine| {
        let own = answer.lines.iter().find(|own| own.of == line.of);
        own.map_or("", |own| own.answer.words())
    };
    let row = |line: &QuoteLine| {
        let [what, why, net] = cells(quote, line);
        [what, why, net, said(line).to_owned()]
    };
    Block::table(LINES, [WHAT, WHY, NET, ("Answer", 2)], quote.lines.iter().map(row))
}

fn totals(quote: &Quote) -> Block {
    let show = |money| quote.currency.show(money);
    let mut facts = vec![
        ("Without tax".to_owned(), show(quote.net)),
        (format!("Tax, {}", quote.tax_rate), show(quote.tax)),
        (if quote.without_price > 0 { "Total, at least" } else { "Total" }.to_owned(), show(quote.gross)),
    ];
    if quote.without_price > 0 {
        let open: Vec<&str> =
            quote.lines.iter().filter(|line| line.net.is_none()).map(|line| line.what.as_str()).collect();
        facts.push(("Not yet in it".into(), format!("{}.", open.join("; "))));
    }
    Block::Facts(facts)
}

fn differences(assessment: &Assessment) -> Vec<Block> {
    let show = |money: Money| assessment.quote.currency.show(money);
    let row = |difference: &Difference| {
        [
            difference.what.clone(),
            show(difference.estimated),
            show(difference.now),
            show(difference.more),
            difference.because.clone(),
        ]
    };
    let table = (!assessment.differences.is_empty()).then(|| {
        Block::table(
            "Line by line what the first estimate said, what it is now, and why.",
            [("What", 5), ("Estimated", 3), ("Now", 3), ("Difference", 3), ("Why", 9)],
            assessment.differences.iter().map(row),
        )
    });
    chapter("What changed since the first estimate", table)
}

/// What the customer has said to the last proposal, with the signature; before there is one, where to sign.
pub(super) fn approval(assessment: &Assessment) -> Vec<Block> {
    let approval = &assessment.approval;
    let sign = Block::Signature { name: String::new(), strokes: vec![] };
    let Some(shown) = &approval.shown else {
        let ask = "Say yes, no or later to each line of “What it costs”, and sign here.";
        let is_priced = assessment.quote.lines.iter().any(|line| line.net.is_some());
        let body = is_priced.then(|| [Block::Paragraph(ask.into()), sign]);
        return chapter("Your answer", body.into_iter().flatten());
    };
    let heading = format!("Proposal {} and the answer to it", approval.version);
    let Some(answer) = &approval.answer else {
        let open = Block::Paragraph("The customer has not answered yet.".into());
        return chapter(&heading, [lines(shown), totals(shown), open, sign]);
    };
    let way = if answer.way.trim().is_empty() { String::new() } else { format!(", {}", answer.way.trim()) };
    let name = format!("{}{way}", answer.name.trim());
    let mut body =
        vec![answered(shown, answer), totals(shown), Block::Signature { name, strokes: answer.signature.clone() }];
    if !approval.since.is_empty() {
        let line = |since: &Since| format!("{}: {}", since.what, since.because);
        body.push(Block::Paragraph("Since then this has changed, and is not yet agreed:".into()));
        body.push(Block::Points(approval.since.iter().map(line).collect()));
    }
    chapter(&heading, body)
}
