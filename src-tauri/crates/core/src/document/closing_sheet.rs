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
use crate::job::{Consent, ItemKey, Job, ListKind, Proposed, Step};
use crate::list::{WorkList, undone_items};
use crate::measure::{Conformity, Phase};
use crate::money::{JobScope, Money, ProposedJob, Quote};
use crate::sheet::SizeGroup;
use crate::sizing::{Action, GroupPlan, ReadBack};
use crate::view::PartView;
use crate::words::{capitalised, counted};
use crate::work::Outcome;

/// Puts the closing sheet together.
pub fn closing_sheet(desk: &Desk<'_>) -> Paper {
    let Desk { job, assessment, shop, .. } = desk;
    let open = still_open(assessment);
    let lead = match assessment.still_open.len() {
        _ if !job.is_begun() => "Nothing has been examined yet.".into(),
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
    let is_done = job.refusal.is_none() && job.is_begun();
    blocks.extend(chapter("Running in", is_done.then(|| Block::Points(running_in(assessment)))));
    let conditions = shop.conditions.trim();
    blocks.extend(chapter("Our terms", (!conditions.is_empty()).then(|| Block::Paragraph(conditions.to_owned()))));
    blocks.extend(job.refusal.is_none().then(|| governs("Check oil pressure before load is put on.")));
    customers_paper(desk, "Closing sheet", blocks)
}

/// What is still open: a line for each list, and what stands on none.
fn still_open(assessment: &Assessment) -> Vec<String> {
    let is_open = |list: &&WorkList| assessment.still_open.iter().any(|open| open.list == Some(list.kind));
    let of_list = |list: &WorkList| {
        let items: Vec<String> = undone_items(list).collect();
        // How the shop puts things right is told to the shop: the customer reads how much of it is open.
        match list.kind {
            ListKind::PutRight => format!("{}: {}.", list.title, counted(items.len(), "point", "points")),
            _ => format!("{}: {}.", list.title, items.join("; ")),
        }
    };
    let lists = assessment.lists.iter().filter(is_open).map(of_list);
    let beside = assessment.still_open.iter().filter(|open| open.list.is_none()).map(|open| open.words.clone());
    lists.chain(beside).collect()
}

/// The sizes that the engine has: as found where it keeps them, else once they are back and right. What is renewed has its
/// own.
fn sizes(assessment: &Assessment) -> Option<Block> {
    let is_new = |group: SizeGroup| {
        let mut of_kind = assessment.parts.iter().filter(|view| view.kind == group.kind());
        of_kind.any(|view| view.decision.outcome == Outcome::Replace)
    };
    let is_right = |plan: &GroupPlan| {
        let keeps = matches!(plan.action, Action::Keep | Action::UndersizeShells);
        keeps || assessment.sizing.read_back.iter().any(|back| back.group == Some(plan.group) && back.confirmed)
    };
    let groups = assessment.sizing.groups.iter();
    let groups = groups.filter(|plan| plan.size.is_some() && is_right(plan) && !is_new(plan.group));
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
    let of_size = assessment.sizing.read_back.iter().filter(|back| back.quantity == figure.quantity);
    figure.phase == Phase::Machined && of_size.flat_map(|back| &back.parts).any(|line| line.part == part)
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
            let is_sized = item.asked.size.is_some();
            let besides = if is_sized || item.detail.is_empty() { String::new() } else { format!(", {}", item.detail) };
            Some([
                quantity,
                format!("{}{besides}", item.what),
                if is_sized { item.detail.clone() } else { String::new() },
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
            [("Came", 2), ("What", 5), ("Size", 4), ("Part number", 3), ("When", 3), ("Note", 3), ("Old part", 5)],
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
    let is_agreed = |scope| answered.iter().rev().find_map(|own| said(own, scope)) == Some(Consent::Yes);
    let done = now.jobs.iter().filter(|own| is_agreed(own.of)).flat_map(|own| now.lines_of(own));
    let done: Vec<Money> = done.filter_map(|line| line.net).collect();
    let total: Money = done.iter().copied().sum();
    let with_tax = total + job.prices.tax.on(&done);
    let head = format!("Final, {}", currency.code());
    let table = Block::table(
        "Each job: what was agreed to first, what it came to, the difference without tax, and the consent that covers it.",
        [("Job", 6), ("Agreed", 4), (head.as_str(), 4), ("Difference", 3), ("Covered by", 8)],
        rows,
    );
    let sums = [
        ("Without tax, for the jobs that were agreed to".to_owned(), currency.show(total)),
        (format!("With tax, {}", now.tax_rate), currency.show(with_tax)),
    ];
    vec![table, Block::Facts(sums.into())]
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

/// What to watch from now on (common practice), by what came and was fitted.
fn running_in(assessment: &Assessment) -> Vec<String> {
    let ordered = || assessment.list(ListKind::Order).into_iter().flat_map(|list| &list.items);
    let is_renewed = |kinds: &[PartKind]| {
        ordered().any(|item| {
            let is_of = matches!(&item.asked.key, ItemKey::Order { kind, .. } if kinds.contains(kind));
            let is_in = |step| item.tick.as_ref().is_some_and(|tick| tick.at(step) > 0);
            is_of && (is_in(Step::Back) || is_in(Step::Fitted))
        })
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

    /// Rings that nobody bought are not run in, nor is what was not measured a size.
    #[test]
    fn what_was_not_done_is_not_told_as_done() {
        let job = job_of(&[arrange(&Arrangement::inline(4))]);
        let sheet = format!("{:?}", closing_sheet(&Desk::bare(&job, &assess(&job))));
        assert!(sheet.contains("Nothing has been examined yet."), "{sheet}");
        assert!(!sheet.contains("Running in") && !sheet.contains("The engine is done"), "{sheet}");
        let mut job = job_of(&[arrange(&Arrangement::inline(4)), json!({ "do": "clean", "part": "crankpin.1" })]);
        let of_rings = |job: &Job| running_in(&assess(job)).iter().any(|point| point.starts_with("New rings"));
        assert!(!of_rings(&job));
        let came = json!({ "do": "tick", "item": { "key": { "of": "order", "kind": "rings" }, "quantity": 4 },
            "tick": { "done": 4 } });
        then(&mut job, 100, &came);
        assert!(of_rings(&job));
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
