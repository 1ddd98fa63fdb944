//! What it costs, how that differs from the first estimate, and what the customer has said.

use super::chapter::chapter;
use super::paper::Block;
use crate::assess::Assessment;
use crate::cost::{EngineBeside, OtherEngines, Way};
use crate::job::{Consent, CustomerAnswer, Since};
use crate::money::{Difference, Money, ProposedJob, Quote, QuoteLine};
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
    let show = |money| quote.currency.show(money);
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
            [("What", 6), NET, ("With tax", 4), ("Difference", 6)],
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

/// What each job holds; of what was proposed before there were jobs, its lines.
fn lines(quote: &Quote) -> Block {
    if quote.jobs.is_empty() {
        return Block::table(LINES, [WHAT, WHY, NET], quote.lines.iter().map(|line| cells(quote, line)));
    }
    let rows = quote.jobs.iter().flat_map(|job| quote.lines_of(job).map(move |line| (job, line)));
    let row = |(job, line): (&ProposedJob, &QuoteLine)| {
        let [what, why, net] = cells(quote, line);
        [job.number.to_string(), what, why, net]
    };
    Block::table(LINES, [NUMBER, WHAT, WHY, NET], rows.map(row))
}

/// The jobs as they are answered: with what was said, or to be ringed.
fn jobs(quote: &Quote, answer: Option<&CustomerAnswer>) -> Block {
    let net = |job: &ProposedJob| {
        let least = if job.without_price > 0 { "at least " } else { "" };
        format!("{least}{}", quote.currency.show(job.net))
    };
    let said = |job: &ProposedJob| {
        let said = answer.and_then(|answer| answer.jobs.iter().find(|own| own.of == job.of));
        said.map_or("yes / no / later", |own| own.answer.words()).to_owned()
    };
    let row = |job: &ProposedJob| {
        [
            job.number.to_string(),
            job.title.clone(),
            job.because.clone(),
            job.if_left.clone(),
            job.need.words().into(),
            net(job),
            said(job),
        ]
    };
    Block::table(
        "The jobs that are proposed, each with its reason, what happens if it is left, how much it is needed, what it costs without tax, and the answer.",
        [NUMBER, ("What", 4), ("Why", 7), ("If it is left", 6), ("Need", 2), ("Without tax", 3), ("Answer", 2)],
        quote.jobs.iter().map(row),
    )
}

fn answered(quote: &Quote, answer: &CustomerAnswer) -> Block {
    if !quote.jobs.is_empty() {
        return jobs(quote, Some(answer));
    }
    let row = |line: &QuoteLine| {
        let [what, why, net] = cells(quote, line);
        [what, why, net, answer.to(quote, &line.of).map_or("", Consent::words).to_owned()]
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
        let ask = "Ring yes, no or later for each job, and sign here.";
        let is_priced = assessment.quote.lines.iter().any(|line| line.net.is_some());
        let body = is_priced.then(|| [Block::Paragraph(ask.into()), jobs(&assessment.quote, None), sign]);
        return chapter("Your answer", body.into_iter().flatten());
    };
    let heading = format!("Proposal {} and the answer to it", approval.version);
    let Some(answer) = &approval.answer else {
        let open = Block::Paragraph("The customer has not answered yet.".into());
        let asked = (!shown.jobs.is_empty()).then(|| jobs(shown, None));
        return chapter(&heading, asked.into_iter().chain([lines(shown), totals(shown), open, sign]));
    };
    let mut body = vec![answered(shown, answer)];
    if !shown.jobs.is_empty() {
        body.push(Block::Paragraph("What each job holds:".into()));
        body.push(lines(shown));
    }
    body.push(totals(shown));
    body.push(Block::Signature { name: signed_by(answer), strokes: answer.signature.clone() });
    let line = |since: &Since| format!("{}: {}", since.what, since.because);
    let (more, less): (Vec<&Since>, Vec<&Since>) = approval.since.iter().partition(|since| since.exceeds);
    let told = [("Since then this has come, and is not yet agreed:", more), ("Since then this is less:", less)];
    for (heading, since) in told.into_iter().filter(|(_, since)| !since.is_empty()) {
        body.push(Block::Paragraph(heading.into()));
        body.push(Block::Points(since.into_iter().map(line).collect()));
    }
    chapter(&heading, body)
}

/// "A. Customer, by telephone, 0100 200, 3 May 2026 14:20".
fn signed_by(answer: &CustomerAnswer) -> String {
    let afar = answer.afar.as_ref();
    let at = afar.map(|afar| format!("{} {}", afar.date.trim(), afar.time.trim()));
    let number = afar.map(|afar| afar.number.trim().to_owned());
    let told = [Some(answer.name.trim().to_owned()), Some(answer.way.trim().to_owned()), number, at];
    let told: Vec<String> = told.into_iter().flatten().filter(|part| !part.is_empty()).collect();
    told.join(", ")
}
