//! What it costs, how that differs from the first estimate, and what the customer has said.

use super::Block;
use crate::assess::Assessment;
use crate::job::{Consent, CustomerAnswer};
use crate::money::{Money, Quote, QuoteLine};
use crate::words::capitalised;

/// The blocks about money; none before the shop has entered a price.
pub(super) fn costs(assessment: &Assessment, blocks: &mut Vec<Block>) {
    let quote = &assessment.quote;
    if quote.lines.iter().all(|line| line.each.is_none()) {
        return;
    }
    blocks.push(heading("What it costs"));
    if assessment.approval.shown.as_ref() == Some(quote) {
        blocks.push(Block::Paragraph("The lines stand in the proposal at the end.".into()));
    } else {
        blocks.push(table_of(quote, None));
    }
    blocks.push(totals(quote));
    for ways in &assessment.ways {
        blocks.push(Block::Paragraph(format!("{} can be put right in more than one way:", ways.what)));
        let line = |way: &crate::cost::Way| {
            let net = way.net.map_or_else(|| "no price yet".into(), |net| quote.currency.show(net));
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
        blocks.push(Block::Points(points));
    }
    differences(assessment, blocks);
}

fn heading(text: &str) -> Block {
    Block::Heading { level: 1, text: text.into() }
}

fn table_of(quote: &Quote, answer: Option<&CustomerAnswer>) -> Block {
    let show = |money: Option<Money>| money.map_or_else(|| "no price yet".into(), |money| quote.currency.show(money));
    let answered = |line: &QuoteLine| {
        let answer = answer.and_then(|answer| answer.lines.iter().find(|own| own.of == line.of));
        answer.map_or("", |answer| match answer.answer {
            Consent::Yes => "yes",
            Consent::No => "no",
            Consent::Later => "later",
        })
    };
    let mut head = vec!["What".to_owned(), "Why".into(), "Without tax".into()];
    let mut widths = vec![6, 10, 4];
    if answer.is_some() {
        head.push("Answer".into());
        widths.push(2);
    }
    let row = |line: &QuoteLine| {
        let mut cells = vec![line.what.clone(), line.because.clone(), show(line.net)];
        if answer.is_some() {
            cells.push(answered(line).into());
        }
        cells
    };
    Block::Table {
        summary: "What is proposed, why, and what it costs without tax.".into(),
        head,
        widths,
        rows: quote.lines.iter().map(row).collect(),
    }
}

fn totals(quote: &Quote) -> Block {
    let show = |money| quote.currency.show(money);
    let mut facts = vec![
        ("Without tax".to_owned(), show(quote.net)),
        (format!("Tax, {}", quote.tax_rate), show(quote.tax)),
        ("Together".to_owned(), show(quote.gross)),
    ];
    if quote.without_price > 0 {
        facts.push(("Not yet in it".into(), format!("{} lines have no price yet.", quote.without_price)));
    }
    Block::Facts(facts)
}

fn differences(assessment: &Assessment, blocks: &mut Vec<Block>) {
    if assessment.differences.is_empty() {
        return;
    }
    let currency = assessment.quote.currency;
    blocks.push(heading("What changed since the first estimate"));
    let row = |difference: &crate::money::Difference| {
        vec![
            difference.what.clone(),
            currency.show(difference.estimated),
            currency.show(difference.now),
            currency.show(difference.more),
            difference.because.clone(),
        ]
    };
    blocks.push(Block::Table {
        summary: "Line by line what the first estimate said, what it is now, and why.".into(),
        head: ["What", "Estimated", "Now", "Difference", "Why"].map(str::to_owned).to_vec(),
        widths: vec![5, 3, 3, 3, 9],
        rows: assessment.differences.iter().map(row).collect(),
    });
}

/// What the customer has said to the last proposal, with the signature.
pub(super) fn approval(assessment: &Assessment, blocks: &mut Vec<Block>) {
    let approval = &assessment.approval;
    let sign = Block::Signature { name: String::new(), strokes: vec![] };
    let Some(shown) = &approval.shown else {
        if assessment.quote.lines.iter().any(|line| line.net.is_some()) {
            blocks.push(heading("Your answer"));
            blocks
                .push(Block::Paragraph("Say yes, no or later to each line of “What it costs”, and sign here.".into()));
            blocks.push(sign);
        }
        return;
    };
    blocks.push(heading(&format!("Proposal {} and the answer to it", approval.version)));
    let Some(answer) = &approval.answer else {
        blocks.push(table_of(shown, None));
        blocks.push(totals(shown));
        blocks.push(Block::Paragraph("The customer has not answered yet.".into()));
        blocks.push(sign);
        return;
    };
    blocks.push(table_of(shown, Some(answer)));
    blocks.push(totals(shown));
    let way = if answer.way.trim().is_empty() { String::new() } else { format!(", {}", answer.way.trim()) };
    blocks.push(Block::Signature { name: format!("{}{way}", answer.name.trim()), strokes: answer.signature.clone() });
    if !approval.since.is_empty() {
        blocks.push(Block::Paragraph("Since then this has changed, and is not yet agreed:".into()));
        let line = |since: &crate::job::Since| format!("{}: {}", since.what, since.because);
        blocks.push(Block::Points(approval.since.iter().map(line).collect()));
    }
}
