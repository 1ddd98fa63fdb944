//! Whole engines as data: a job in; every list, every line of the bill, every verdict, every complaint's answer and every cause
//! out. What is expected was written by hand before the engine ran, each line with its source; nothing writes it from what the
//! program says. The README in `tests/whole-engines` tells how a case is written.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

mod data;
mod entered;

use std::collections::{BTreeMap, BTreeSet};

use data::is_like;
use entered::Whole;
use serde::Deserialize;
use wearbook_core::assess::{Assessment, assess};
use wearbook_core::cause::CauseView;
use wearbook_core::caution::{ALL, Caution, GOVERNS};
use wearbook_core::date::Date;
use wearbook_core::document::{
    Block, Desk, Extent, Paper, Shop, closing_sheet, condition_report, size_sheet, work_list,
};
use wearbook_core::engine::Part;
use wearbook_core::job::{Complaint, ItemKey, Job, ListKind};
use wearbook_core::work::Outcome;

/// Lists, bill, complaints and causes are told whole; of verdicts and of what is put right those that matter.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case", default)]
struct Expect {
    order: Option<Vec<Item>>,
    machine_shop: Option<Vec<Item>>,
    rebuild_here: Option<Vec<Item>>,
    clean: Option<Vec<Item>>,
    bill: Option<Vec<BillLine>>,
    /// The sum of the bill without tax, in hundredths.
    net: Option<i64>,
    verdicts: BTreeMap<String, Verdict>,
    complaints: Option<BTreeMap<Complaint, Answer>>,
    /// What is said of the whole engine.
    verdict: Option<Said>,
    causes: Option<Vec<Cause>>,
    /// Causes that are not even told.
    not_told: Vec<Unlikely>,
    put_right: Vec<PutRight>,
}

/// The answer to one complaint.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Answer {
    /// "explained", "partly", "not-explained" or "cant-say".
    answered: String,
    /// The parts that explain it, told whole: "rod-shell.3.upper", "main-shell.*.lower" for all of them.
    #[serde(default)]
    parts: Vec<String>,
    /// Words of the reason.
    #[serde(default)]
    because: String,
    source: String,
}

/// What is said, by its written form.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Said {
    is: String,
    source: String,
}

/// A named cause, its named places and its named ways in told whole.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Cause {
    id: String,
    #[serde(default)]
    places: BTreeSet<String>,
    /// The likeliest first.
    #[serde(default)]
    ways_in: Vec<String>,
    source: String,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Unlikely {
    id: String,
    source: String,
}

/// What a cause asks for before assembly.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct PutRight {
    cause: String,
    check: String,
    source: String,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Item {
    what: String,
    #[serde(default = "one")]
    quantity: u32,
    /// With how it begins.
    #[serde(default)]
    detail: String,
    #[serde(default)]
    held: bool,
    /// Words of what holds it.
    #[serde(default)]
    because_held: String,
    /// It is back, measured and right.
    #[serde(default)]
    right: bool,
    source: String,
}

fn one() -> u32 {
    1
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct BillLine {
    what: String,
    /// Without tax, in hundredths; none where it has no price.
    net: Option<i64>,
    source: String,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Verdict {
    outcome: Outcome,
    source: String,
}

#[test]
fn every_engine_comes_out_as_a_rebuilder_would_have_it() {
    let mut wrong = Vec::new();
    for (name, case) in Whole::all() {
        let expect: Expect = Expect::deserialize(&case.expect).unwrap_or_else(|error| panic!("{name}: {error}"));
        let job = case.job();
        let came = assess(&job);
        let mut found = compare(&expect, &came);
        found.extend(crowded(&job, &came));
        if !found.is_empty() {
            wrong.push(format!("{name}: {}\n  {}", case.about, found.join("\n  ")));
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

fn compare(expect: &Expect, came: &Assessment) -> Vec<String> {
    let mut wrong = Vec::new();
    let lists = [
        (ListKind::Order, &expect.order),
        (ListKind::MachineShop, &expect.machine_shop),
        (ListKind::RebuildHere, &expect.rebuild_here),
        (ListKind::Clean, &expect.clean),
    ];
    for (kind, expected) in lists {
        wrong.extend(expected.iter().flat_map(|expected| compare_list(came, kind, expected)));
    }
    wrong.extend(expect.bill.iter().flat_map(|bill| compare_bill(came, bill)));
    if let Some(net) = expect.net.filter(|net| came.quote.net.minor() != *net) {
        wrong.push(format!("bill: {} expected, it is {}", net, came.quote.net.minor()));
    }
    for (part, verdict) in &expect.verdicts {
        sourced(&mut wrong, part, &verdict.source);
        match came.part(part.parse().unwrap()) {
            Some(view) if view.decision.outcome == verdict.outcome => {}
            Some(view) => wrong.push(format!(
                "{part}: expected {:?}, it is {:?}: {}",
                verdict.outcome,
                view.decision.outcome,
                view.decision.because()
            )),
            None => wrong.push(format!("{part}: the engine does not have it")),
        }
    }
    wrong.extend(compare_answers(expect, came));
    wrong.extend(compare_causes(expect, came));
    wrong
}

/// The written form of what has one.
fn written(value: impl serde::Serialize) -> String {
    serde_json::to_value(value).unwrap().as_str().unwrap().to_owned()
}

fn compare_answers(expect: &Expect, came: &Assessment) -> Vec<String> {
    let mut wrong = Vec::new();
    let Some(expected) = &expect.complaints else { return wrong };
    let answered = |complaint: &Complaint| came.causes.answers.iter().find(|own| own.complaints.contains(complaint));
    for (complaint, answer) in expected {
        let name = written(complaint);
        sourced(&mut wrong, &name, &answer.source);
        let Some(own) = answered(complaint) else {
            wrong.push(format!("{name} is not answered"));
            continue;
        };
        if written(own.answered) != answer.answered || !own.because().contains(&answer.because) {
            let Answer { answered, because, .. } = answer;
            wrong.push(format!("{name}: {answered} “{because}” expected, it is {:.3} {own:?}", own.probability));
        }
        let names: BTreeSet<String> = own.parts.iter().map(ToString::to_string).collect();
        let is_of = |name: &&String| answer.parts.iter().any(|pattern| is_like(name, pattern));
        let more: Vec<&String> = names.iter().filter(|name| !is_of(name)).collect();
        let known: BTreeSet<String> = parts_of(came).map(|part| part.to_string()).collect();
        let less: Vec<&String> = known.iter().filter(|name| is_of(name) && !names.contains(*name)).collect();
        if !more.is_empty() || !less.is_empty() {
            wrong.push(format!("{name}: not of these, {more:?}; but of these, {less:?}"));
        }
        let of_nothing = answer.parts.iter().filter(|pattern| !known.iter().any(|name| is_like(name, pattern)));
        wrong.extend(of_nothing.map(|pattern| format!("{name}: {pattern} is nothing that the engine has")));
    }
    let all = came.causes.answers.iter().flat_map(|own| &own.complaints);
    let more = all.filter(|complaint| !expected.contains_key(complaint));
    wrong.extend(more.map(|complaint| format!("nobody asked what makes {}", written(complaint))));
    wrong
}

/// All parts, and what lies outside them.
fn parts_of(came: &Assessment) -> impl Iterator<Item = Part> + '_ {
    came.parts.iter().map(|view| view.part).chain(came.outside.iter().map(|view| view.part))
}

fn compare_causes(expect: &Expect, came: &Assessment) -> Vec<String> {
    let mut wrong = Vec::new();
    let report = &came.causes;
    if let Some(said) = &expect.verdict {
        sourced(&mut wrong, &said.is, &said.source);
        if written(report.verdict) != said.is {
            wrong.push(format!("causes: {} expected, it is {}", said.is, written(report.verdict)));
        }
    }
    let told = |own: &CauseView| {
        format!("{} {:.3} {:?}", own.id, own.probability, own.evidence_for.first().map(|own| &own.words))
    };
    for expected in expect.causes.iter().flatten() {
        sourced(&mut wrong, &expected.id, &expected.source);
        let Some(own) = report.causes.iter().find(|own| own.id == expected.id) else {
            wrong.push(format!("causes: there is no {}", expected.id));
            continue;
        };
        if !own.named {
            wrong.push(format!("causes: {} is not named: {}", expected.id, told(own)));
            continue;
        }
        let places: BTreeSet<String> =
            own.places.iter().filter(|place| place.named).map(|place| place.label.clone()).collect();
        let ways: Vec<&String> = own.ways_in.iter().filter(|way| way.named).map(|way| &way.id).collect();
        if places != expected.places {
            wrong.push(format!("causes: {} at {:?}, it is at {places:?}", expected.id, expected.places));
        }
        if ways != expected.ways_in.iter().collect::<Vec<_>>() {
            wrong.push(format!("causes: {} came in by {:?}, it is {:?}", expected.id, expected.ways_in, own.ways_in));
        }
    }
    if let Some(expected) = &expect.causes {
        let named: Vec<&CauseView> = report.causes.iter().filter(|own| own.named).collect();
        let more = named.iter().filter(|own| !expected.iter().any(|expected| expected.id == own.id));
        wrong.extend(more.map(|own| format!("causes: nobody asked for {}", told(own))));
    }
    for unlikely in &expect.not_told {
        sourced(&mut wrong, &unlikely.id, &unlikely.source);
        match report.causes.iter().find(|own| own.id == unlikely.id) {
            Some(own) if !own.told => {}
            other => wrong.push(format!("causes: {} must not be told: {:?}", unlikely.id, other.map(told))),
        }
    }
    let asked: BTreeSet<&ItemKey> =
        came.list(ListKind::PutRight).unwrap().items.iter().map(|item| &item.asked.key).collect();
    for PutRight { cause, check, source } in &expect.put_right {
        sourced(&mut wrong, check, source);
        if !asked.contains(&ItemKey::PutRight { cause: cause.clone(), check: check.clone() }) {
            wrong.push(format!("put right: {cause}, {check} is missing"));
        }
    }
    wrong
}

fn compare_list(came: &Assessment, kind: ListKind, expected: &[Item]) -> Vec<String> {
    let list = came.list(kind).unwrap();
    let mut wrong = Vec::new();
    let mut met = BTreeSet::new();
    for line in expected {
        sourced(&mut wrong, &line.what, &line.source);
        let here =
            list.items.iter().enumerate().find(|(at, item)| {
                item.what == line.what && item.detail.starts_with(&line.detail) && !met.contains(at)
            });
        let Some((at, item)) = here else {
            wrong.push(format!("{}: “{}, {}” is missing", list.title, line.what, line.detail));
            continue;
        };
        met.insert(at);
        if item.quantity != line.quantity {
            wrong.push(format!("{}: {} of “{}”, it is {}", list.title, line.quantity, line.what, item.quantity));
        }
        let held = item.waits_for.join(" ");
        if held.is_empty() == line.held || !held.contains(&line.because_held) {
            let expected = if line.held { "held" } else { "free" };
            wrong.push(format!(
                "{}: “{}” must be {expected} {}; it waits for: {held}",
                list.title, line.what, line.because_held
            ));
        }
        if item.is_right != line.right {
            wrong.push(format!("{}: “{}” is back and right: {}", list.title, line.what, item.is_right));
        }
    }
    let more = list.items.iter().enumerate().filter(|(at, _)| !met.contains(at));
    wrong.extend(more.map(|(_, item)| {
        format!("{}: nobody asked for {} “{}, {}”: {}", list.title, item.quantity, item.what, item.detail, item.because)
    }));
    wrong
}

fn compare_bill(came: &Assessment, expected: &[BillLine]) -> Vec<String> {
    let mut wrong = Vec::new();
    for line in expected {
        sourced(&mut wrong, &line.what, &line.source);
        let here: Vec<_> = came.quote.lines.iter().filter(|own| own.what == line.what).collect();
        match here.as_slice() {
            [own] if own.net.map(|net| net.minor()) == line.net => {}
            [own] => wrong.push(format!("bill: “{}” {:?}, it is {:?}", line.what, line.net, own.net)),
            several => wrong.push(format!("bill: “{}” stands there {} times", line.what, several.len())),
        }
    }
    let told: BTreeSet<&str> = expected.iter().map(|line| line.what.as_str()).collect();
    let more = came.quote.lines.iter().filter(|line| !told.contains(line.what.as_str()));
    wrong.extend(more.map(|line| format!("bill: nobody asked for “{}”", line.what)));
    wrong
}

/// Spots of screens and papers that say nothing of the manual where they must, a caution twice, or more than two.
fn crowded(job: &Job, came: &Assessment) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut spot = |name: &str, rows: &[&Caution]| {
        if rows.len() > 2 {
            wrong.push(format!("{name}: {} cautions at one spot", rows.len()));
        }
    };
    for view in &came.parts {
        spot(&view.label, &view.cautions);
        spot(&format!("{}, decision", view.label), &view.work_cautions);
    }
    for list in &came.lists {
        list.items.iter().for_each(|item| spot(&format!("{}: {}", list.title, item.what), &item.cautions));
    }
    for view in &came.parts {
        let twice = view.work_cautions.iter().filter(|row| view.cautions.contains(row));
        wrong.extend(twice.map(|row| format!("{}: {} is said of the part and of its work", view.label, row.id)));
    }
    for list in &came.lists {
        let said: Vec<&str> = list.items.iter().flat_map(|item| &item.cautions).map(|row| row.id).collect();
        if said.iter().collect::<BTreeSet<_>>().len() < said.len() {
            wrong.push(format!("{}: a caution stands twice: {said:?}", list.title));
        }
    }
    let shop = Shop::default();
    let desk = Desk { job, assessment: came, date: Date::EPOCH, shop: &shop };
    let lists = came.lists.iter().filter(|list| list.items.iter().any(|item| item.hands.is_some() && !item.is_right));
    let mut papers: Vec<Paper> = lists.map(|list| work_list(&desk, list.kind)).collect();
    papers.extend([Extent::Short, Extent::Full].map(|extent| condition_report(&desk, extent)));
    papers.extend([size_sheet(&desk), closing_sheet(&desk)]);
    // Where nobody has looked there is no advice that anything could govern.
    papers.retain(|paper| !matches!(paper.blocks[..], [Block::CustomersPage(_)]));
    for paper in papers {
        let words: String = paper.blocks.iter().filter_map(told).collect();
        let rows = ALL.iter().filter(|row| words.contains(row.line)).count();
        let governs = words.matches(GOVERNS).count();
        if rows > 2 || governs != 1 {
            wrong.push(format!("{}: {rows} cautions, {governs} times that the manual governs", paper.title));
        }
    }
    wrong
}

fn told(block: &Block) -> Option<&str> {
    match block {
        Block::Caution(words) | Block::Paragraph(words) => Some(words),
        _ => None,
    }
}

fn sourced(wrong: &mut Vec<String>, what: &str, source: &str) {
    if source.trim().is_empty() {
        wrong.push(format!("“{what}” is expected without a source"));
    }
}
