//! The closing sheet: the customer's page afterwards. What was done and with which parts, each place before and after, what
//! was agreed beside what it came to, and what to watch from now on.

use super::cautions::governs;
use super::chapter::chapter;
use super::desk::Desk;
use super::goes_back::came_with;
use super::head::{customers_paper, engine_facts};
use super::paper::{Block, Paper};
use crate::assess::Assessment;
use crate::engine::{Part, PartKind};
use crate::figure::Figure;
use crate::job::{Consent, Job, ListKind, Proposed, Step};
use crate::list::{WorkList, undone_items};
use crate::measure::{Conformity, Phase, Quantity};
use crate::money::{JobScope, Money, ProposedJob, Quote};
use crate::sizing::ReadBack;
use crate::view::PartView;
use crate::words::{capitalised, counted};
use crate::work::Work;

/// Puts the closing sheet together.
pub fn closing_sheet(desk: &Desk<'_>) -> Paper {
    let Desk { job, assessment, shop, .. } = desk;
    let open = still_open(assessment);
    let lead = match assessment.still_open.len() {
        _ if job.refusal.is_some() => "The customer refused the work. The engine goes back.".into(),
        0 => "The engine is done. Nothing is open.".into(),
        n => format!("{} still open.", counted(n, "thing is", "things are")),
    };
    let mut blocks: Vec<Block> = engine_facts(desk).into_iter().chain([Block::Lead(lead)]).collect();
    blocks.extend(chapter("Still open", (!open.is_empty()).then_some(Block::Points(open))));
    blocks.extend(chapter("What was renewed", parts_used(assessment)));
    blocks.extend(chapter("Machined: before, wanted, after", machined(assessment)));
    blocks.extend(chapter("Sizes", sizes(assessment)));
    blocks.extend(chapter("Measured after machining and fitting", fitted(assessment)));
    blocks.extend(chapter("Agreed and final", agreed(job, &assessment.quote)));
    blocks.extend(chapter("Came with the engine", came_with(&job.ancillaries)));
    let is_done = job.refusal.is_none();
    blocks.extend(chapter("Running in", is_done.then(|| Block::Points(running_in(assessment)))));
    let conditions = shop.conditions.trim();
    blocks.extend(chapter("Our terms", (!conditions.is_empty()).then(|| Block::Paragraph(conditions.to_owned()))));
    blocks.extend(is_done.then(|| governs("Check oil pressure before load is put on.")));
    customers_paper(desk, "Closing sheet", blocks)
}

/// What is still open: a line for each list, and what stands on none.
fn still_open(assessment: &Assessment) -> Vec<String> {
    let is_open = |list: &&WorkList| assessment.still_open.iter().any(|open| open.list == Some(list.kind));
    let of_list = |list: &WorkList| {
        let items: Vec<String> = undone_items(list).collect();
        // What is put right is told in sentences, all else in a word or two.
        let are_sentences = items.iter().any(|item| item.ends_with('.'));
        let (between, end) = if are_sentences { (" ", "") } else { ("; ", ".") };
        format!("{}: {}{end}", list.title, items.join(between))
    };
    let lists = assessment.lists.iter().filter(is_open).map(of_list);
    let beside = assessment.still_open.iter().filter(|open| open.list.is_none()).map(|open| open.words.clone());
    lists.chain(beside).collect()
}

fn sizes(assessment: &Assessment) -> Option<Block> {
    let groups = assessment.sizing.groups.iter().filter(|plan| plan.size.is_some());
    let facts: Vec<(String, String)> = groups
        .map(|plan| (capitalised(plan.group.label()), format!("{}, {}", plan.size_shown, plan.finished_shown)))
        .collect();
    (!facts.is_empty()).then_some(Block::Facts(facts))
}

/// What came back, judged by the size that was asked for and not by the limit of wear.
fn machined(assessment: &Assessment) -> Option<Block> {
    let sizing = &assessment.sizing;
    let came = |back: &'_ ReadBack| back.parts.iter().any(|line| !line.shown.is_empty());
    let rows: Vec<[String; 5]> = sizing
        .read_back
        .iter()
        .filter(|back| came(back))
        .flat_map(|back| {
            back.parts.iter().map(|line| {
                let verdict = if line.problem.is_empty() { "right".into() } else { capitalised(&line.problem) };
                [line.label.clone(), line.found_shown.clone(), back.asked.clone(), line.shown.clone(), verdict]
            })
        })
        .collect();
    (!rows.is_empty()).then(|| {
        Block::table(
            "Each part that was machined: its size as found, the size asked for, and the size it came back with.",
            [("Part", 4), ("Before", 4), ("Wanted", 5), ("After", 4), ("Result", 4)],
            rows,
        )
    })
}

/// Whether it was read back beside the size that was asked for.
fn is_read_back(assessment: &Assessment, part: Part, figure: &Figure) -> bool {
    let of_size = figure.phase == Phase::Machined && figure.quantity == Quantity::Diameter;
    of_size && assessment.sizing.read_back.iter().flat_map(|back| &back.parts).any(|line| line.part == part)
}

/// What was measured after machining and fitting: what is not within its limits line by line, the rest counted.
fn fitted(assessment: &Assessment) -> Vec<Block> {
    let late: Vec<(&PartView, &Figure)> = assessment
        .parts
        .iter()
        .flat_map(|view| view.figures.iter().map(move |figure| (view, figure)))
        .filter(|(view, figure)| figure.phase != Phase::Found && !is_read_back(assessment, view.part, figure))
        .collect();
    let (within, told): (Vec<_>, Vec<_>) =
        late.into_iter().partition(|(_, figure)| figure.verdict == Some(Conformity::Within));
    let row = |(view, figure): &(&PartView, &Figure)| {
        [
            view.label.clone(),
            format!("{}, {}", figure.name, figure.phase.label()),
            figure.shown.clone(),
            figure.limits.clone(),
            figure.verdict_words().to_owned(),
        ]
    };
    let table = (!told.is_empty()).then(|| {
        Block::table(
            "Sizes and clearances measured after machining and fitting that are not within their limits.",
            [("Part", 5), ("What", 5), ("Measured", 5), ("Limits", 5), ("Result", 4)],
            told.iter().map(row),
        )
    });
    let within = (!within.is_empty()).then(|| {
        let figures = counted(within.len(), "figure is", "figures are");
        Block::Paragraph(format!("{figures} within the limits."))
    });
    table.into_iter().chain(within).collect()
}

/// What was ordered and came, with the notes: part numbers, suppliers.
fn parts_used(assessment: &Assessment) -> Option<Block> {
    let ordered = assessment.list(ListKind::Order).into_iter().flat_map(|list| &list.items);
    let rows: Vec<[String; 7]> = ordered
        .filter_map(|item| {
            let tick = item.tick.as_ref()?;
            let quantity = format!("{} of {}", tick.at(Step::Back), item.quantity);
            Some([
                quantity,
                item.what.clone(),
                item.detail.clone(),
                tick.part_number.clone(),
                tick.date_of(Step::Back).to_owned(),
                tick.note.clone(),
                capitalised(item.supply.map_or("", |supply| supply.old_words())),
            ])
        })
        .collect();
    (!rows.is_empty()).then(|| {
        Block::table(
            "The parts that came, with size, part number, date and note, and where the old ones went.",
            [("Came", 2), ("What", 5), ("Size", 4), ("Part number", 4), ("When", 3), ("Note", 4), ("Old part", 3)],
            rows,
        )
    })
}

/// Each job as it was agreed to and as it came out, with the consent that covers what is more. Nothing before a proposal with
/// jobs was answered.
fn agreed(job: &Job, now: &Quote) -> Vec<Block> {
    let answered: Vec<&Proposed> =
        job.proposals.iter().filter(|own| own.answer.is_some() && !own.quote.jobs.is_empty()).collect();
    let Some(first) = answered.first() else { return vec![] };
    let currency = now.currency;
    let scopes = JobScope::ALL.into_iter().filter(|scope| {
        let holds = |quote: &Quote| quote.jobs.iter().any(|own| own.of == *scope);
        holds(now) || answered.iter().any(|own| holds(&own.quote))
    });
    let rows: Vec<[String; 5]> = scopes
        .map(|scope| {
            let agreed = net(&first.quote, scope).filter(|_| said(first, scope) == Some(Consent::Yes));
            let last = answered.iter().rev().find_map(|own| said(own, scope));
            let done = net(now, scope).filter(|_| last == Some(Consent::Yes));
            let more = done.unwrap_or_default() - agreed.unwrap_or_default();
            [
                scope.title().to_owned(),
                agreed.map_or_else(|| "not agreed".into(), |net| currency.figures(net)),
                done.map_or_else(|| "not done".into(), |net| currency.figures(net)),
                if more == Money::default() { String::new() } else { currency.figures(more) },
                covered(&answered, scope, done, more),
            ]
        })
        .collect();
    let total: Money = JobScope::ALL
        .into_iter()
        .filter(|scope| answered.iter().rev().find_map(|own| said(own, *scope)) == Some(Consent::Yes))
        .filter_map(|scope| net(now, scope))
        .sum();
    let head = format!("Final, {}", currency.code());
    let table = Block::table(
        "Each job: what was agreed to first, what it came to, the difference without tax, and the consent that covers it.",
        [("Job", 6), ("Agreed", 4), (head.as_str(), 4), ("More", 3), ("Covered by", 8)],
        rows,
    );
    vec![table, Block::Paragraph(format!("Without tax, for the jobs that were agreed to: {}.", currency.show(total)))]
}

fn job_of(quote: &Quote, scope: JobScope) -> Option<&ProposedJob> {
    quote.jobs.iter().find(|own| own.of == scope)
}

fn net(quote: &Quote, scope: JobScope) -> Option<Money> {
    job_of(quote, scope).map(|own| own.net)
}

fn said(proposed: &Proposed, scope: JobScope) -> Option<Consent> {
    proposed.answer.as_ref()?.jobs.iter().find(|own| own.of == scope).map(|own| own.answer)
}

/// The answer that covers what a job came to: the first yes to at least so much.
fn covered(answered: &[&Proposed], scope: JobScope, done: Option<Money>, more: Money) -> String {
    let Some(done) = done else { return String::new() };
    let is_enough = |own: &&&Proposed| said(own, scope) == Some(Consent::Yes) && net(&own.quote, scope) >= Some(done);
    match answered.iter().find(is_enough).and_then(|own| own.answer.as_ref()) {
        _ if more <= Money::default() => String::new(),
        Some(answer) => answer.said_by().words(),
        None => "no consent: not to be charged".into(),
    }
}

/// What to watch from now on (common practice), by what was renewed.
fn running_in(assessment: &Assessment) -> Vec<String> {
    let is_renewed = |kinds: &[PartKind]| {
        let renewed = |of: PartKind| {
            assessment.parts.iter().any(|view| view.kind == of && view.decision.work() == Some(Work::Replace))
        };
        kinds.iter().copied().any(renewed)
    };
    let mut points: Vec<String> = vec![
        "Before load: oil pressure, leaks, temperature, noises. Stop at once if one is not as it should be.".into(),
    ];
    if is_renewed(&[PartKind::Camshaft, PartKind::Tappet]) {
        points.push("New cam and followers: no idling at first, but the speed that the manual asks for.".into());
    }
    if is_renewed(&[PartKind::Rings, PartKind::Piston]) {
        points.push("New rings: change load and speed often; neither full load nor long idling at first.".into());
    }
    if is_renewed(&[PartKind::MainShell, PartKind::RodShell]) {
        points.push("New bearings: change oil and filter early, and look at what is in them.".into());
    }
    points.push("Retighten, and next service: as the engine’s manual says.".into());
    points
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of, then};
    use serde_json::{Value, json};

    fn prices(part: u32) -> Value {
        json!({ "do": "use-prices", "prices": { "currency": "EUR", "hour": 6000,
            "prices": [{ "of": { "kind": "main-shell", "work": "replace" }, "part": part }] } })
    }

    fn answered(job: &mut Job, millis: u64, answer: &str) {
        let quote = assess(job).quote;
        let proposal = then(job, millis, &json!({ "do": "propose", "quote": quote }));
        let jobs: Vec<Value> = quote.jobs.iter().map(|own| json!({ "of": own.of, "answer": answer })).collect();
        let answer = json!({ "proposal": proposal, "jobs": jobs, "name": "A. Harrow", "way": "by message" });
        then(job, millis + 1, &json!({ "do": "answer-proposal", "answer": answer }));
    }

    fn covered_by(job: &Job) -> Vec<[String; 3]> {
        let blocks = agreed(job, &assess(job).quote);
        let Some(Block::Table { rows, .. }) = blocks.first() else { return vec![] };
        let bearings = rows.iter().filter(|row| row[0].starts_with("Crankshaft"));
        bearings.map(|row| [row[1].clone(), row[2].clone(), row[4].clone()]).collect()
    }

    /// Five pairs of shells.
    #[test]
    fn what_is_more_than_agreed_names_the_consent_that_covers_it() {
        let mut job =
            job_of(&[arrange(&Arrangement::inline(4)), json!({ "do": "clean", "part": "crankpin.1" }), prices(1000)]);
        assert!(covered_by(&job).is_empty(), "nothing was answered");
        answered(&mut job, 100, "yes");
        assert_eq!(covered_by(&job), [["50.00", "50.00", ""]]);
        then(&mut job, 200, &prices(2000));
        assert_eq!(covered_by(&job), [["50.00", "100.00", "no consent: not to be charged"]]);
        answered(&mut job, 300, "yes");
        assert_eq!(covered_by(&job), [["50.00", "100.00", "A. Harrow, by message"]]);
        answered(&mut job, 400, "no");
        assert_eq!(covered_by(&job), [["50.00", "not done", ""]]);
    }
}
