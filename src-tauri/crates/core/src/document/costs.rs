//! What it costs, how that differs from the first estimate, and what the customer has said.

use super::chapter::chapter;
use super::paper::Block;
use crate::assess::Assessment;
use crate::cost::{EngineBeside, OtherEngines, Way, unpriced};
use crate::job::Consent;
use crate::money::{Difference, Money, ProposedJob, Quote, QuoteLine};
use crate::words::capitalised;

/// The chapters about money behind the bill; none before the shop has entered a price.
pub(super) fn costs(assessment: &Assessment) -> Vec<Block> {
    let quote = &assessment.quote;
    if quote.lines.iter().all(|line| line.each.is_none()) {
        return vec![];
    }
    let mut blocks = chapter("Ways and prices", ways(assessment));
    blocks.extend(other_engines(assessment));
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

/// The rebuild beside another engine.
fn other_engines(assessment: &Assessment) -> Vec<Block> {
    let OtherEngines { engines, verdict, .. } = &assessment.other_engines;
    let quote = &assessment.quote;
    let show = |money| quote.currency.figures(money);
    let with_tax = format!("With tax, {}", quote.currency.code());
    let rebuild = [
        if quote.without_price > 0 { "The rebuild, at least" } else { "The rebuild" }.to_owned(),
        show(quote.net),
        show(quote.gross),
        String::new(),
    ];
    let other = |engine: &EngineBeside| {
        let what = format!("{} ({})", engine.what, engine.state.words());
        [what, show(engine.net), show(engine.gross), engine.words.clone()]
    };
    let table = (!engines.is_empty()).then(|| {
        Block::table(
            "What the rebuild costs, and what another engine would.",
            [("What", 6), NET, (with_tax.as_str(), 4), ("Difference", 6)],
            std::iter::once(rebuild).chain(engines.iter().map(other)),
        )
    });
    let verdict = (!verdict.is_empty()).then(|| Block::Paragraph(verdict.clone()));
    chapter("Beside another engine", verdict.into_iter().chain(table))
}

const NO_PRICE: &str = "no price yet";
const LINES: &str = "What is proposed, why, and what it costs without tax.";
const NUMBER: (&str, u8) = ("Job", 1);
const WHAT: (&str, u8) = ("What", 6);
const WHY: (&str, u8) = ("Why", 10);
const NET: (&str, u8) = ("Without tax", 4);

fn cells(quote: &Quote, line: &QuoteLine) -> [String; 3] {
    let net = line.net.map_or_else(|| NO_PRICE.into(), |net| quote.currency.show(net));
    [line.what.clone(), line.because.clone(), net]
}

/// What each job of the proposal holds, or would; nothing before there are prices.
pub(super) fn held_by_jobs(assessment: &Assessment) -> Vec<Block> {
    let quote = assessment.approval.shown.as_ref().unwrap_or(&assessment.quote);
    let is_priced = quote.lines.iter().any(|line| line.net.is_some());
    if quote.jobs.is_empty() || !is_priced {
        return vec![];
    }
    let shown = |line: &QuoteLine| {
        let net = line.net.map_or_else(|| NO_PRICE.into(), |net| quote.currency.figures(net));
        format!("{}\u{a0}{net}", line.what)
    };
    let row = |job: &ProposedJob| {
        let lines: Vec<String> = quote.lines_of(job).map(shown).collect();
        [job.number.to_string(), lines.join("; "), quote.currency.figures(job.net)]
    };
    let without_tax = format!("{}, without tax", quote.currency.code());
    let table = Block::table(
        "What each job holds, and what each line and the job cost without tax.",
        [NUMBER, ("What it holds", 15), (without_tax.as_str(), 4)],
        quote.jobs.iter().map(row),
    );
    let left_out = unpriced(quote).into_iter().chain(assessment.left_out.iter().cloned()).collect::<Vec<_>>().join(" ");
    let left_out = (!left_out.is_empty()).then_some(Block::Paragraph(left_out));
    chapter("What each job holds", std::iter::once(table).chain(left_out))
}

/// What was proposed before there were jobs: its lines, each with its answer, and the signature.
pub(super) fn answered_by_line(assessment: &Assessment) -> Vec<Block> {
    let approval = &assessment.approval;
    let Some(shown) = approval.shown.as_ref().filter(|shown| shown.jobs.is_empty()) else { return vec![] };
    let heading = format!("Proposal {} and the answer to it", approval.version);
    let said = |line: &QuoteLine| {
        let answer = approval.answer.as_ref().and_then(|answer| answer.to(shown, &line.of));
        answer.map_or("", Consent::words).to_owned()
    };
    let row = |line: &QuoteLine| {
        let [what, why, net] = cells(shown, line);
        [what, why, net, said(line)]
    };
    let table = Block::table(LINES, [WHAT, WHY, NET, ("Answer", 2)], shown.lines.iter().map(row));
    let signed = approval
        .answer
        .as_ref()
        .map(|answer| Block::Signature { name: answer.said_by().words(), strokes: answer.signature.clone() });
    let open = signed.is_none().then(|| Block::Paragraph("The customer has not answered yet.".into()));
    chapter(&heading, [table, totals(shown)].into_iter().chain(signed).chain(open))
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
    let currency = assessment.quote.currency;
    let row = |difference: &Difference| {
        let Difference { what, estimated, now, more, .. } = difference;
        let shown = |money: Money, none: &str| {
            if money == Money::default() { none.to_owned() } else { currency.figures(money) }
        };
        [what.clone(), shown(*estimated, "not in the estimate"), shown(*now, "not needed"), currency.figures(*more)]
    };
    let now = format!("Now, without tax, {}", currency.code());
    let table = (!assessment.differences.is_empty()).then(|| {
        Block::table(
            "Line by line what the first estimate said, what it is now, and the difference, without tax.",
            [("What", 8), ("Estimated, without tax", 4), (now.as_str(), 4), ("More", 3)],
            assessment.differences.iter().map(row),
        )
    });
    chapter("What changed since the first estimate", table)
}
